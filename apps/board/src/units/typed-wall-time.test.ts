import { describe, expect, it } from 'vitest';
import { fromIso } from '@stokehold/domain/quantity';
import { chosen, fullHours, hourOf, isSecond, meaningOf, momentOf, nightTime, nightTimeOf, offsetChanges, wallOf } from './typed-wall-time.js';

// Source: time zone database, America/Chicago: daylight time begins 2027-03-14 at 2:00 (08:00 UTC) and ends 2027-11-07 at 2:00 (07:00 UTC).
const CHICAGO = 'America/Chicago';
const SPRING_UTC = fromIso('2027-03-14T08:00:00Z');
const AUTUMN_UTC = fromIso('2027-11-07T07:00:00Z');

describe('a wall time in the yard’s zone', () => {
  it('is one instant on a plain night', () => {
    expect(meaningOf('2027-06-05T19:00', CHICAGO)).toEqual({ kind: 'once', at: fromIso('2027-06-06T00:00:00Z') });
  });
  it('2:30 is missing on the night the clocks go forward: from 2:00 they show 3:00', () => {
    expect(meaningOf('2027-03-14T02:30', CHICAGO)).toEqual({ kind: 'skipped', from: '02:00', to: '03:00' });
    expect(meaningOf('2027-03-14T01:59', CHICAGO).kind).toBe('once');
    expect(meaningOf('2027-03-14T03:00', CHICAGO)).toEqual({ kind: 'once', at: SPRING_UTC });
  });
  it('1:30 happens twice, an hour apart, on the night they go back', () => {
    expect(meaningOf('2027-11-07T01:30', CHICAGO)).toEqual({
      kind: 'twice', first: fromIso('2027-11-07T06:30:00Z'), second: fromIso('2027-11-07T07:30:00Z'),
    });
    expect(meaningOf('2027-11-07T02:00', CHICAGO).kind).toBe('once');
  });
  it('what is not a time is unreadable', () => {
    expect(meaningOf('', CHICAGO).kind).toBe('unreadable');
    expect(meaningOf('2027-02-30T10:00', CHICAGO).kind).toBe('unreadable');
  });
  it('goes to a field and comes back the same, on both nights, through every quarter of an hour', () => {
    for (const change of [SPRING_UTC, AUTUMN_UTC]) {
      for (let at = change - 6 * 3600; at <= change + 6 * 3600; at += 900) {
        const there = fromIso(new Date(at * 1000).toISOString());
        expect(chosen(meaningOf(wallOf(there, CHICAGO), CHICAGO), isSecond(there, CHICAGO))).toBe(there);
      }
    }
  });
});

describe('a time of the night', () => {
  const evening = fromIso('2027-11-07T00:00:00Z'); // 7 p.m. on the 6th
  it('is the first one after the evening began', () => {
    expect(momentOf(nightTime('20:15'), evening, CHICAGO)).toEqual({ kind: 'once', at: fromIso('2027-11-07T01:15:00Z') });
    expect(momentOf(nightTime('06:00'), evening, CHICAGO)).toEqual({ kind: 'once', at: fromIso('2027-11-07T12:00:00Z') });
    expect(momentOf(nightTime('19:00'), evening, CHICAGO)).toEqual({ kind: 'once', at: evening });
  });
  it('asks which one where the hour happens twice', () => {
    const half = momentOf(nightTime('01:30'), evening, CHICAGO);
    expect(half.kind).toBe('twice');
    expect(nightTimeOf(fromIso('2027-11-07T07:30:00Z'), CHICAGO)).toEqual({ hour: '01:30', again: true });
  });
  it('says when it does not exist that night', () => {
    const spring = fromIso('2027-03-14T01:00:00Z'); // 7 p.m. on the 13th
    expect(momentOf(nightTime('02:30'), spring, CHICAGO)).toEqual({ kind: 'skipped', from: '02:00', to: '03:00' });
  });
});

describe('the hours along a night', () => {
  it('leave 2 a.m. out in spring and have 1 a.m. twice in autumn', () => {
    const spring = fullHours(fromIso('2027-03-14T00:00:00Z'), fromIso('2027-03-14T11:00:00Z'), CHICAGO);
    expect(spring.map(({ at }) => hourOf(at, CHICAGO))).toEqual(
      ['18:00', '19:00', '20:00', '21:00', '22:00', '23:00', '00:00', '01:00', '03:00', '04:00', '05:00', '06:00'],
    );
    const autumn = fullHours(fromIso('2027-11-07T04:00:00Z'), fromIso('2027-11-07T09:00:00Z'), CHICAGO);
    expect(autumn.map(({ at, again }) => hourOf(at, CHICAGO) + (again ? ' again' : ''))).toEqual(
      ['23:00', '00:00', '01:00', '01:00 again', '02:00', '03:00'],
    );
  });
  it('know where the clocks change and by how much', () => {
    expect(offsetChanges(fromIso('2027-03-14T00:00:00Z'), fromIso('2027-03-14T11:00:00Z'), CHICAGO)).toEqual([{ at: SPRING_UTC, byS: 3600 }]);
    expect(offsetChanges(fromIso('2027-11-07T00:00:00Z'), fromIso('2027-11-07T12:00:00Z'), CHICAGO)).toEqual([{ at: AUTUMN_UTC, byS: -3600 }]);
    expect(offsetChanges(fromIso('2027-06-05T00:00:00Z'), fromIso('2027-06-06T00:00:00Z'), CHICAGO)).toEqual([]);
  });
});
