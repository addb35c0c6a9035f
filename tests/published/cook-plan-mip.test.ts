import { checkCookPlan, planCooks } from '@stokehold/scheduling/cook-plan';
import { afterIterations } from '@stokehold/scheduling/search';
import highsLoader from 'highs';
import { expect, it } from 'vitest';
import { cookPlanAsMip, smallYard } from './cook-plan-as-mip.mjs';

// The cook plan against HiGHS, a general library for linear and mixed-integer programmes, on yards of whole-hour steps with people
// enough. (Its types speak of the CommonJS build; what is imported here is the other.)
const highs = await (highsLoader as unknown as (typeof highsLoader)['default'])();

it.each([1, 2, 3, 4])('a small yard, drawn with seed %d: bound <= the library\'s best <= ours, and ours is it within 2 %', (seed) => {
  const problem = smallYard(seed);
  const ours = planCooks(problem, { seed: 1, stop: afterIterations(3000) });
  expect(checkCookPlan(problem, ours)).toEqual([]);
  const best = highs.solve(cookPlanAsMip(problem), { time_limit: 40, mip_rel_gap: 0 });
  const { unplaced, lateMillionths, keptTooLongS } = ours.levels;
  if (best.Status === 'Infeasible') {
    expect(unplaced + lateMillionths + keptTooLongS).toBeGreaterThan(0);
    return;
  }
  expect(best.Status).toBe('Optimal');
  expect(unplaced + lateMillionths + keptTooLongS).toBe(0);
  expect(ours.boundCents).toBeLessThanOrEqual(best.ObjectiveValue + 0.01);
  expect(ours.levels.costCents).toBeGreaterThanOrEqual(best.ObjectiveValue - 0.01);
  expect(ours.levels.costCents).toBeLessThanOrEqual(best.ObjectiveValue * 1.02);
}, 120_000);
