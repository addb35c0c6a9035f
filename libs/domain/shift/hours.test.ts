import { DateTime } from 'luxon';
import { expect, it } from 'vitest';
import { epochS, fromIso, later, type PersonId } from '../quantity/index.js';
import type { PersonOnShift } from './crew.js';
import { paidS, workedS } from './hours.js';

const at = (time: string) => fromIso(`2027-01-16T${time}:00Z`);
const ana: PersonOnShift = {
  id: 'ana' as PersonId, name: 'Ana', skills: [], startsAt: at('00:00'), endsAt: at('08:00'), presence: 'here',
  wasAway: [{ from: at('00:00'), until: at('01:00') }],
  breaks: [
    { id: 'meal', lengthS: 1800, earliestAt: at('03:00'), latestAt: at('05:00'), beganAt: at('04:00'), endedAt: at('04:35') },
    { id: 'rest', lengthS: 600, earliestAt: at('05:30'), latestAt: at('06:30'), beganAt: at('06:00') },
    { id: 'open', lengthS: 600, earliestAt: at('07:00'), latestAt: at('07:30') },
  ],
};

it('hours worked leave out absences and the breaks that were taken', () => {
  // by hand: 8 h less 60 min late, 35 min meal, 10 min rest = 375 min
  expect(workedS(ana, at('00:00'), at('12:00'))).toBe(375 * 60);
  expect(workedS(ana, at('00:30'), at('01:30'))).toBe(30 * 60);
  expect(workedS(ana, at('09:00'), at('10:00'))).toBe(0);
});
it('a short rest is paid and a meal break is not (29 CFR 785.18 and 785.19, from memory)', () => {
  // by hand: 8 h less 60 min late, 35 min meal = 385 min
  expect(paidS(ana, at('00:00'), at('12:00'))).toBe(385 * 60);
});
it('a break inside an absence is taken off once', () => {
  const away = { ...ana, presence: 'away' as const, presenceFrom: at('05:00') };
  // by hand: 01:00 to 05:00 less 35 min = 205 min
  expect(workedS(away, at('00:00'), at('08:00'))).toBe(205 * 60);
});

// The time zone database: America/Chicago goes from CST to CDT on 2027-03-14 at 02:00 and back on 2027-11-07 at 02:00.
it.each([
  { evening: '2027-03-13', morning: '2027-03-14', hours: 11 },
  { evening: '2027-11-06', morning: '2027-11-07', hours: 13 },
  { evening: '2027-01-15', morning: '2027-01-16', hours: 12 },
])('the night of $evening from 18:00 to 06:00 on the wall has $hours hours', ({ evening, morning, hours }) => {
  const instant = (wall: string) => epochS(DateTime.fromISO(wall, { zone: 'America/Chicago' }).toSeconds());
  const from = instant(`${evening}T18:00`);
  const until = instant(`${morning}T06:00`);
  const person = { ...ana, startsAt: from, endsAt: until, breaks: [], wasAway: [] };
  expect(workedS(person, later(from, -3600), later(until, 3600))).toBe(hours * 3600);
});
