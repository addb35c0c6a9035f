import { requireRange } from '../quantity/index.js';

/** A mid-size pit burns one split of 1.72 kg dry per 45 min at about 255 °F. Source: common practice, no source. */
const USUAL_DRY_KG_PER_S = 1.72 / 2700;
/** Chamber wall of that pit, 30 in by 90 in, m2: pi d (l + d / 2). Source: geometry. */
const MID_SIZE_WALL_M2 = Math.PI * 0.762 * (2.28 + 0.381);

/**
 * What a pit of this size usually burns, as long as nothing is known of its fire tonight: with the wall that loses the heat.
 *
 * @param chamber.lengthM    inside length, 0.4 to 15 m
 * @param chamber.diameterM  inside diameter, 0.2 to 3 m
 * @returns dry wood, kg/s
 */
export function usualDryKgPerS(chamber: { readonly lengthM: number; readonly diameterM: number }): number {
  requireRange('chamber length (m)', chamber.lengthM, 0.4, 15);
  requireRange('chamber diameter (m)', chamber.diameterM, 0.2, 3);
  return (USUAL_DRY_KG_PER_S * Math.PI * chamber.diameterM * (chamber.lengthM + chamber.diameterM / 2)) / MID_SIZE_WALL_M2;
}
