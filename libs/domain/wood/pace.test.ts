import { expect, it } from 'vitest';
import { usualDryKgPerS } from './pace.js';

it('a mid-size pit burns one split of 1.72 kg in 45 minutes (common practice, no source)', () => {
  expect(usualDryKgPerS({ lengthM: 2.28, diameterM: 0.762 }) * 2700).toBeCloseTo(1.72, 10);
});
it('a longer pit loses more heat and burns more', () => {
  expect(usualDryKgPerS({ lengthM: 3, diameterM: 0.762 })).toBeGreaterThan(usualDryKgPerS({ lengthM: 2, diameterM: 0.762 }));
});
it('a pit without a size is a bug, not a number', () => {
  expect(() => usualDryKgPerS({ lengthM: Number.NaN, diameterM: 0.7 })).toThrow('chamber length');
});
