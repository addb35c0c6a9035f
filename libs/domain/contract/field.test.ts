import { expect, it } from 'vitest';
import { instant } from './field.js';

const takes = (given: string) => instant.safeParse(given).success;

// The Gregorian calendar: a year that divides by 4 has a 29th of February, one that divides by 100 only when it divides by 400.
it('an instant is taken on every day that the calendar has from 2000 to 2199, and on no other', () => {
  for (let year = 1999; year <= 2200; year += 1) {
    for (let month = 1; month <= 12; month += 1) {
      for (let day = 28; day <= 32; day += 1) {
        const text = `${year}-${String(month).padStart(2, '0')}-${day}`;
        const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
        const days = month === 2 ? (leap ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31;
        expect([text, takes(`${text}T12:00:00Z`)]).toEqual([text, year >= 2000 && year <= 2199 && day <= days]);
      }
    }
  }
});

it.each(['2027-01-15T23:59:59Z', '2027-01-15T00:00:00.5Z', '2027-01-15T00:00:00.123456789Z'])('%s is taken', (text) => expect(takes(text)).toBe(true));
it.each(['2027-01-15T24:00:00Z', '2027-01-15T23:60:00Z', '2027-01-15T23:59:60Z', '2027-01-15T23:00:00', '2027-01-15T23:00:00+01:00', '2027-01-15 23:00:00Z', '2027-00-15T23:00:00Z', '2027-1-15T23:00:00Z', '2027-01-15T23:00:00.Z', '2027-01-15T23:00:00Z\n'])(
  '%j is not',
  (text) => expect(takes(text)).toBe(false),
);
