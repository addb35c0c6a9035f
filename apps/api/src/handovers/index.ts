export { HandoversModule } from './handovers.module.js';
export { Handovers } from './handovers.service.js';
