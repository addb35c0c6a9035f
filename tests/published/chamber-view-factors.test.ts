import { elementBesideRectangle, elementFacingCorner, facingRectangles, radiantFluxWPerM2, rectanglesOnEdge } from '@stokehold/domain/chamber';
import { expect, it } from 'vitest';

// Values of Howell's catalogue items, each reckoned apart from this code by a double or quadruple Gauss integral or Monte Carlo.
const TOLERANCE = 1e-5;

it.each([[1, 1, 1, 0.13853], [0.5, 0.5, 1, 0.05986], [0.3, 0.2, 0.6, 0.04291], [1, 0.5, 0.5, 0.16738]])('B-3 for %d, %d, %d is %d', (aM, bM, cM, frac) => {
  expect(Math.abs(elementFacingCorner({ aM, bM, cM }) - frac)).toBeLessThanOrEqual(TOLERANCE);
});
it.each([[1, 1, 1, 0.05573], [0.3, 0.2, 0.6, 0.00692]])('B-4 for %d, %d, %d is %d', (aM, bM, cM, frac) => {
  expect(Math.abs(elementBesideRectangle({ aM, bM, cM }) - frac)).toBeLessThanOrEqual(TOLERANCE);
});
it.each([[1, 1, 1, 0.19982], [2, 1, 1, 0.28588], [2, 2, 1, 0.41525], [0.6, 0.45, 0.3, 0.36405]])('C-11 for %d, %d, %d is %d', (aM, bM, cM, frac) => {
  expect(Math.abs(facingRectangles({ aM, bM, cM }) - frac)).toBeLessThanOrEqual(TOLERANCE);
});
it.each([[1, 1, 1, 0.20004], [2, 1, 1, 0.23285], [0.5, 1, 1, 0.14619], [1, 2, 1, 0.11643]])('C-14 for h %d, w %d, l %d is %d', (hM, wM, lM, frac) => {
  expect(Math.abs(rectanglesOnEdge({ hM, wM, lM }) - frac)).toBeLessThanOrEqual(TOLERANCE);
});
it('what one of two standing rectangles sends is what the other gets: reciprocity of C-14', () => {
  expect(2 * rectanglesOnEdge({ hM: 1, wM: 2, lM: 1 })).toBeCloseTo(rectanglesOnEdge({ hM: 2, wM: 1, lM: 1 }), 12);
});
it.each([[0.3, 15.8], [0.6, 5.34], [1.2, 1.47]])('a throat of 0.46 by 0.30 m at 1000 K sends food at %d m a flux of %d kW/m2', (distanceM, kW) => {
  const flux = radiantFluxWPerM2({ throatWidthM: 0.46, throatHeightM: 0.3, distanceM, throatK: 1000, foodK: 397, emissivityFrac: 0.9 });
  expect(Math.abs(flux / 1000 - kW)).toBeLessThanOrEqual(0.006);
});
