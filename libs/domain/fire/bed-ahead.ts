import { memberAt } from './belief.js';
import { bedNearlyOut } from './grades.js';
import { layPieces } from './keep-pace.js';
import type { FirstAction, PlanTerms } from './plan-ahead.js';
import { copyOf, type Roll, type RolledState, rollMinute } from './roll.js';

/**
 * Share of many drawn fires whose bed comes to be nearly out before the next look, after a first action: what a dozen members cannot
 * resolve to one in a hundred.
 *
 * @param roll  of a widened belief, long enough for the wait
 * @returns 0 to 1, in steps of one over the draws
 */
export function bedRiskUntil(roll: Roll & { readonly start: RolledState }, first: FirstAction, waitMin: number, terms: PlanTerms): number {
  const state = copyOf(roll.start);
  layPieces(roll, state, first.laid, terms);
  const nearlyOut = new Uint8Array(roll.count);
  for (let minute = 0; minute < waitMin; minute++) {
    rollMinute(roll, state, minute, first.air);
    for (let m = 0; m < roll.count; m++) if (bedNearlyOut(roll.p, state.x, memberAt(m))) nearlyOut[m] = 1;
  }
  return nearlyOut.reduce((sum, out) => sum + out, 0) / roll.count;
}
