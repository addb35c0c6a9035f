import { randomStream } from '@stokehold/domain/quantity';
import { describe, expect, it } from 'vitest';
import { afterIterations } from '../search/index.js';
import { Draft } from './draft.js';
import { handAt, handCook, handPit, handWay, handYard } from './hand-yard.js';
import { checkCookPlan, everyCookPlan, generatedYard, inventedSaturday, planCooks, validateCookPlan, type CookPlanProblem } from './index.js';
import { helpFor } from './help.js';
import { tableOf } from './table.js';

const options = { seed: 1, stop: afterIterations(600) };

describe('by hand', () => {
  it('a cook of 5 to 6 hours for a meal at hour ten with an hour of rest goes on at hour three; the fire is lit an hour before', () => {
    const plan = planCooks(handYard([handPit('a')], [handCook('x', [handWay([5, 5, 5, 6])])]), options);
    expect(plan.starts[0]).toMatchObject({ onAt: handAt(3), offBy: handAt(9), likelyOffAt: handAt(8), latestOnAt: handAt(3), lateMillionths: 0, reason: 'only-way' });
    expect(plan.burns[0]).toMatchObject({ lightAt: handAt(2), lastOffBy: handAt(9), burnS: 7 * 3600, woodKg: 28, woodCents: 700 });
    expect(plan).toMatchObject({ levels: { costCents: 700 }, boundCents: 700, proven: true });
  });

  it('two cooks that fit share one fire; a third lights another', () => {
    const plan = (cooks: number) => planCooks(handYard([handPit('a'), handPit('b')], Array.from({ length: cooks }, (_, i) => handCook(`${i}`, [handWay([5])]))), options);
    expect(plan(2).burns).toHaveLength(1);
    expect(plan(2).starts.map(({ reason }) => reason)).toEqual(['shares-a-fire', 'shares-a-fire']);
    expect(plan(3).burns).toHaveLength(2);
  });

  it('a hotter fire that saves two hours of wood is chosen, one that saves none is not', () => {
    const ways = (hot: number) => [handWay([6]), handWay([hot], { tempC: 135 })];
    const temp = (hot: number) => planCooks(handYard([handPit('a')], [handCook('x', ways(hot))]), options).burns[0]?.tempC;
    // warm-up 1 h: 7 h at 100 cents against 4 h at 150 and 5 h at 150, by hand
    expect([temp(3), temp(4)]).toEqual([135, 121]);
  });

  it('a cook that can only make it by luck goes on as early as can be, its service is at risk, and a wrap or a hotter fire would help', () => {
    const wrapped = handWay([8], { wrapAfterS: 3 * 3600 });
    const late = handCook('x', [handWay([7, 9, 9, 9])], { restLeastS: 3600 });
    const plan = planCooks(handYard([handPit('a'), handPit('b', { usableFrom: handAt(1) })], [late]), options);
    expect(plan.starts[0]).toMatchObject({ onAt: handAt(1), reason: 'as-early-as-can-be', lateMillionths: 750_000, pitId: 'a' });
    expect(plan.services[0]).toMatchObject({ atRisk: true, promisableAt: handAt(11) });
    const fixed = { ...late, ways: [...late.ways, wrapped, handWay([7], { tempC: 135 })] };
    expect(planCooks(handYard([handPit('a')], [fixed]), options).services[0]).toMatchObject({ atRisk: false });
  });

  it('what would help is told: an earlier start once the hand-made start is too late, a wrap, the other pit', () => {
    const ways = [handWay([5, 6]), handWay([5], { wrapAfterS: 3600 })];
    const table = tableOf(handYard([handPit('a'), handPit('b')], [handCook('x', ways)]));
    const draft = new Draft(table);
    draft.put(table.choices[0]![0]![0]!, 4);
    expect(helpFor(draft, 0).map(({ code, lateMillionths, start }) => [code, lateMillionths, start.pitId, start.onAt])).toEqual([
      ['earlier', 0, 'a', handAt(3)], ['another-pit', 0, 'b', handAt(3)], ['wrap', 0, 'a', handAt(4)],
    ].sort((x, y) => ['wrap', 'earlier', 'another-pit'].indexOf(x[0] as string) - ['wrap', 'earlier', 'another-pit'].indexOf(y[0] as string)));
    expect(draft.on[0]).toBe(4);
  });

  it('a cook without a place is listed with what stands against each pit', () => {
    const big = handCook('x', [handWay([5])], { areaM2: 0.9 });
    const plan = planCooks(handYard([handPit('a'), handPit('b', { bearsKg: 20 }), handPit('c', { heats: [{ tempC: 150, woodKgPerHour: 1, woodCentsPerHour: 1 }] })], [big, { ...big, id: handCook('y', []).id }].map((cook) => ({ ...cook, ways: [handWay([8])] }))), options);
    expect(plan.unplaced).toHaveLength(1);
    expect(plan.unplaced[0]?.hindrances.map(({ hindrance }) => hindrance)).toEqual(['full', 'too-heavy', 'no-such-heat']);
  });

  it('people who are not there shift nothing else: work beyond them is owned up to', () => {
    const plan = planCooks(handYard([handPit('a', { crewSPerHour: 1800 })], [handCook('x', [handWay([5])])], { crew: [] }), options);
    expect(plan.levels.crewOverS).toBe(6 * 1800);
    expect(plan.proven).toBe(false);
  });
});

