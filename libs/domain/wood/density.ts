import { type DryBasis, requireRange } from '../quantity/index.js';
import { type Species, SPECIES_VALUES } from './species.js';

/** Above this moisture wood no longer swells: fibre saturation, dry basis. [FPL-GTR-190] ch. 4, about 30 %, several points either way. */
const FIBRE_SATURATION = 0.3;
/** Density of water, kg/m3: the specific gravities of [FPL-GTR-190] are dry mass over that of water. */
const WATER_KG_PER_M3 = 1000;

/**
 * Dry wood in a cubic metre of a piece as it lies there, swollen by its moisture.
 *
 *     S = S0 (1 - x / 0.30),  0 above 0.30         G = Gb / (1 - S)        rho_dry = 1000 G     [FPL-GTR-190] ch. 4
 *
 * @param wood.species   gives Gb and S0
 * @param wood.moisture  x, dry basis, 0 to 1.4
 * @returns kg of bone-dry wood per m3 of the piece
 */
export function dryWoodKgPerM3(wood: { readonly species: Species; readonly moisture: DryBasis }): number {
  requireRange('moisture', wood.moisture, 0, 1.4);
  const { basicGravity, shrinkagePercent } = SPECIES_VALUES[wood.species];
  const shrinkageFrac = (shrinkagePercent / 100) * Math.max(0, 1 - wood.moisture / FIBRE_SATURATION);
  return (WATER_KG_PER_M3 * basicGravity) / (1 - shrinkageFrac);
}

/**
 * Density of a piece with its water: rho = rho_dry (1 + x). [FPL-GTR-190] ch. 4.
 *
 * @param wood  species and moisture x, dry basis, 0 to 1.4
 * @returns kg/m3. Held to tests/published/wood-density.test.ts
 */
export function densityKgPerM3(wood: { readonly species: Species; readonly moisture: DryBasis }): number {
  return dryWoodKgPerM3(wood) * (1 + wood.moisture);
}
