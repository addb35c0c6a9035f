export { StatusModule } from './status.module.js';
