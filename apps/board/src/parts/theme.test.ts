import { describe, expect, it } from 'vitest';
import { sunIsUp, themeAt } from './theme.js';

const at = (iso: string) => Date.parse(iso);
/** On the equator and the prime meridian, where an equinox day is 12 h 07 from edge to edge: by hand, 2 x (90 + 0.833) degrees at 15 degrees an hour. */
const origin = { latitudeDeg: 0, longitudeDeg: 0 };

describe('the light of a board', () => {
  it('the sun is up for 12 h 07 on the equator at the equinox of 2027, March 20', () => {
    const minutes = Array.from({ length: 24 * 60 }, (_, minute) => sunIsUp(origin, at('2027-03-20T00:00:00Z') + minute * 60_000)).filter(Boolean).length;
    expect(Math.abs(minutes - 727)).toBeLessThanOrEqual(1);
  });

  it('is up all day at 70 degrees north in June and never in December (midnight sun and polar night)', () => {
    const north = { latitudeDeg: 70, longitudeDeg: 25 };
    for (let hour = 0; hour < 24; hour++) {
      expect(sunIsUp(north, at('2027-06-21T00:00:00Z') + hour * 3_600_000)).toBe(true);
      expect(sunIsUp(north, at('2027-12-21T00:00:00Z') + hour * 3_600_000)).toBe(false);
    }
  });

  it('is night where nobody said where the yard lies', () => expect(themeAt(at('2027-06-21T12:00:00Z'), undefined, undefined)).toBe('night'));

  it('follows the sun, and by hand holds until the sun next turns', () => {
    const noon = at('2027-03-20T12:00:00Z');
    expect(themeAt(noon, origin, undefined)).toBe('day');
    const byHand = { theme: 'night', untilMs: at('2027-03-20T18:11:00Z') } as const;
    expect(themeAt(noon, origin, byHand)).toBe('night');
    expect(themeAt(at('2027-03-21T12:00:00Z'), origin, byHand)).toBe('day');
    expect(themeAt(noon, undefined, { theme: 'day', untilMs: null })).toBe('day');
  });
});
