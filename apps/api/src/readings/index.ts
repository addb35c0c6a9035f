export { type ProbeNowStanding, Probes } from './probes.service.js';
export { ReadingsModule } from './readings.module.js';
export { type ChamberLately, Readings } from './readings.service.js';
export type { ZoneMean } from './readings.store.js';
