import { charringMinPerMm, fluxFactor } from '../../libs/domain/fire/burn.js';
import { expect, it } from 'vitest';

it.each([
  // Wood Handbook, FPL-GTR-190, eq. 18-2c, white oak, worked by hand from the printed coefficients.
  { dryKgPerM3: 640, moisture: 0.12, minPerMm: 1.851 },
  { dryKgPerM3: 680, moisture: 0.2, minPerMm: 2.103 },
])('white oak of $dryKgPerM3 kg/m3 at $moisture chars a millimetre in $minPerMm min', ({ dryKgPerM3, moisture, minPerMm }) => {
  expect(Math.abs(charringMinPerMm(moisture, dryKgPerM3) - minPerMm)).toBeLessThanOrEqual(0.0006);
});

it('red oak under 55 and under 18 kW/m2 chars in the ratio of 2.56 to 1.38 min/mm (Wood Handbook Table 18-3), within 1 %', () => {
  expect(Math.abs(fluxFactor(55e3) / fluxFactor(18e3) / (2.56 / 1.38) - 1)).toBeLessThanOrEqual(0.01);
});
