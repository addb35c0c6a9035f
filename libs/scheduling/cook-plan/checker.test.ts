import type { CookId, PitId } from '@stokehold/domain/quantity';
import { expect, it } from 'vitest';
import { afterIterations } from '../search/index.js';
import { handAt, handCook, handPit, handWay, handYard } from './hand-yard.js';
import { checkCookPlan, planCooks, weighCooks, whatIfCooks, type CookPlan, type CookStart } from './index.js';

const ways = [handWay([4, 5]), handWay([4], { tempC: 135, wrapAfterS: 7200 })];
const problem = handYard([handPit('a', { crewSPerHour: 600 }), handPit('b', { usableUntil: handAt(12) })], [handCook('x', ways), handCook('y', ways, { areaM2: 0.6 })]);
const plan = planCooks(problem, { seed: 1, stop: afterIterations(300) });
const start = (cookId: string, pitId: string, way: number, hour: number): CookStart => ({ cookId: cookId as CookId, pitId: pitId as PitId, way, onAt: handAt(hour) });
const found = (starts: readonly CookStart[]) => weighCooks(problem, starts).violations.map(({ code }) => code);

it('lets the plan itself pass', () => expect(checkCookPlan(problem, plan)).toEqual([]));

it.each([
  { what: 'a cook nobody knows', starts: [start('z', 'a', 0, 3)], code: 'unknown-cook' },
  { what: 'a pit nobody knows', starts: [start('x', 'z', 0, 3)], code: 'unknown-pit' },
  { what: 'a way nobody knows', starts: [start('x', 'a', 7, 3)], code: 'unknown-way' },
  { what: 'one cook twice', starts: [start('x', 'a', 0, 3), start('x', 'b', 0, 3)], code: 'cook-twice' },
  { what: 'food on before the pit is hot', starts: [start('x', 'a', 0, 0)], code: 'before-pit-ready' },
  { what: 'food on after the pit has to be free', starts: [start('x', 'b', 0, 8)], code: 'pit-not-free' },
  { what: '1.1 m2 on 1 m2', starts: [start('x', 'a', 0, 3), start('y', 'a', 0, 4)], code: 'pit-over-full' },
  { what: 'two heats in one fire', starts: [start('x', 'a', 0, 1), start('y', 'a', 1, 7)], code: 'two-heats' },
])('$what is $code', ({ starts, code }) => expect(found(starts)).toContain(code));

it.each([
  { what: 'a cook forgotten', change: (one: CookPlan) => ({ ...one, starts: one.starts.slice(1) }), code: 'cook-missing' },
  { what: 'a chance that is too good', change: (one: CookPlan) => ({ ...one, starts: one.starts.map((s) => ({ ...s, lateMillionths: 7 })) }), code: 'wrong-times' },
  { what: 'a fire lit too late', change: (one: CookPlan) => ({ ...one, burns: one.burns.map((b) => ({ ...b, lightAt: handAt(9) })) }), code: 'wrong-burn' },
  { what: 'wood that is too little', change: (one: CookPlan) => ({ ...one, burns: one.burns.map((b) => ({ ...b, woodKg: b.woodKg - 1 })) }), code: 'wrong-burn' },
  { what: 'a risk that is not owned up to', change: (one: CookPlan) => ({ ...one, services: one.services.map((s) => ({ ...s, atRisk: !s.atRisk })) }), code: 'wrong-service' },
  { what: 'an hour of work left out', change: (one: CookPlan) => ({ ...one, crewHours: one.crewHours.map((h) => ({ ...h, neededS: 0 })) }), code: 'wrong-crew' },
  { what: 'a cost that is too good', change: (one: CookPlan) => ({ ...one, levels: { ...one.levels, costCents: 1 } }), code: 'wrong-level' },
  { what: 'a bound above the cost', change: (one: CookPlan) => ({ ...one, boundCents: one.levels.costCents + 1 }), code: 'below-bound' },
])('$what is found', ({ change, code }) => expect(checkCookPlan(problem, change(plan)).map((one) => one.code)).toContain(code));

it('weight is counted beside grate: 60 kg on 50', () => {
  const heavy = handYard([handPit('a', { bearsKg: 50, areaM2: 3 })], [handCook('x', ways), handCook('y', ways)]);
  expect(weighCooks(heavy, [start('x', 'a', 0, 3), start('y', 'a', 0, 3)]).violations).toEqual([{ code: 'pit-over-weight', pitId: 'a', by: 10 }]);
});

it('what is fixed stays', () => {
  const held = handYard([handPit('a')], [handCook('x', ways, { fixed: { pitId: 'a' as PitId, way: 0, onAt: handAt(2) } })]);
  expect(planCooks(held, { seed: 1, stop: afterIterations(50) }).starts[0]).toMatchObject({ onAt: handAt(2), reason: 'fixed' });
  expect(weighCooks(held, [start('x', 'a', 0, 5)]).violations.map(({ code }) => code)).toContain('fixed-changed');
});

it('a time dragged an hour later shows its chance and its price at once, and changes nothing', () => {
  const one = handYard([handPit('a')], [handCook('x', [handWay([5, 6])])], { parameters: { stepS: 3600, crewCentsPerHour: 0, holdCentsPerHour: 60 } });
  const starts = [start('x', 'a', 0, 1)];
  const moved = whatIfCooks(one, starts, { what: 'cook', cookId: 'x' as CookId, onAt: handAt(4) });
  // 6 h planned: off by 7, kept from 7 to 9 at 60 cents an hour; from 4 on off by 10: half of the times too late. By hand
  expect(moved.moreCents).toBe(-120);
  expect(moved.before.services).toEqual([{ serviceId: 'meal', lateMillionths: 0 }]);
  expect(moved.after.services).toEqual([{ serviceId: 'meal', lateMillionths: 500_000 }]);
  expect(starts[0]!.onAt).toBe(handAt(1));
  const later = whatIfCooks(one, starts, { what: 'service', serviceId: one.services[0]!.id, readyBy: handAt(7) });
  expect(later.after.services[0]!.lateMillionths).toBe(500_000);
});
