export { MinuteModule } from './minute.module.js';
export { Minute } from './minute.service.js';
