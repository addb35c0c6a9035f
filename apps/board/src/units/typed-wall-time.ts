import { DateTime } from 'luxon';
import { epochS, type EpochS } from '@stokehold/domain/quantity';

// Wall times as people type them, in the yard's zone. Only desk screens import this file: luxon comes with it.

/** What a typed wall time stands for. On the night the clocks go back one hour happens twice, on the other one it is missing. */
export type WallMeaning =
  | { readonly kind: 'once'; readonly at: EpochS }
  | { readonly kind: 'twice'; readonly first: EpochS; readonly second: EpochS }
  | { readonly kind: 'skipped'; readonly from: string; readonly to: string }
  | { readonly kind: 'unreadable' };

const FORM = "yyyy-MM-dd'T'HH:mm";
const secondsOf = (time: DateTime) => epochS(time.toSeconds());

/** `wall` as a date-and-time field gives it: '2027-03-13T19:00'. */
export function meaningOf(wall: string, zone: string): WallMeaning {
  const time = DateTime.fromFormat(wall, FORM, { zone });
  if (!time.isValid) return { kind: 'unreadable' };
  // A time inside the gap is moved on by the library, so it no longer reads as it was typed.
  if (time.toFormat(FORM) !== wall) return skipped(time);
  const both = time.getPossibleOffsets().map(secondsOf).sort((a, b) => a - b);
  const [first, second] = both;
  if (first !== undefined && second !== undefined) return { kind: 'twice', first, second };
  return { kind: 'once', at: secondsOf(time) };
}

function skipped(moved: DateTime): WallMeaning {
  const change = offsetChanges(secondsOf(moved.minus({ hours: 3 })), secondsOf(moved.plus({ hours: 1 })), moved.zoneName ?? 'UTC')[0];
  const byS = change?.byS ?? 3600;
  const to = DateTime.fromSeconds(change?.at ?? secondsOf(moved), { zone: moved.zone });
  const from = to.setZone('UTC', { keepLocalTime: true }).minus({ seconds: byS });
  return { kind: 'skipped', from: from.toFormat('HH:mm'), to: to.toFormat('HH:mm') };
}

/** The wall time of an instant, as a date-and-time field wants it. */
export const wallOf = (at: EpochS, zone: string): string => DateTime.fromSeconds(at, { zone }).toFormat(FORM);
/** Hours and minutes of an instant, '19:00'. */
export const hourOf = (at: EpochS, zone: string): string => wallOf(at, zone).slice(11);
/** Whether this instant is the second one with its wall time. */
export function isSecond(at: EpochS, zone: string): boolean {
  const meaning = meaningOf(wallOf(at, zone), zone);
  return meaning.kind === 'twice' && meaning.second === at;
}

/** The instant `days` calendar days after the day of `at`, at the wall time 'HH:mm' of the zone. */
export function wallOnDay(at: EpochS, days: number, hour: string, zone: string): string {
  return `${DateTime.fromSeconds(at, { zone }).plus({ days }).toFormat('yyyy-MM-dd')}T${hour}`;
}

/** A time of the night as typed: hours and minutes, and which of the two where the hour happens twice. */
export interface NightTime {
  readonly hour: string;
  readonly again: boolean;
}
export const nightTime = (hour: string, again = false): NightTime => ({ hour, again });
export const nightTimeOf = (at: EpochS, zone: string): NightTime => nightTime(hourOf(at, zone), isSecond(at, zone));

/** The first moment at or after `from` at which the yard's clock shows this time. */
export function momentOf(time: NightTime, from: EpochS, zone: string): WallMeaning {
  for (const days of [0, 1]) {
    const meaning = meaningOf(wallOnDay(from, days, time.hour, zone), zone);
    if (meaning.kind === 'unreadable') return meaning;
    if (meaning.kind === 'skipped' && days === 1) return meaning;
    if (meaning.kind === 'skipped' && time.hour >= hourOf(from, zone)) return meaning;
    if (meaning.kind === 'once' && meaning.at >= from) return meaning;
    if (meaning.kind === 'twice' && meaning.second >= from) return meaning;
  }
  return { kind: 'unreadable' };
}

/** The instant meant, if there is one: of two, the one chosen. */
export function chosen(meaning: WallMeaning, again: boolean): EpochS | undefined {
  if (meaning.kind === 'once') return meaning.at;
  if (meaning.kind === 'twice') return again ? meaning.second : meaning.first;
  return undefined;
}

/** Where the zone's offset changes between two instants, and by how many seconds the clocks go forward (or back, negative). */
export function offsetChanges(from: EpochS, until: EpochS, zone: string): readonly { readonly at: EpochS; readonly byS: number }[] {
  const offsetAt = (at: number) => DateTime.fromSeconds(at, { zone }).offset * 60;
  const found: { at: EpochS; byS: number }[] = [];
  const QUARTER_S = 900;
  for (let at = Math.ceil(from / QUARTER_S) * QUARTER_S; at <= until; at += QUARTER_S) {
    const byS = offsetAt(at) - offsetAt(at - 1);
    if (byS !== 0) found.push({ at: epochS(at), byS });
  }
  return found;
}

/** Each full hour of the yard's clock between two instants; the second of a doubled hour says so. */
export function fullHours(from: EpochS, until: EpochS, zone: string): readonly { readonly at: EpochS; readonly again: boolean }[] {
  const hours: { at: EpochS; again: boolean }[] = [];
  let time = DateTime.fromSeconds(from, { zone }).startOf('hour');
  if (secondsOf(time) < from) time = time.plus({ hours: 1 });
  for (; secondsOf(time) <= until; time = time.plus({ hours: 1 })) {
    hours.push({ at: secondsOf(time), again: isSecond(secondsOf(time), zone) });
  }
  return hours;
}
