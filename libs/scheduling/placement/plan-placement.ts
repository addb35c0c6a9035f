import { boundLevels } from './bound.js';
import { fireEndFreeOf, handlingsOf } from './handlings.js';
import { modelOf, type PlacementModel } from './model.js';
import type { PlacementLevels, PlacementPlan } from './plan.js';
import type { PlacementProblem } from './problem.js';
import { placingsOf, unplacedOf } from './reasons.js';
import { searchPlacement } from './search.js';

const levelsOf = (model: PlacementModel, cost: number): PlacementLevels => ({ unplaced: Math.floor(cost / model.strictS), priceS: cost % model.strictS });

/**
 * What should lie in which zone of one pit, with turns, swaps, reasons and the bound. No chance and no clock: the same problem
 * gives the same plan. Held to placement/plan-placement.test.ts (every placement of small pits, the checker on drawn ones).
 *
 * @param problem  one that validatePlacement lets pass
 */
export function planPlacement(problem: PlacementProblem): PlacementPlan {
  const model = modelOf(problem);
  const { counts, cost, bound, proven } = searchPlacement(model);
  return {
    pitId: problem.pitId,
    placings: placingsOf(model, counts),
    unplaced: unplacedOf(model, counts),
    handlings: handlingsOf(problem, counts),
    fireEndFree: fireEndFreeOf(problem, counts),
    levels: levelsOf(model, cost),
    bound: boundLevels(model, bound),
    proven,
  };
}
