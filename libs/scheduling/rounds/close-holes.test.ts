import { expect, it } from 'vitest';
import { afterIterations } from '../search/index.js';
import { generatedNight, planRounds, promisesOf, repairRounds } from './index.js';

it('the checks of a pit are numbered without a hole, and a repair after nothing changes nothing', () => {
  for (let seed = 1; seed <= 4; seed++) {
    const problem = generatedNight({ pits: 6, people: 3, seed, hours: 5, gapFactor: 1.25 });
    const { plan } = planRounds(problem, { seed, stop: afterIterations(400) });
    for (const pit of problem.pits) {
      const numbers = plan.assignments.flatMap(({ work }) => (work.kind === 'check' && work.pitId === pit.id ? [work.nth] : []));
      expect(numbers).toEqual(numbers.map((_, i) => i + 1));
    }
    const promised = { ...problem, promises: promisesOf(plan, problem.from) };
    expect(repairRounds(promised, plan, { seed, stop: afterIterations(0) }).plan.levels.promises).toBe(0);
  }
}, 60_000);
