import { type EpochS, HOUR_S, later, MINUTE_S, ok, refuse, type Result } from '../quantity/index.js';

/** A device's clock is taken as it is up to here; beyond it what the device says is corrected. */
const CORRECT_BEYOND_S = 2;
/** Beyond this the device's times are marked as uncertain. */
const CLOCK_OFF_BEYOND_S = 5 * MINUTE_S;
/** How far in the future a thing may seem to have happened: clocks differ by a little. */
const FUTURE_S = MINUTE_S;
/** How long a device may have been without signal. */
const TOO_OLD_S = 72 * HOUR_S;

/** When a thing happened, by the device's clock and by ours. */
export interface DeviceTime {
  /** When it happened, corrected by how far the device's clock is off. */
  readonly at: EpochS;
  /** What must be added to the device's clock to get ours; 0 when the device did not say what its clock shows. */
  readonly clockOffsetS: number;
  /** The device's clock is off by more than five minutes: its times are uncertain. */
  readonly clockOff: boolean;
}

/**
 * The time at which a thing happened on a device: offset = arrival - clock of the device as it sent. Where our own clock was set, a device
 * may go by either time: one that agrees with either is right, and one that does not say what it shows is believed to go by the nearer.
 * Source: our rule.
 *
 * @param told.deviceAt   when it happened, by the device's clock
 * @param told.sentAt     what the device's clock showed as it sent; absent when it did not say
 * @param told.arrivedAt  when it arrived, by our clock
 * @param told.aheadS     by how much our machine's clock shows more than the time we go by, s; absent where it was not set
 */
export function deviceTime(told: { readonly deviceAt: EpochS; readonly sentAt?: EpochS; readonly arrivedAt: EpochS; readonly aheadS?: number }): DeviceTime {
  const { deviceAt, sentAt, arrivedAt, aheadS = 0 } = told;
  const goesAhead = Math.abs(deviceAt - arrivedAt - aheadS) < Math.abs(deviceAt - arrivedAt);
  const clockOffsetS = sentAt === undefined ? (goesAhead ? -aheadS : 0) : arrivedAt - sentAt;
  const at = Math.abs(clockOffsetS) > CORRECT_BEYOND_S ? later(deviceAt, clockOffsetS) : deviceAt;
  const offS = sentAt === undefined ? 0 : Math.min(Math.abs(clockOffsetS), Math.abs(clockOffsetS + aheadS));
  return { at, clockOffsetS, clockOff: offS > CLOCK_OFF_BEYOND_S };
}

/** Whether a time lies so far ahead that no difference of clocks explains it. */
export const isInTheFuture = (at: EpochS, now: EpochS): boolean => at > later(now, FUTURE_S);

/**
 * When a fire was looked at, or why that cannot be. A time that lies ahead by less than a minute becomes now.
 *
 * @param seen  the corrected time
 * @param now   our clock
 */
export function timeOfLook(seen: DeviceTime, now: EpochS): Result<EpochS, { readonly code: 'check-in-the-future' | 'check-too-old'; readonly byS: number }> {
  if (isInTheFuture(seen.at, now)) return refuse({ code: 'check-in-the-future', byS: seen.at - now });
  if (now - seen.at > TOO_OLD_S) return refuse({ code: 'check-too-old', byS: now - seen.at });
  return ok(seen.at > now ? now : seen.at);
}
