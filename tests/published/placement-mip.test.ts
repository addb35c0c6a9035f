import { generatedPit, planPlacement } from '@stokehold/scheduling/placement';
import highsLoader from 'highs';
import { expect, it } from 'vitest';
import { placementAsMip, UNPLACED_S } from './placement-as-mip.js';

// Loading against HiGHS, a general library for linear and mixed-integer programmes: it gets the same pit as a text of its own.
// (Its types speak of the CommonJS build; what is imported here is the other.)
const highs = await (highsLoader as unknown as (typeof highsLoader)['default'])();

it.each([
  { pit: 'three zones, three cooks', zones: 3, grates: 1 as const, cooks: 3, pieces: 8, loadFrac: 0.8 },
  { pit: 'three zones, more food than grate', zones: 3, grates: 1 as const, cooks: 3, pieces: 6, loadFrac: 1.2 },
  { pit: 'two zones on two grates', zones: 2, grates: 2 as const, cooks: 3, pieces: 5, loadFrac: 0.8 },
])('$pit, six of them: what we call the best is the library\'s best, and never above our bound\'s reach', ({ pit: _pit, ...drawn }) => {
  for (let seed = 1; seed <= 6; seed++) {
    const problem = generatedPit({ ...drawn, seed });
    const ours = planPlacement(problem);
    const best = highs.solve(placementAsMip(problem), { time_limit: 20, mip_rel_gap: 0 });
    expect(best.Status, `seed ${seed}`).toBe('Optimal');
    const cost = (levels: typeof ours.levels) => levels.unplaced * UNPLACED_S + levels.priceS;
    expect(cost(ours.bound), `seed ${seed}`).toBeLessThanOrEqual(best.ObjectiveValue + 1);
    expect(cost(ours.levels), `seed ${seed}`).toBeGreaterThanOrEqual(best.ObjectiveValue - 1);
    if (ours.proven) expect(Math.abs(cost(ours.levels) - best.ObjectiveValue), `seed ${seed}`).toBeLessThanOrEqual(1); // the hours of the fire end are rounded once
  }
}, 120_000);
