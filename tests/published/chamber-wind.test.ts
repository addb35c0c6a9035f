import { expect, it } from 'vitest';
import { windAtHeightFrac } from '../../libs/domain/chamber/wind-profile.js';

it.each([
  // log profile, u / u10 at 2 m, reckoned apart from this code: ln(2 / 0.03) / ln(10 / 0.03) and with 0.3.
  [0.03, 0.7229], [0.3, 0.541],
])('over ground of roughness %d m wind at 2 m is %d of the wind at 10 m', (roughnessM, frac) => {
  expect(Math.abs(windAtHeightFrac(2, roughnessM) - frac)).toBeLessThanOrEqual(0.0001);
});
