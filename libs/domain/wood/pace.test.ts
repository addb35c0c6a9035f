import { describe, expect, it } from 'vitest';
import { expectedDryKg, usualDryKgPerS } from './pace.js';

it('a mid-size pit burns one split of 1.72 kg in 45 minutes (common practice, no source)', () => {
  expect(usualDryKgPerS({ lengthM: 2.28, diameterM: 0.762 }) * 2700).toBeCloseTo(1.72, 10);
});
it('a longer pit loses more heat and burns more', () => {
  expect(usualDryKgPerS({ lengthM: 3, diameterM: 0.762 })).toBeGreaterThan(usualDryKgPerS({ lengthM: 2, diameterM: 0.762 }));
});
it('a pit without a size is a bug, not a number', () => {
  expect(() => usualDryKgPerS({ lengthM: Number.NaN, diameterM: 0.7 })).toThrow('chamber length');
});

describe('what a fire is expected to take', () => {
  const usual = 2 / 3600;
  const fresh = { usualDryKgPerS: usual, burnedDryKg: 0, burnedS: 0 };
  const hours = (n: number) => n * 3600;

  it('a fire of which nothing is known takes the usual: 10 h at 2 kg an hour are 20 kg', () => {
    expect(expectedDryKg(fresh, 0, hours(10))).toBeCloseTo(20, 9);
  });
  it('three hours at 2.6 kg an hour beside a usual of 2: from then on 2.3 an hour', () => {
    expect(expectedDryKg({ ...fresh, burnedDryKg: 7.8, burnedS: hours(3) }, 0, hours(1))).toBeCloseTo(2.3, 9);
  });
  it('an hour of gusts counts for the next hours and not for the whole night: 3 kg an hour against 2 fade by e in 2 h', () => {
    const gusty = { ...fresh, recentDryKgPerS: 3 / 3600 };
    // by hand: 1 kg an hour x 2 h x (1 - e^(-1/2)) = 0.7869 kg more in the first hour; x 2 h = 2 kg more however long the night
    expect(expectedDryKg(gusty, 0, hours(1))).toBeCloseTo(2.7869, 4);
    expect(expectedDryKg(gusty, 0, hours(100))).toBeCloseTo(202, 6);
  });
  it('the hours add up to the night, and none takes less than nothing', () => {
    const slow = { usualDryKgPerS: usual, recentDryKgPerS: 0, burnedDryKg: 1, burnedS: hours(2) };
    const each = Array.from({ length: 10 }, (_, nth) => expectedDryKg(slow, hours(nth), hours(nth + 1)));
    expect(each.reduce((sum, kg) => sum + kg, 0)).toBeCloseTo(expectedDryKg(slow, 0, hours(10)), 9);
    expect(Math.min(...each)).toBeGreaterThanOrEqual(0);
  });
});
