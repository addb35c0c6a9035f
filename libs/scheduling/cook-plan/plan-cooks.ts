import type { StopRule } from '../search/index.js';
import { boundCents } from './bound.js';
import { describe } from './describe.js';
import type { CookPlan } from './plan.js';
import type { CookPlanProblem } from './problem.js';
import { searchCookPlan } from './search.js';
import { tableOf } from './table.js';

export interface CookPlanOptions {
  readonly seed: number;
  readonly stop: StopRule;
  /** Steps towards the bound; 0 leaves it at 0. Default 40. */
  readonly boundSteps?: number;
}

/**
 * The night from its services backwards: which cook on which pit and how, when it goes on, when fires are lit. Every cook
 * goes on so early that its service keeps the chance asked for, and as late as that allows unless sharing a fire pays.
 * Held to cook-plan/plan-cooks.test.ts: every plan of small problems, a planned Saturday, the checker on drawn ones.
 *
 * @param problem  one that validateCookPlan lets pass
 */
export function planCooks(problem: CookPlanProblem, { seed, stop, boundSteps = 40 }: CookPlanOptions): CookPlan {
  const table = tableOf(problem);
  const { draft, iterations } = searchCookPlan(table, { seed, stop });
  const described = describe(draft);
  const { unplaced, lateMillionths, keptTooLongS, crewOverS, costCents } = described.levels;
  const well = unplaced + lateMillionths + keptTooLongS === 0;
  const bound = boundSteps > 0 ? boundCents(table, costCents, boundSteps) : 0;
  return { ...described, boundCents: well ? Math.min(bound, costCents) : bound, proven: well && crewOverS === 0 && bound >= costCents, iterations };
}
