import { normalBelow } from '@stokehold/domain/quantity';
import { expect, it } from 'vitest';

it.each([
  // Abramowitz and Stegun, table 26.1, from memory: the standard normal distribution.
  [0, 0.5], [1, 0.8413447], [1.96, 0.9750021], [-2.326348, 0.01], [-3, 0.0013499],
])('of a standard normal, below %d lies %d', (z, share) => {
  expect(Math.abs(normalBelow(z) - share)).toBeLessThanOrEqual(1e-7);
});
