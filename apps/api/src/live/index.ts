export { LiveGateway } from './live.gateway.js';
export { LiveModule } from './live.module.js';
export { StateOf } from './state-of.service.js';
