export { ReadingsModule } from './readings.module.js';
export { Readings } from './readings.service.js';
export type { ZoneMean } from './readings.store.js';
