// Vehicle routing with time windows (Solomon 1987), the first 25 customers of R101 and C101, through the same search as the
// night's rounds. Convention: distances cut to one decimal, distance alone counts, no cost of a vehicle.
// Optima proven by enumerating all feasible routes (780 of R101) or route sets (210 452 of C101) and a set partition whose
// linear relaxation is integral; the same values stand in the published lists of solved instances (from memory).
import { describe, expect, it } from 'vitest';
import { afterIterations } from '@stokehold/scheduling/search';
import { checkRounds, dispatchRounds, planRounds, validateRounds } from '@stokehold/scheduling/rounds';
import { roundsOfRoutes, routesOf } from '../bench/rounds-vrptw.mjs';

describe.each([
  { name: 'R101', optimum: 617.1, vehicles: 8 },
  { name: 'C101', optimum: 191.3, vehicles: 3 },
] as const)('$name with 25 customers', ({ name, optimum, vehicles }) => {
  const problem = roundsOfRoutes(name);

  it('is a night that the planner accepts', () => {
    expect(validateRounds(problem).ok).toBe(true);
    expect(checkRounds(problem, dispatchRounds(problem))).toEqual([]);
  });

  it.each([1, 2, 3])(`is driven in ${optimum}, with every window kept (seed %d)`, (seed) => {
    const { plan } = planRounds(problem, { seed, stop: afterIterations(8000) });
    expect(checkRounds(problem, plan)).toEqual([]);
    expect(plan.levels).toMatchObject({ unplaced: 0, pastLatestS: 0 });
    const routes = routesOf(name, plan);
    expect(routes.heaviest).toBeLessThanOrEqual(routes.capacity);
    expect(routes).toMatchObject({ distance: optimum, vehicles });
  });

  it('has no plan below the optimum', () => {
    for (const seed of [4, 5, 6]) {
      const { plan } = planRounds(problem, { seed, stop: afterIterations(200) });
      if (plan.levels.unplaced + plan.levels.pastLatestS === 0) expect(routesOf(name, plan).distance).toBeGreaterThanOrEqual(optimum);
    }
  });
});
