import type { FirePosition, Weather } from '../fire/index.js';
import { requireRange } from '../quantity/index.js';

/** Radiant heat on a face beyond which a bottom burns while the rest cooks: as much again as hot gas at 255 °F brings it, W/m2. Source: our fit, P12 and P23. */
const SCORCHES_W_PER_M2 = 700;

/** Whether food that faces the fire with so much radiant heat burns there before it is done; `zoneExposuresWPerM2` tells the heat. */
export const bottomBurns = (fluxWPerM2: number): boolean => fluxWPerM2 > SCORCHES_W_PER_M2;

/** Which end runs hot in this wind, with this fire; 'even' within what a crew calls even. */
export type HotEnd = 'fire-end' | 'even';
/** Wind along the pit that changes the ends, m/s. Source: our fit, P18. */
const CHANGES_M_PER_S = 3;

/**
 * A fire by the door on a calm day keeps both ends in one band; a fire at the throat, or wind that holds the draft back, heats the fire
 * end. Source: common practice, no source (P18, P22, P23).
 */
export function hotEndOf(at: { readonly position: FirePosition; readonly weather: Weather }): HotEnd {
  const along = at.weather.windMPerS * Math.cos(at.weather.fromFireEndRad);
  return at.position === 'throat' || along <= -CHANGES_M_PER_S ? 'fire-end' : 'even';
}

/** How the flames stand: upright, or blown over the bed into the chamber. */
export type FlameLean = 'upright' | 'into-chamber';
/** Air that enters faster than this blows the flames over; about what rises in a flame of a hand's height, m/s. Source: our fit, P15. */
const BLOWS_M_PER_S = 1.7;

/**
 * A wide, slow inlet leaves flames upright; the same air through a small opening, or wind onto the door, blows on the bed and drives
 * them into the chamber.
 *
 *     v = m / (rho A)                                                      Source: continuity; threshold our fit
 *
 * @param at.airKgPerS   through the firebox, 0 to 1
 * @param at.inletM2     what it enters by, above 0
 */
export function flameLeanOf(at: { readonly airKgPerS: number; readonly inletM2: number; readonly ambientTempC: number }): FlameLean {
  requireRange('air (kg/s)', at.airKgPerS, 0, 1);
  requireRange('inlet (m2)', at.inletM2, 1e-6, 5);
  const kgPerM3 = 353.05 / (at.ambientTempC + 273.15);
  return at.airKgPerS / (kgPerM3 * at.inletM2) > BLOWS_M_PER_S ? 'into-chamber' : 'upright';
}
