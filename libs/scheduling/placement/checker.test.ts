import type { CookId } from '@stokehold/domain/quantity';
import { expect, it } from 'vitest';
import { handGroup, handPit, handZone } from './hand-pit.js';
import { checkPlacement, moveByHand, planPlacement, weighLies, type PlacementPlan } from './index.js';

const problem = handPit(
  [handZone(1, { radiantWPerM2: 1200 }), handZone(2, { airTempC: 117 }), handZone(2, { id: '2 upper', grate: 1, bearsKg: 8 })],
  [handGroup('a', { pieces: 6 }), handGroup('birds', { dripRank: 3, offS: 18_000, bearsWPerM2: 2000 })],
);
const plan = planPlacement(problem);
const broken = (change: (plan: PlacementPlan) => PlacementPlan) => checkPlacement(problem, change(plan)).map(({ code }) => code);
const lie = (cookId: string, zoneId: string, pieces: number) => ({ cookId: cookId as CookId, zoneId, pieces });

it('lets the plan itself pass', () => expect(checkPlacement(problem, plan)).toEqual([]));

it.each([
  { what: 'a cook nobody knows', change: (one: PlacementPlan) => ({ ...one, placings: one.placings.map((p) => ({ ...p, cookId: 'x' as CookId })) }), code: 'unknown-cook' },
  { what: 'a zone nobody knows', change: (one: PlacementPlan) => ({ ...one, placings: one.placings.map((p) => ({ ...p, zoneId: 'x' })) }), code: 'unknown-zone' },
  { what: 'a piece forgotten', change: (one: PlacementPlan) => ({ ...one, placings: one.placings.slice(1) }), code: 'pieces-missing' },
  { what: 'a price that is too good', change: (one: PlacementPlan) => ({ ...one, levels: { ...one.levels, priceS: one.levels.priceS - 1 } }), code: 'wrong-level' },
  { what: 'a bound above the plan', change: (one: PlacementPlan) => ({ ...one, bound: { ...one.bound, priceS: one.levels.priceS + 1 } }), code: 'below-bound' },
  { what: 'a free fire end that is not free', change: (one: PlacementPlan) => ({ ...one, fireEndFree: [{ from: problem.groups[0]!.onAt, until: problem.groups[0]!.offAt }] }), code: 'wrong-fire-end' },
  { what: 'a turn left out', change: (one: PlacementPlan) => ({ ...one, handlings: one.handlings.filter(({ kind }) => kind !== 'turn') }), code: 'turn-missing' },
  { what: 'a turn too late', change: (one: PlacementPlan) => ({ ...one, handlings: one.handlings.map((h) => (h.kind === 'turn' ? { ...h, at: problem.groups[0]!.offAt } : h)) }), code: 'turn-missing' },
  { what: 'a swap of more than lies there', change: (one: PlacementPlan) => ({ ...one, handlings: [...one.handlings, { kind: 'swap' as const, at: problem.groups[0]!.onAt, cookId: 'a' as CookId, zoneId: '1', withZoneId: '2', pieces: 9 }] }), code: 'swap-of-nothing' },
])('$what is found', ({ change, code }) => expect(broken(change)).toContain(code));

it.each([
  { what: 'five pieces of 0.1 m2 on 0.4 m2', lies: [lie('a', '2', 5)], code: 'zone-over-full' },
  { what: '10 kg where 8 are borne', lies: [lie('a', '2 upper', 2)], code: 'zone-over-weight' },
  { what: 'birds over a roast', lies: [lie('birds', '2 upper', 1), lie('a', '2', 1)], code: 'drips' },
  { what: 'seven of six', lies: [lie('a', '2', 7)], code: 'pieces-more-than-cook' },
  { what: 'minus one piece', lies: [lie('a', '2', -1)], code: 'pieces-not-whole' },
])('by hand, $what is $code', ({ lies, code }) => expect(weighLies(problem, lies).violations.map((one) => one.code)).toContain(code));

it('what scorches is found: 10 kW/m2 on a side that bears 1', () => {
  const hot = handPit([handZone(1, { radiantWPerM2: 10_000 })], [handGroup('a')]);
  expect(weighLies(hot, [lie('a', '1', 1)]).violations).toEqual([{ code: 'scorches', cookId: 'a', zoneId: '1' }]);
});

it('the pit bears less than its zones together', () => {
  expect(weighLies({ ...problem, bearsKg: 12 }, [lie('a', '1', 3)]).violations).toEqual([{ code: 'pit-over-weight', by: 3 }]);
});

it('a move by hand tells its price at once: one piece 4 K off at 12 s/K, by hand', () => {
  const pit = handPit([handZone(2), handZone(3, { airTempC: 117 })], [handGroup('a', { pieces: 1 })]);
  const moved = moveByHand(pit, [lie('a', '2', 1)], { cookId: 'a' as CookId, pieces: 1, fromZoneId: '2', toZoneId: '3' });
  expect(moved).toMatchObject({ moreS: 48, moreUnplaced: 0, after: { violations: [] }, lies: [lie('a', '3', 1)] });
});

it('more pieces than lie there cannot be moved, and a piece taken off the pit is without a place', () => {
  const pit = handPit([handZone(2), handZone(3)], [handGroup('a', { pieces: 2 })]);
  const move = (pieces: number, to?: string) => moveByHand(pit, [lie('a', '2', 1)], { cookId: 'a' as CookId, pieces, fromZoneId: '2', ...(to !== undefined && { toZoneId: to }) });
  expect(move(2, '3').after.violations.map(({ code }) => code)).toContain('pieces-not-whole');
  expect(move(1)).toMatchObject({ moreUnplaced: 1, lies: [] });
});
