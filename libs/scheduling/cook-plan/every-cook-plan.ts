import { epochS } from '@stokehold/domain/quantity';
import { weighCooks } from './checker.js';
import type { CookPlanLevels } from './plan.js';
import { cookPlanParameter, type CookPlanProblem, type CookStart } from './problem.js';

/**
 * The best levels over every plan of a small problem, each judged by the checker: every cook on every pit, every way, every
 * step, or left out. An oracle for tests; its work grows as (pits x ways x steps) to the power of the cooks.
 */
export function everyCookPlan(problem: CookPlanProblem): CookPlanLevels {
  const stepS = cookPlanParameter(problem, 'stepS');
  const steps = Math.ceil((problem.until - problem.from) / stepS);
  const better = (one: CookPlanLevels, other: CookPlanLevels | undefined) => {
    const rows = [one, other].map((levels) => (levels ? [levels.unplaced, levels.lateMillionths, levels.keptTooLongS, levels.crewOverS, levels.costCents] : [Infinity]));
    const at = rows[0]!.findIndex((value, i) => value !== rows[1]![i]);
    return at >= 0 && rows[0]![at]! < rows[1]![at]!;
  };
  let best: CookPlanLevels | undefined;
  const extend = (c: number, starts: readonly CookStart[]): void => {
    const cook = problem.cooks[c];
    const { violations, levels } = weighCooks(problem, starts);
    if (violations.length > 0) return;
    if (!cook) {
      if (better(levels, best)) best = levels;
      return;
    }
    for (const pit of problem.pits) for (const way of cook.ways.keys()) for (let step = 0; step < steps; step++) {
      extend(c + 1, [...starts, { cookId: cook.id, pitId: pit.id, way, onAt: epochS(problem.from + step * stepS) }]);
    }
    extend(c + 1, starts);
  };
  extend(0, []);
  return best!;
}
