import { describe, expect, it } from 'vitest';
import { fromIso, HOUR_S, MINUTE_S } from '@stokehold/domain/quantity';
import { lightUp, suggestBreaks, suggestLightUps } from './suggestions.js';

const at = (iso: string) => fromIso(iso);
const minutesFrom = (start: number) => (instant: number) => (instant - start) / MINUTE_S;

describe('lighting a pit', () => {
  it('gives a bed fit for the first split after 45 min (common practice, no source) and a hot chamber later', () => {
    const evening = at('2027-06-05T23:00:00Z');
    const { bedFitAt, hotAt } = lightUp({ steelThicknessM: 0.00635 }, evening);
    expect(minutesFrom(evening)(bedFitAt)).toBe(45);
    expect(minutesFrom(evening)(hotAt)).toBe(75); // by hand: 45 + 30 for a quarter of an inch
  });
  it('takes longer with heavier steel', () => {
    const evening = at('2027-06-05T23:00:00Z');
    expect(lightUp({ steelThicknessM: 0.0127 }, evening).hotAt).toBeGreaterThan(lightUp({ steelThicknessM: 0.005 }, evening).hotAt);
  });
});

describe('suggested light-up times', () => {
  const foodOnAt = at('2027-06-06T02:00:00Z');
  const pits = [
    { id: 'thin' as never, steelThicknessM: 0.005 },
    { id: 'heavy' as never, steelThicknessM: 0.0127 },
    { id: 'middle' as never, steelThicknessM: 0.00635 },
  ];
  const times = suggestLightUps(pits, foodOnAt);
  it('have every chamber hot when the food goes on', () => {
    for (const pit of pits) expect(lightUp(pit, times.get(pit.id)!).hotAt).toBeLessThanOrEqual(foodOnAt);
  });
  it('light the slowest first and leave ten minutes between two fires', () => {
    const order = [...times].sort((a, b) => a[1] - b[1]);
    expect(order.map(([id]) => id)).toEqual(['heavy', 'middle', 'thin']);
    expect(order[1]![1] - order[0]![1]).toBeGreaterThanOrEqual(10 * MINUTE_S);
    expect(order[2]![1] - order[1]![1]).toBeGreaterThanOrEqual(10 * MINUTE_S);
  });
});

describe('suggested breaks (common practice, no source)', () => {
  const start = at('2027-06-06T00:00:00Z');
  const breaksOf = (hours: number) => suggestBreaks(start, at('2027-06-06T00:00:00Z') + hours * HOUR_S as typeof start);
  it('are one of 30 min in the middle of the shift and 10 min for each four hours', () => {
    expect(breaksOf(10).map(({ lengthS }) => lengthS / MINUTE_S)).toEqual([10, 30, 10]);
    expect(breaksOf(12).map(({ lengthS }) => lengthS / MINUTE_S)).toEqual([10, 10, 30, 10]);
    expect(breaksOf(4).map(({ lengthS }) => lengthS / MINUTE_S)).toEqual([10]);
    expect(breaksOf(3)).toEqual([]);
  });
  it('have the long one around the middle', () => {
    const long = breaksOf(10).find(({ lengthS }) => lengthS === 30 * MINUTE_S)!;
    const middle = (long.earliestAt + long.latestAt) / 2 + long.lengthS / 2;
    expect(Math.abs(minutesFrom(start)(middle) - 300)).toBeLessThanOrEqual(5);
  });
  it.each([4, 5, 6.5, 8, 9, 10, 11, 12, 13, 16])('lie inside a shift of %s hours and in order, no two windows beginning together', (hours) => {
    const breaks = breaksOf(hours);
    for (const rest of breaks) {
      expect(rest.earliestAt).toBeGreaterThan(start);
      expect(rest.latestAt + rest.lengthS).toBeLessThan(start + hours * HOUR_S);
    }
    expect(new Set(breaks.map(({ earliestAt }) => earliestAt)).size).toBe(breaks.length);
  });
});
