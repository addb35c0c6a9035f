export { ServicesModule } from './services.module.js';
export { Services } from './services.service.js';