/** Two or three cooks on one or two pits, a handful of steps: small enough for every plan. */
function tiny(seed: number): CookPlanProblem {
  const random = randomStream(seed);
  const pits = Array.from({ length: 1 + random.below(2) }, (_, p) => handPit(`p${p}`, { crewSPerHour: 600, areaM2: [1, 0.8][p]! }));
  const cooks = Array.from({ length: 2 + random.below(2) }, (_, c) => handCook(`c${c}`, Array.from({ length: 1 + random.below(2) }, (_, w) => handWay(Array.from({ length: 4 }, () => 1 + random.below(4)).sort((a, b) => a - b), { tempC: w === 0 ? 121 : 135, cents: w * 40 })), {
    areaM2: 0.3 + random.below(4) / 10, restLeastS: random.below(2) * 3600, keepMostS: (2 + random.below(3)) * 3600, loadS: 900, unloadS: 600, serviceId: handYard([], []).services[0]!.id,
  }));
  return { ...handYard(pits, cooks), until: handAt(8), services: [{ id: handYard([], []).services[0]!.id, readyBy: handAt(6 + random.below(2)) }], parameters: { stepS: 3600, crewCentsPerHour: 500, holdCentsPerHour: 30, lateFrac: 0.3 } };
}

it('on 40 tiny drawn yards the plan is the best of every plan there is, and the bound is not above it', () => {
  let proven = 0;
  for (let seed = 0; seed < 40; seed++) {
    const problem = tiny(seed);
    if (!validateCookPlan(problem).ok) continue;
    const plan = planCooks(problem, options);
    expect(checkCookPlan(problem, plan), `seed ${seed}`).toEqual([]);
    const best = everyCookPlan(problem);
    expect(plan.levels, `seed ${seed}`).toEqual(best);
    if (best.unplaced + best.lateMillionths + best.keptTooLongS === 0) expect(plan.boundCents).toBeLessThanOrEqual(best.costCents);
    if (plan.proven) proven += 1;
  }
  expect(proven).toBeGreaterThan(5);
}, 120_000);

it('an invented Saturday: two services, 14 cooks, 6 pits; both are met at 95 %, nobody is overloaded, and the checker agrees', () => {
  const problem = inventedSaturday();
  expect(validateCookPlan(problem).ok).toBe(true);
  const plan = planCooks(problem, { seed: 1, stop: afterIterations(1500) });
  expect(checkCookPlan(problem, plan)).toEqual([]);
  expect(plan.levels).toMatchObject({ unplaced: 0, lateMillionths: 0, keptTooLongS: 0, crewOverS: 0 });
  for (const service of plan.services) expect(service.lateMillionths).toBeLessThanOrEqual(50_000);
  expect(planCooks(problem, { seed: 1, stop: afterIterations(1500) })).toEqual(plan);
  expect(plan.levels.costCents / plan.boundCents).toBeLessThan(1.35);
}, 120_000);

it('on drawn yards of 6 pits and 14 cooks the checker finds nothing', () => {
  for (let seed = 1; seed <= 6; seed++) {
    const problem = generatedYard({ pits: 6, cooks: 14, services: 2, seed, members: 50 });
    expect(checkCookPlan(problem, planCooks(problem, { seed, stop: afterIterations(300), boundSteps: 4 })), `seed ${seed}`).toEqual([]);
  }
}, 120_000);
