import { expect, it } from 'vitest';
import { checkPlacement, everyPlacement, generatedPit, placementBound, planPlacement, validatePlacement } from './index.js';

const small = Array.from({ length: 60 }, (_, seed) => ({
  seed, zones: 2 + (seed % 2), grates: (seed % 3 === 0 ? 2 : 1) as 1 | 2, cooks: 2 + (seed % 2), pieces: seed % 3 === 0 ? 2 : 4, loadFrac: [0.5, 0.9, 1.3][seed % 3]!,
}));

it('on 60 small drawn pits the plan is the best of every placement there is, and the bound is not above it', () => {
  for (const drawn of small) {
    const problem = generatedPit(drawn);
    expect(validatePlacement(problem).ok).toBe(true);
    const plan = planPlacement(problem);
    expect(plan.proven, `seed ${drawn.seed}`).toBe(true);
    expect(plan.levels, `seed ${drawn.seed}`).toEqual(everyPlacement(problem));
    const bound = placementBound(problem);
    expect(bound.unplaced < plan.levels.unplaced || (bound.unplaced === plan.levels.unplaced && bound.priceS <= plan.levels.priceS)).toBe(true);
  }
}, 60_000);

it('on 20 large drawn pits the checker finds nothing, and the same pit gives the same plan', () => {
  for (let seed = 0; seed < 20; seed++) {
    const problem = generatedPit({ zones: 4, grates: seed % 2 === 0 ? 2 : 1, cooks: 5, pieces: 10, seed, loadFrac: 0.6 + (seed % 4) * 0.2 });
    const plan = planPlacement(problem);
    expect(checkPlacement(problem, plan), `seed ${seed}`).toEqual([]);
    if (seed % 10 === 0) expect(planPlacement(problem)).toEqual(plan);
  }
}, 60_000);
