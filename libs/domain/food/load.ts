import { requireRange } from '../quantity/index.js';

/**
 * Food that loads a mid-size pit fully: three zones of 132 kJ/K of food at 3.5 kJ/kgK. Source: our fit (the heat the fire model
 * gives a full pit) and the heat capacity of raw beef at about two thirds water, from memory.
 */
const MID_SIZE_FULL_KG = (3 * 132e3) / 3500;
/** Grate of that pit, 30 in by 90 in, m2. Source: geometry. */
const MID_SIZE_GRATE_M2 = 0.762 * 2.28;

/**
 * How full a pit is as its fire feels it: the food's mass over what would load this grate fully.
 *
 * @param load.massKg    food on the grate, 0 or more
 * @param load.lengthM   chamber, 0.4 to 15 m
 * @param load.diameterM chamber, 0.2 to 3 m
 * @returns 0 empty to 1 full; an overfull pit is 1
 */
export function loadFrac(load: { readonly massKg: number; readonly lengthM: number; readonly diameterM: number }): number {
  requireRange('food (kg)', load.massKg, 0, 1e5);
  requireRange('chamber length (m)', load.lengthM, 0.4, 15);
  requireRange('chamber diameter (m)', load.diameterM, 0.2, 3);
  return Math.min(1, load.massKg / (MID_SIZE_FULL_KG * ((load.lengthM * load.diameterM) / MID_SIZE_GRATE_M2)));
}
