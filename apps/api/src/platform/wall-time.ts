import { type EpochS, epochS } from '@stokehold/domain/quantity';
import { DateTime } from 'luxon';

/**
 * The instant of a wall time in a zone of the time zone database. A time that the clocks skip is moved on by the hour they skip;
 * of a time that comes twice, the first is meant.
 *
 * @param date  'YYYY-MM-DD'
 * @param time  'HH:mm'
 * @throws RangeError for a date, time or zone that does not exist
 */
export function wallTime(date: string, time: string, timeZone: string): EpochS {
  const at = DateTime.fromISO(`${date}T${time}`, { zone: timeZone });
  if (!at.isValid) throw new RangeError(`${date} ${time} in ${timeZone}: ${at.invalidExplanation ?? at.invalidReason ?? 'no such time'}`);
  return epochS(at.toSeconds());
}

/** The first time after `after` at which the clocks of the zone show `time`. */
export function nextWallTime(after: EpochS, time: string, timeZone: string): EpochS {
  const from = DateTime.fromSeconds(after, { zone: timeZone });
  for (const days of [0, 1, 2]) {
    const at = wallTime(from.plus({ days }).toISODate() ?? '', time, timeZone);
    if (at > after) return at;
  }
  throw new RangeError(`${time} in ${timeZone}: no such time in two days`);
}
