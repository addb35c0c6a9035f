import { randomStream } from '@stokehold/domain/quantity';
import { expect, it } from 'vitest';
import { afterIterations } from '../search/index.js';
import { everyNight } from './every-night.js';
import { handNight, handPerson, handPit, handTask, minute } from './hand-night.js';
import { checkRounds, planRounds, type RoundProblem } from './index.js';

const STEP_S = 600;
const UNTIL = 90;

/** Two pits that want a look of ten minutes each half hour, up to two tasks, one or two people; every time a multiple of ten minutes. */
function tinyNight(seed: number): RoundProblem {
  const random = randomStream(seed);
  const steps = (least: number, most: number) => 10 * (least + random.below(most - least + 1));
  const place = () => (seed % 2 === 0 && random.below(2) === 0 ? 'stack' : 'yard');
  const gap = { earliestS: 1200, dueS: 1800, latestSafeS: 2400 };
  const person = (id: string) => handPerson(id, { until: UNTIL });
  const pit = (i: number) => {
    const due = steps(1, 3);
    return { ...handPit(`pit-${i}`, due, { check: 10, place: place(), weight: 1 + random.below(3) }), gap, first: { earliestAt: minute(due - 10), dueAt: minute(due), latestSafeAt: minute(due + 10) } };
  };
  const task = (i: number) => {
    const due = steps(0, 6);
    return handTask(`haul-${i}`, due, steps(1, 2), { earliest: Math.max(0, due - 20), place: place(), latest: due + steps(0, 2) });
  };
  return handNight({
    until: minute(UNTIL), places: ['yard', 'stack'], walkS: [[0, STEP_S], [STEP_S, 0]],
    people: seed % 4 < 3 ? [person('ana')] : [person('ana'), person('ben')],
    pits: Array.from({ length: 2 }, (_, i) => pit(i)),
    tasks: Array.from({ length: random.below(seed % 4 < 3 ? 3 : 2) }, (_, i) => task(i)),
  });
}

// How often a fire is looked at and how early are habits of the planner and no rules: here both are wide. They still bind now and then:
// night 158 of this generator could be a little less late with a look that the planner calls too early.
const parameters = { earlyFrac: 0.5, gapFrac: 0.7 };

it('150 small nights with checks are planned as well as any plan of them could be, in all that comes before an even load', () => {
  const searched = Array.from({ length: 150 }, (_, i) => {
    const problem = { ...tinyNight(i + 1), parameters };
    const { plan } = planRounds(problem, { seed: i, stop: afterIterations(1000) });
    expect(checkRounds(problem, plan)).toEqual([]);
    const { unsafeS, unplaced, pastLatestS, lateWeightedS } = plan.levels;
    return { night: i + 1, found: [unsafeS, unplaced, pastLatestS, lateWeightedS], best: everyNight(problem, STEP_S) };
  });
  expect(searched.filter(({ found, best }) => found.join() !== best.join())).toEqual([]);
  // Not all of them are easy: in some something has to be late.
  expect(searched.filter(({ best }) => best[3] > 0).length).toBeGreaterThan(20);
}, 120_000);
