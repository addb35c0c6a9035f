import { HOUR_S } from '@stokehold/domain/quantity';
import { expect, it } from 'vitest';
import { nextWallTime, wallTime } from './wall-time.js';

// Check values: time zone database (IANA tzdata), America/Chicago, through the Intl of the running Node.
const nightFrom = (date: string) => wallTime(date, '18:00', 'America/Chicago');

it('the night the clocks go forward, 13 to 14 March 2027, has 11 hours from 18:00 to 06:00', () => {
  expect(wallTime('2027-03-14', '06:00', 'America/Chicago') - nightFrom('2027-03-13')).toBe(11 * HOUR_S);
});
it('the night the clocks go back, 6 to 7 November 2027, has 13 hours', () => {
  expect(wallTime('2027-11-07', '06:00', 'America/Chicago') - nightFrom('2027-11-06')).toBe(13 * HOUR_S);
});
it('the time that is skipped moves on by the hour that is skipped', () => {
  expect(wallTime('2027-03-14', '02:30', 'America/Chicago')).toBe(wallTime('2027-03-14', '03:30', 'America/Chicago'));
});
it('the next 05:00 after 17:00 is tomorrow, and after 04:00 today', () => {
  const five = wallTime('2027-10-16', '05:00', 'America/Chicago');
  expect(nextWallTime(wallTime('2027-10-15', '17:00', 'America/Chicago'), '05:00', 'America/Chicago')).toBe(five);
  expect(nextWallTime(wallTime('2027-10-16', '04:00', 'America/Chicago'), '05:00', 'America/Chicago')).toBe(five);
});
it('a zone that does not exist is named', () => {
  expect(() => wallTime('2027-10-16', '05:00', 'America/Nowhere')).toThrow('America/Nowhere');
});
