export { normalBelow } from './normal-below.js';
export type {
  Celsius, Cents, CookId, DeviceId, DryBasis, EpochS, LotId, Named, PersonId, PitId, ProbeId, Quantity, ServiceId, ShiftId,
  TaskId, WetBasis, YardId,
} from './quantity.js';
export { celsius, cents, dryBasis, toDryBasis, toWetBasis, wetBasis } from './quantity.js';
export { clamp, OutOfRangeError, requireRange } from './range.js';
export { ok, refuse } from './result.js';
export type { Result } from './result.js';
export { epochS, fromIso, HOUR_S, later, MINUTE_S, toIso } from './instant.js';
export { randomStream, seedFrom } from './random.js';
export type { RandomStream } from './random.js';
