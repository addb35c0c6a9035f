import { requireRange } from '../quantity/index.js';
import { elementFacingMiddle } from './view-factor.js';

/** Stefan-Boltzmann constant, W/m2K4. [CODATA-2018] */
const STEFAN_BOLTZMANN = 5.670374e-8;

/**
 * Radiant heat on a small piece of food that looks into the firebox's throat: what makes the near end scorch.
 *
 *     q = F eps sigma (T_throat^4 - T_food^4),  F of an element before the middle of the opening, [HOWELL] B-3
 *
 * @param seen.throatWidthM, seen.throatHeightM  the opening, m
 * @param seen.distanceM      from the opening, above 0
 * @param seen.throatK        temperature of what glows behind it, 200 to 1500 K
 * @param seen.foodK          200 to 700 K
 * @param seen.emissivityFrac 0 to 1
 * @returns W per m2 of the side that faces the fire. Held to tests/published/chamber-view-factors.test.ts
 */
export function radiantFluxWPerM2(seen: {
  readonly throatWidthM: number;
  readonly throatHeightM: number;
  readonly distanceM: number;
  readonly throatK: number;
  readonly foodK: number;
  readonly emissivityFrac: number;
}): number {
  requireRange('throat temperature (K)', seen.throatK, 200, 1500);
  requireRange('food temperature (K)', seen.foodK, 200, 700);
  requireRange('emissivity', seen.emissivityFrac, 0, 1);
  const frac = elementFacingMiddle({ aM: seen.throatWidthM, bM: seen.throatHeightM, cM: seen.distanceM });
  return frac * seen.emissivityFrac * STEFAN_BOLTZMANN * (seen.throatK ** 4 - seen.foodK ** 4);
}
