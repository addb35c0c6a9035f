import { afterIterations } from '@stokehold/scheduling/search';
import { checkPull, generatedYard, planPull, promisesOf, type PullProblem } from '@stokehold/scheduling/wood-pull';
import highsLoader from 'highs';
import { expect, it } from 'vitest';
import { pullAsMip } from './wood-pull-as-mip.js';

// The pull against HiGHS, a general library for linear and mixed-integer programmes: it gets the same night as a text of its own.
// (Its types speak of the CommonJS build; what is imported here is the other.)
const highs = await (highsLoader as unknown as (typeof highsLoader)['default'])();
const solve = (text: string, seconds: number) => highs.solve(text, { time_limit: seconds, mip_rel_gap: 0 });
const relaxed = (text: string) => text.replace(/General[\s\S]*End/, 'End');
const plan = (problem: PullProblem, iterations = 20_000) => planPull(problem, { seed: 1, stop: afterIterations(iterations) });

it.each([1, 2, 3, 4, 5, 6, 7, 8])('a small night, drawn with seed %d: bound <= the library\'s best <= ours, ours within 2 %', (seed) => {
  const problem = generatedYard({ pits: 2, lots: 5, hours: 6, seed, plenty: seed % 2 === 0 ? 2 : 1.2, offcuts: seed > 4 });
  const ours = plan(problem);
  expect(checkPull(problem, ours)).toEqual([]);
  const best = solve(pullAsMip(problem, ours.loads), 20);
  expect(best.Status).toBe('Optimal');
  expect(ours.boundMills).toBeLessThanOrEqual(best.ObjectiveValue + 1);
  expect(ours.worth.totalMills).toBeGreaterThanOrEqual(best.ObjectiveValue - 1);
  expect(ours.worth.totalMills).toBeLessThanOrEqual(best.ObjectiveValue * 1.02 + 5); // each of a handful of shortages is rounded up to a mill
});

it.each([{ pits: 12, lots: 40, plenty: 2 }, { pits: 12, lots: 40, plenty: 2, offcuts: true }, { pits: 12, lots: 40, plenty: 1.1 }, { pits: 6, lots: 12, plenty: 0.7 }])(
  'the bound of $pits pits and $lots lots with $plenty times the wood is the optimum of the relaxed programme, to a mill in ten thousand',
  (yard) => {
    const problem = generatedYard({ ...yard, seed: 47 });
    const ours = plan(problem, 0);
    const best = solve(relaxed(pullAsMip(problem, ours.loads)), 30);
    expect(best.Status).toBe('Optimal');
    expect(ours.boundMills).toBeLessThanOrEqual(best.ObjectiveValue + 1);
    expect(ours.boundMills).toBeGreaterThanOrEqual(best.ObjectiveValue * (1 - 1e-4) - 1);
  },
);

it('with wood on carts and lots that were promised the two agree too', () => {
  const first = generatedYard({ pits: 3, lots: 6, hours: 5, seed: 11 });
  const problem: PullProblem = {
    ...first, promises: promisesOf(plan(first, 2000)),
    piles: [...first.piles, ...first.pits.map(({ id }, i) => ({ id: `cart-${id}`, lotId: first.lots[i]!.id, place: id, cartOf: id, pieces: 4 }))],
  };
  const ours = plan(problem);
  expect(checkPull(problem, ours)).toEqual([]);
  const best = solve(relaxed(pullAsMip(problem, ours.loads)), 30);
  expect(ours.boundMills).toBeLessThanOrEqual(best.ObjectiveValue + 1);
  expect(ours.boundMills).toBeGreaterThanOrEqual(best.ObjectiveValue * (1 - 1e-4) - 1);
});
