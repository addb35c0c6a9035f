import { expect, it } from 'vitest';
import { handGroup, handPit, handZone } from './hand-pit.js';
import { planPlacement, type PlacementPlan } from './index.js';

const where = (plan: PlacementPlan) => plan.placings.map(({ cookId, zoneId, pieces }) => `${pieces} ${cookId} in ${zoneId}`);

it('what the fire would scorch lies on the cooler side, and says so (P23: radiant heat on the near end scorches; common practice, no source)', () => {
  const plan = planPlacement(handPit(
    [handZone(1, { radiantWPerM2: 4000, airTempC: 124 }), handZone(2, { radiantWPerM2: 500, airTempC: 118 })],
    [handGroup('lean', { bearsWPerM2: 600, pieces: 4 }), handGroup('fat', { bearsWPerM2: 5000, pieces: 4 })],
  ));
  expect(where(plan)).toEqual(['4 lean in 2', '4 fat in 1']);
  expect(plan.placings[0]).toMatchObject({ reason: 'only-place', elsewhere: [{ zoneId: '1', hindrance: 'scorches' }] });
});

it('raw poultry never lies above other food, though the upper grate has the heat it was planned for (3-302.11 of the Food Code, from memory)', () => {
  const zones = [handZone(1, { airTempC: 118 }), handZone(1, { id: '1 upper', grate: 1, airTempC: 125 })];
  const bird = handGroup('birds', { dripRank: 3, wantedTempC: 125, pieces: 3 });
  expect(where(planPlacement(handPit(zones, [bird])))).toEqual(['3 birds in 1 upper']);
  expect(where(planPlacement(handPit(zones, [bird, handGroup('roast', { wantedTempC: 118, pieces: 3 })])))).toEqual(['3 birds in 1', '3 roast in 1 upper']);
  expect(where(planPlacement(handPit(zones, [bird, handGroup('later roast', { wantedTempC: 118, onS: 36_000, offS: 50_000 })])))).toEqual(['3 birds in 1 upper', '2 later roast in 1']);
});

it('half a load leaves the fire end free, and the plan says from when to when splits may lie lengthwise (P12: common practice, no source)', () => {
  const plan = planPlacement(handPit([handZone(1), handZone(2)], [handGroup('a'), handGroup('b')]));
  expect(where(plan)).toEqual(['2 a in 2', '2 b in 2']);
  expect(plan.fireEndFree).toEqual([{ from: 1_790_000_000, until: 1_790_036_000 }]);
});

it('with the fire end needed for six hours, the short cook lies there and the end is free from then on', () => {
  const plan = planPlacement(handPit([handZone(1), handZone(2)], [handGroup('long', { pieces: 4 }), handGroup('short', { offS: 21_600 })]));
  expect(where(plan)).toEqual(['4 long in 2', '2 short in 1']);
  expect(plan.fireEndFree).toEqual([{ from: 1_790_021_600, until: 1_790_036_000 }]);
});

it('a side above what it bears is turned before its dose: 4 MJ/m2 over 200 W/m2 is 20 000 s, once in ten hours, by hand', () => {
  const plan = planPlacement(handPit([handZone(1, { radiantWPerM2: 1200 })], [handGroup('a')]));
  expect(plan.handlings).toEqual([{ kind: 'turn', at: 1_790_020_000, cookId: 'a', zoneId: '1', pieces: 2 }]);
  // exposure 60 a piece, one turn 30 a piece, ten hours of fire end at 60: by hand
  expect(plan.levels).toEqual({ unplaced: 0, priceS: 2 * (60 + 30) + 600 });
});

it('a cook over two unlike zones changes places half way', () => {
  const plan = planPlacement(handPit([handZone(1, { airTempC: 128 }), handZone(2, { airTempC: 118 })], [handGroup('a', { pieces: 6 })]));
  expect(plan.handlings).toEqual([{ kind: 'swap', at: 1_790_018_000, cookId: 'a', zoneId: '1', withZoneId: '2', pieces: 2 }]);
});

it('what has no place is listed with the rule that forbids each zone', () => {
  const plan = planPlacement(handPit([handZone(1, { radiantWPerM2: 9000 }), handZone(2)], [handGroup('a', { pieces: 6 })]));
  expect(plan.unplaced).toEqual([{ cookId: 'a', pieces: 2, hindrances: [{ zoneId: '1', hindrance: 'scorches' }, { zoneId: '2', hindrance: 'full' }] }]);
  expect(plan.levels.unplaced).toBe(2);
});

it('a zone that one cook leaves takes the next', () => {
  const plan = planPlacement(handPit([handZone(2)], [handGroup('first', { pieces: 4, offS: 18_000 }), handGroup('second', { pieces: 4, onS: 18_000 })]));
  expect(plan.unplaced).toEqual([]);
});

it('the pit bears 30 kg in all: six pieces of 5 kg, though the grate has room for eight', () => {
  const plan = planPlacement(handPit([handZone(1), handZone(2)], [handGroup('a', { pieces: 8 })], { bearsKg: 30 }));
  expect(plan.unplaced.map(({ pieces }) => pieces)).toEqual([2]);
});
