import { describe, expect, it } from 'vitest';
import { opensAfterS } from './opens-at.js';

const night = (date: string) => ({ shift: { date, from: '17:00', to: '05:00' }, yard: { timeZone: 'America/Chicago' } }) as Parameters<typeof opensAfterS>[0];
const HOUR_S = 3600;

describe('a practice night opens at a wall time', () => {
  it.each([
    { at: '17:00', hours: 0 },
    { at: '23:30', hours: 6.5 },
    { at: '01:00', hours: 8 },
    { at: '04:59', hours: 12 - 1 / 60 },
  ])('$at is $hours hours in', ({ at, hours }) => expect(opensAfterS(night('2027-10-15'), at)).toBe(hours * HOUR_S));

  // The time zone database: in America/Chicago the clocks go back at 02:00 of 2027-11-07.
  it('an hour that comes twice counts twice', () => expect(opensAfterS(night('2027-11-06'), '03:00')).toBe(11 * HOUR_S));

  it.each(['05:00', '12:00', '16:59'])('%s is not in the night, and its hours are named', (at) => {
    expect(() => opensAfterS(night('2027-10-15'), at)).toThrow(`The practice night runs from 17:00 to 05:00: give --at a time between them, such as 17:00, and not ${at}.`);
  });
});
