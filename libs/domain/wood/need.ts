import { requireRange } from '../quantity/index.js';

/**
 * Splits that a fire still needs: burn rate times the time left, over what one split holds.
 *
 * @param need.durationS   until the pit's shift ends, 0 to 7 days
 * @param need.dryKgPerS   dry wood a second, as believed of this fire or as planned
 * @param need.pieceDryKg  dry wood in one split, above 0
 * @returns splits, not rounded
 */
export function splitsNeeded(need: { readonly durationS: number; readonly dryKgPerS: number; readonly pieceDryKg: number }): number {
  requireRange('duration (s)', need.durationS, 0, 7 * 86400);
  requireRange('burn rate (kg/s)', need.dryKgPerS, 0, 1);
  requireRange('dry wood in a split (kg)', need.pieceDryKg, 0.001, 500);
  return (need.durationS * need.dryKgPerS) / need.pieceDryKg;
}
