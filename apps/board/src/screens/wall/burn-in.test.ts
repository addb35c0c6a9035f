import { describe, expect, it } from 'vitest';
import { burnInShift } from './burn-in.js';

describe('the wall walks so that it does not burn in', () => {
  const places = Array.from({ length: 8 }, (_, step) => burnInShift(step * 180_000));

  it('to eight places in twenty-four minutes, then again from the first', () => {
    expect(new Set(places.map(({ xPx, yPx }) => `${xPx} ${yPx}`)).size).toBe(8);
    expect(burnInShift(8 * 180_000)).toEqual(places[0]);
  });

  it('one small step at a time, never over the margin of 8 px', () => {
    places.forEach(({ xPx, yPx }, step) => {
      const next = places[(step + 1) % 8]!;
      expect(Math.hypot(next.xPx - xPx, next.yPx - yPx)).toBe(4);
      expect(Math.max(Math.abs(xPx), Math.abs(yPx))).toBeLessThanOrEqual(8);
    });
  });

  it('stands on each side of its place equally often', () => {
    expect(places.reduce((sum, { xPx }) => sum + xPx, 0)).toBe(0);
    expect(places.reduce((sum, { yPx }) => sum + yPx, 0)).toBe(0);
  });
});
