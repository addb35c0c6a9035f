import { expect, it } from 'vitest';
import { firstWrong, outOfRange, parameterOf, type Ranges } from './given.js';

const RANGES: Ranges<{ gapFrac: number; waitS: number }> = { gapFrac: { usual: 0.8, min: 0.5, max: 1 }, waitS: { usual: 240, min: 0, max: 3600 } };

it('a parameter that is not given has its usual value', () => {
  expect(parameterOf(RANGES, { waitS: 60 }, 'waitS')).toBe(60);
  expect(parameterOf(RANGES, { waitS: 60 }, 'gapFrac')).toBe(0.8);
  expect(parameterOf(RANGES, undefined, 'waitS')).toBe(240);
});

it('both ends of a range belong to it; what lies outside, and what is no number, is named', () => {
  expect(outOfRange(RANGES, { gapFrac: 0.5, waitS: 3600 })).toBeUndefined();
  expect(outOfRange(RANGES, { waitS: 3601 })).toBe('waitS');
  expect(outOfRange(RANGES, { gapFrac: Number.NaN })).toBe('gapFrac');
  expect(outOfRange(RANGES, undefined)).toBeUndefined();
});

it('of several wrong things the first is told', () => {
  expect(firstWrong([3, 8, 9], (n, nth) => (n > 5 ? `${n} at ${nth}` : undefined))).toBe('8 at 1');
  expect(firstWrong([1, 2], () => undefined)).toBeUndefined();
});
