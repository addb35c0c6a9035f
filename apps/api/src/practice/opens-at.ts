import { later } from '@stokehold/domain/quantity';
import { nextWallTime, wallTime } from '../platform/index.js';
import type { SampleNight } from './sample.js';

/**
 * How long after its begin a night opens that is to open at this wall time, s.
 *
 * @param at  'HH:mm' in the zone of the yard
 * @throws Error that names the night's hours where the time is not between them. Held to opens-at.test.ts
 */
export function opensAfterS({ shift: { date, from, to }, yard: { timeZone } }: Pick<SampleNight, 'shift' | 'yard'>, at: string): number {
  const startsAt = wallTime(date, from, timeZone);
  const endsAt = nextWallTime(startsAt, to, timeZone);
  const opensAt = nextWallTime(later(startsAt, -1), at, timeZone);
  if (opensAt >= endsAt) throw new Error(`The practice night runs from ${from} to ${to}: give --at a time between them, such as ${from}, and not ${at}.`);
  return opensAt - startsAt;
}
