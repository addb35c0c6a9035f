import { firePage } from '@stokehold/domain/contract';
import { epochS, type EpochS, later, type PitId, type ShiftId, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import { expect, it } from 'vitest';
import { firePageOf, type NightKnown } from './fire-page.js';

const LIT = epochS(1_800_000_000);
const at = (minutes: number): EpochS => later(LIT, 60 * minutes);
const shiftId = randomUUID() as ShiftId;
const night = { shiftId, startsAt: LIT, lightAt: at(-60), endsAt: at(720), band: { lowC: 118, highC: 124 } };
/** A fan that falls a tenth of a kelvin a minute and is 4 K wide to either side, forecast at a minute of the night. */
const fanFrom = (minutes: number, startC = 121) => {
  const p50 = Array.from({ length: 46 }, (_, step) => startC - 0.2 * step);
  return { from: toIso(at(minutes)), stepS: 120, p10: p50.map((tempC) => tempC - 4), p50, p90: p50.map((tempC) => tempC + 4) };
};
const told = (minutes: number, startC = 121) => ({ checkId: randomUUID(), lookedAt: at(minutes), advised: 'one' as const, fan: fanFrom(minutes, startC) });
const line = (from: number, until: number, tempC: (minute: number) => number, measured = true) =>
  Array.from({ length: (until - from) / 2 + 1 }, (_, nth) => ({ at: at(from + 2 * nth), tempC: tempC(from + 2 * nth), measured, unused: [] }));
const page = (more: Partial<NightKnown>) =>
  firePage.parse(
    firePageOf({
      pitId: randomUUID() as PitId, now: at(700), night, nights: [night], line: [], told: [], touches: [], course: [], setBacks: [], unused: [], ...more,
    }),
  );

it('each check is held against what came at 15, 30, 60 and 90 minutes, as long as nobody touched the fire', () => {
  // What came fell exactly as forecast for 40 minutes and then stood 5 K above it.
  const came = line(0, 100, (minute) => 121 - 0.1 * minute + (minute > 40 ? 5 : 0));
  const [check] = page({ told: [told(0)], line: came }).told;
  expect(check!.points.map(({ aheadS }) => aheadS / 60)).toEqual([15, 30, 60, 90]);
  // By hand at 30 min: 121 - 3 = 118. At 15 the nearest measurements are of minutes 14 and 16: 119.6 or 119.4.
  expect(check!.points[1]!.cameC).toBeCloseTo(118, 9);
  expect(Math.abs(check!.points[0]!.cameC! - 119.5)).toBeLessThan(0.11);
  expect(check!.points[2]!.cameC).toBeCloseTo(120, 9);
  expect(check!.points.map(({ uncompared }) => uncompared)).toEqual([null, null, null, null]);
});

it('after somebody put wood on, raked or moved the air, a forecast is held against nothing and says why', () => {
  const [check] = page({ told: [told(0)], touches: [at(0), at(45)], line: line(0, 100, () => 121) }).told;
  expect(check!.points.map(({ uncompared }) => uncompared)).toEqual([null, null, 'touched', 'touched']);
});

it('what is still to come, and what nobody measured, says so', () => {
  const [check] = page({ told: [told(0)], now: at(70), line: line(0, 34, () => 121) }).told;
  expect(check!.points.map(({ uncompared }) => uncompared)).toEqual([null, null, 'not-measured', 'to-come']);
});

it('an estimate is no measurement: forecasts are never held against what the house itself believed', () => {
  const known = page({ told: [told(0)], line: line(0, 100, () => 121, false) });
  expect(known.told[0]!.points.every(({ cameC }) => cameC === null)).toBe(true);
  expect([known.skill, known.inside]).toEqual([[], null]);
});

it('skill stands beside persistence and the trend of the quarter of an hour before', () => {
  // Falls 0.1 K a minute throughout, as forecast: the forecast is right, as it stood is 3 K off at 30 min, straight on is right.
  const known = page({ told: [told(20)], line: line(0, 120, (minute) => 123 - 0.1 * minute) });
  const half = known.skill.find(({ aheadS }) => aheadS === 1800)!;
  expect(half.count).toBe(1);
  expect(half.errorK).toBeCloseTo(0, 9);
  expect(half.persistenceErrorK).toBeCloseTo(3, 9);
  expect(half.trendErrorK!).toBeLessThan(0.45); // the quarter of an hour before is read up to a minute off
  expect(half.insideFrac).toBe(1);
});

it('the share inside the fan counts every measured moment until somebody touched the fire', () => {
  // 45 moments of two minutes: half of them 5 K above the middle of a fan that reaches 4 K.
  const known = page({ told: [told(0)], line: line(0, 90, (minute) => 121 - 0.1 * minute + (minute > 44 ? 5 : 0)) });
  expect(known.inside!.count).toBe(45);
  expect(known.inside!.insideFrac).toBeCloseTo(22 / 45, 9);
  expect(page({ told: [told(0)], touches: [at(20)], line: line(0, 90, () => 121) }).inside!.count).toBe(10);
});

it('what is learned now is what was learned since the last set back, and the history keeps all of it', () => {
  const point = (minutes: number, log: number) => ({ at: at(minutes), loss: { log, sd: 0.1 }, burn: { log: 0, sd: 0.1 }, coal: { log: 0, sd: 0.1 } });
  const back = { id: randomUUID(), at: at(50), by: null, reason: 'new gasket' };
  const course = [point(10, 0.1), point(40, 0.2), point(60, 0.02)];
  expect(page({ course, setBacks: [back] }).learned).toMatchObject({ now: { loss: { log: 0.02 } }, setBacks: [{ reason: 'new gasket' }] });
  expect(page({ course, setBacks: [back] }).learned.course).toHaveLength(3);
  expect(page({ course: course.slice(0, 2), setBacks: [back] }).learned.now).toBeNull();
});

it('readings that were not used stand in stretches by end and reason', () => {
  const one = (minutes: number, end: 'fire-end' | 'stack-end' = 'fire-end') => ({ at: at(minutes), end, why: 'far-off' as const, tempC: 20 });
  const { unused } = page({ unused: [one(0), one(2), one(3, 'stack-end'), one(4), one(40)] });
  expect(unused.map(({ end, count, from, until }) => [end, count, from, until])).toEqual([
    ['fire-end', 3, toIso(at(0)), toIso(at(4))],
    ['stack-end', 1, toIso(at(3)), toIso(at(3))],
    ['fire-end', 1, toIso(at(40)), toIso(at(40))],
  ]);
});

it('forecasts of the first hour after lighting are shown and not counted', () => {
  const known = page({ night: { ...night, lightAt: at(-30) }, told: [told(0), told(40)], touches: [at(40)], line: line(0, 80, () => 121) });
  expect(known.told[0]!.points[1]!.cameC).toBe(121);
  expect(known.skill.map(({ count }) => count)).toEqual([1, 1]);
});

it('two ends that agree and were not believed count as what came: a wrong belief cannot hide its misses', () => {
  const refused = (tempC: number, other: number) =>
    line(0, 40, () => 121, false).map((point) => ({
      ...point, unused: [{ end: 'fire-end' as const, why: 'far-off' as const, tempC }, { end: 'stack-end' as const, why: 'far-off' as const, tempC: other }],
    }));
  const [hot] = page({ told: [told(0)], line: refused(161, 155) }).told;
  expect(hot!.points[1]!.cameC).toBe(158);
  const [failing] = page({ told: [told(0)], line: refused(161, 20) }).told;
  expect(failing!.points[1]!.cameC).toBeNull();
});

it('at the next look it says what had come by then, and when the band was to be left and was', () => {
  // Told to fall from 121 by 0.1 K a minute: the middle of the fan leaves 118 to 124 after minute 30; what came left it at minute 20.
  const came = line(0, 60, (minute) => (minute < 20 ? 121 : 117));
  const [first, last] = page({ told: [told(0), told(40, 130)], line: came, now: at(60) }).told;
  expect(first!.outcome).toEqual({ at: toIso(at(40)), cameC: 117, wasToLeaveAt: toIso(at(32)), leftAt: toIso(at(20)) });
  expect(last!.outcome).toMatchObject({ at: toIso(at(60)), cameC: 117, wasToLeaveAt: toIso(at(40)) });
  expect(page({ told: [told(0)], line: [], now: at(60) }).told[0]!.outcome).toBeNull();
});
