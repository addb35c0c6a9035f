import { dryBasis } from '@stokehold/domain/quantity';
import { netHeatJPerDryKg, netHeatJPerKg } from '@stokehold/domain/wood';
import { expect, it } from 'vitest';

// Net heat of hardwood with 18.6 MJ/kg dry by the formula of ISO 18125 (0.02443 MJ per kg and per cent of water), reckoned apart
// from this code. Tolerance 0.001 MJ/kg.
it.each([
  [0, 18.6, 18.6], [0.1111, 16.496, 18.329], [0.1765, 15.444, 18.169], [0.25, 14.392, 17.989], [0.4286, 12.287, 17.553], [1, 8.079, 16.158],
])('wood at %d (dry basis) gives %d MJ/kg as fired, %d per dry kilogram', (moisture, asFired, perDry) => {
  expect(Math.abs(netHeatJPerKg(dryBasis(moisture)) / 1e6 - asFired)).toBeLessThanOrEqual(0.001);
  expect(Math.abs(netHeatJPerDryKg(dryBasis(moisture)) / 1e6 - perDry)).toBeLessThanOrEqual(0.001);
});

it('wood at 0, 20, 50, 100 % gives 100, 81, 62, 42 % per kilogram as fired, as an energy table for firewood prints; within 1.5 points', () => {
  const relative = [0, 0.2, 0.5, 1].map((x) => (100 * netHeatJPerKg(dryBasis(x))) / netHeatJPerKg(dryBasis(0)));
  [100, 81, 62, 42].forEach((printed, i) => expect(Math.abs(relative[i]! - printed)).toBeLessThanOrEqual(1.5));
});

it('dry wood lies inside 17.5 +- 2.5 MJ/kg (Bartlett, Hadden, Bisby, Fire Technology 2019)', () => {
  expect(Math.abs(netHeatJPerKg(dryBasis(0)) / 1e6 - 17.5)).toBeLessThanOrEqual(2.5);
});
