import { cutByCode, mayDripOn, STARTING_CUTS } from '@stokehold/domain/food';
import { epochS, type CookId, type PitId, type ServiceId } from '@stokehold/domain/quantity';
import { expect, it } from 'vitest';
import { planLoading, type LoadingCook, type LoadingFacts, type LoadingPit } from './index.js';
import { dripRank } from './pit-problem.js';

const now = epochS(1_790_380_800);
const hours = (h: number) => epochS(now + h * 3600);
const pit = (id: string, made: Partial<LoadingPit> = {}): LoadingPit => ({
  id: id as PitId, chamberLengthM: 2.28, chamberDiameterM: 0.762, fireboxLengthM: 0.61, fireboxDiameterM: 0.61, zoneLengthsM: [0.76, 0.76, 0.76], band: { lowC: 121, highC: 127 }, lit: false, zoneShiftK: [], position: 'door', longerWood: true, ...made,
});
const cook = (id: string, code: string, pieces: number, kg: number, made: Partial<LoadingCook> = {}): LoadingCook => ({ id: id as CookId, serviceId: 'lunch' as ServiceId, cut: cutByCode(code)!, pieces, weightKg: pieces * kg, ...made });
const facts = (cooks: readonly LoadingCook[], pits: readonly LoadingPit[], readyH = 18): LoadingFacts => ({
  now, pits, cooks, services: [{ id: 'lunch' as ServiceId, readyBy: hours(readyH) }], crew: [{ from: now, until: hours(24), people: 3 }], woodCentsPerKg: 30, crewCentsPerHour: 2000, seed: 1,
});

it('briskets and chickens for one lunch are planned, loaded and past both checkers', () => {
  const planned = planLoading(facts([cook('b', 'brisket', 5, 6), cook('c', 'chicken', 8, 1.8)], [pit('n'), pit('s')]));
  expect(planned.faults).toEqual([]);
  expect(planned.setAside).toEqual([]);
  expect(planned.cooks?.plan.services[0]).toMatchObject({ atRisk: false });
  const starts = planned.cooks!.plan.starts;
  expect(starts.find(({ cookId }) => cookId === 'b')!.onAt).toBeLessThan(starts.find(({ cookId }) => cookId === 'c')!.onAt);
  expect(planned.pits.flatMap(({ plan }) => plan.placings).reduce((sum, { pieces }) => sum + pieces, 0)).toBe(13);
}, 60_000);

it('lunch in three hours is set aside with the time that can be promised, and what is on stays loaded', () => {
  const planned = planLoading(facts([cook('b', 'brisket', 4, 6), cook('on', 'pork-shoulder', 3, 4, { serviceId: null, on: { pitId: 'n' as PitId, at: hours(-2) } })], [pit('n', { lit: true })], 3));
  expect(planned.setAside).toMatchObject([{ serviceId: 'lunch', refusal: { code: 'service-too-early' } }]);
  expect(planned.cooks).toBeUndefined();
  expect(planned.pits[0]?.plan.placings.map(({ cookId }) => cookId)).toContain('on');
}, 60_000);

it('with the fire carried towards the chamber the fire end is left free where there is room (P12: common practice, no source)', () => {
  const planned = planLoading(facts([cook('on', 'brisket', 4, 6, { serviceId: null, on: { pitId: 'n' as PitId, at: hours(-2) }, doneAt: [hours(6), hours(8), hours(10), hours(11)] })], [pit('n', { lit: true, position: 'throat' })]));
  expect(planned.pits[0]?.plan.placings.every(({ zoneId }) => zoneId !== '0')).toBe(true);
});

it('a free fire end is worth something where there is longer wood to burn, and no word is said of it where there is none', () => {
  const chickens = [cook('on', 'chicken', 2, 1.8, { serviceId: null, on: { pitId: 'n' as PitId, at: hours(-1) }, doneAt: [hours(2), hours(3), hours(4), hours(5)] })];
  const [longer, none] = [true, false].map((longerWood) => planLoading(facts(chickens, [pit('n', { lit: true, longerWood, zoneShiftK: [4, 0, -4] })])).pits[0]!.plan);
  expect(longer!.fireEndFree.length).toBeGreaterThan(0);
  expect(longer!.placings.map(({ zoneId }) => zoneId)).not.toContain('0');
  expect(none!.placings.map(({ reason }) => reason)).not.toContain('fire-end-free');
  expect(none!.levels.priceS).toBeLessThanOrEqual(longer!.levels.priceS);
});

it('ranks of dripping say of every pair of cuts what the food room says', () => {
  for (const upper of STARTING_CUTS) for (const lower of STARTING_CUTS) expect(dripRank(upper) <= dripRank(lower), `${upper.code} over ${lower.code}`).toBe(mayDripOn(upper, lower));
});
