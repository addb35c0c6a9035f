import { type DryBasis, requireRange, toWetBasis } from '../quantity/index.js';

/**
 * Net heat of bone-dry hardwood, J/kg: 18.59 MJ/kg from the elements of red oak [RAGLAND-1991], rounded; used for every
 * hardwood, because a pound is a pound: species enter through density.
 */
const DRY_HEAT_J_PER_KG = 18.6e6;
/** Heat to evaporate water at 25 °C, J/kg. [ISO-18125], the term 0.02443 per per cent of moisture. */
const EVAPORATION_J_PER_KG = 2.442e6;

/**
 * Net heat of wood per kilogram of its DRY mass: q = q_dry - h x. [ISO-18125]
 *
 * @param moisture  x, dry basis, 0 to 1.4
 * @returns J per kg of dry wood. Held to tests/published/wood-heat.test.ts
 */
export function netHeatJPerDryKg(moisture: DryBasis): number {
  requireRange('moisture', moisture, 0, 1.4);
  return DRY_HEAT_J_PER_KG - EVAPORATION_J_PER_KG * moisture;
}

/**
 * Net heat of wood as it goes on the fire, per kilogram with its water: q = q_dry (1 - w) - h w. [ISO-18125]
 *
 * @param moisture  dry basis, 0 to 1.4; w is the same moisture on the wet basis
 * @returns J per kg as fired. Held to tests/published/wood-heat.test.ts
 */
export function netHeatJPerKg(moisture: DryBasis): number {
  return netHeatJPerDryKg(moisture) * (1 - toWetBasis(moisture));
}
