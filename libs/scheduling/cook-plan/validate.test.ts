import type { PitId, ServiceId } from '@stokehold/domain/quantity';
import { expect, it } from 'vitest';
import { handAt, handCook, handPit, handWay, handYard } from './hand-yard.js';
import { earliestService, validateCookPlan } from './index.js';

const way = handWay([5]);
const pits = [handPit('a')];

it.each([
  { what: 'weight 0', problem: handYard(pits, [handCook('x', [way], { massKg: 0 })]), code: 'weight-not-above-zero' },
  { what: 'a piece heavier than any pit bears', problem: handYard(pits, [handCook('x', [way], { pieceKg: 120 })]), code: 'piece-heavier-than-any-pit-bears' },
  { what: 'a cook larger than any pit', problem: handYard(pits, [handCook('x', [way], { areaM2: 1.2 })]), code: 'cook-larger-than-any-pit' },
  { what: 'a cook without a way', problem: handYard(pits, [handCook('x', [])]), code: 'no-way' },
  { what: 'times out of order', problem: handYard(pits, [handCook('x', [handWay([6, 5])])]), code: 'times-not-sorted' },
  { what: 'a time that is no number', problem: handYard(pits, [handCook('x', [handWay([NaN])])]), code: 'times-not-sorted' },
  { what: 'more times than there are', problem: handYard(pits, [handCook('x', [handWay([5, 6], { outOf: 1 })])]), code: 'number-out-of-range' },
  { what: 'kept shorter than it rests', problem: handYard(pits, [handCook('x', [way], { keepMostS: 60 })]), code: 'keep-shorter-than-rest' },
  { what: 'a service nobody knows', problem: handYard(pits, [handCook('x', [way], { serviceId: 'other' as ServiceId })]), code: 'service-unknown' },
  { what: 'no pit', problem: handYard([], []), code: 'no-pits' },
  { what: 'a pit without heat', problem: handYard([handPit('a', { heats: [] })], []), code: 'no-heat' },
  { what: 'a pit that burns at no heat of its own', problem: handYard([handPit('a', { burningAtC: 200 })], []), code: 'burns-at-no-heat-of-its-own' },
  { what: 'the same pit twice', problem: handYard([handPit('a'), handPit('a')], []), code: 'same-id-twice' },
  { what: 'a cook fixed to no pit', problem: handYard(pits, [handCook('x', [way], { fixed: { pitId: 'b' as PitId, way: 0, onAt: handAt(1) } })]), code: 'fixed-unknown' },
  { what: 'crews that overlap', problem: handYard(pits, [], { crew: [{ from: handAt(0), until: handAt(3), people: 1 }, { from: handAt(2), until: handAt(4), people: 1 }] }), code: 'crew-overlaps' },
  { what: 'an end before its beginning', problem: handYard(pits, [], { until: handAt(-1) }), code: 'horizon-empty' },
  { what: 'a chance of 80 %', problem: handYard(pits, [], { parameters: { lateFrac: 0.8 } }), code: 'number-out-of-range' },
])('$what is refused as $code', ({ problem, code }) => expect(validateCookPlan(problem)).toMatchObject({ ok: false, refusal: { code } }));

it('a service before the earliest possible time is refused with that time and why: warm-up 1 h, 9 to 10 h, rest 1 h, by hand', () => {
  const problem = handYard(pits, [handCook('x', [handWay([9, 10])]), handCook('quick', [way])]);
  expect(validateCookPlan(problem)).toEqual({ ok: false, refusal: { code: 'service-too-early', services: [{ serviceId: 'meal', at: handAt(12), cookId: 'x', why: 'fire-not-lit', readyBy: handAt(10), byLuckAt: handAt(11) }] } });
});

it('a pit that burns already is an hour earlier; one that comes free later says so', () => {
  const at = (made: Parameters<typeof handPit>[1]) => {
    const problem = handYard([handPit('a', made)], [handCook('x', [way])]);
    return earliestService(problem, problem.services[0]!);
  };
  expect(at({ burningAtC: 121 })).toMatchObject({ at: handAt(6), why: 'cooking' });
  expect(at({ usableFrom: handAt(2) })).toMatchObject({ at: handAt(9), why: 'pit-not-free' });
});

it('a service that can only be met by luck is planned, not refused', () => {
  expect(validateCookPlan(handYard(pits, [handCook('x', [handWay([8, 9])])])).ok).toBe(true);
});
