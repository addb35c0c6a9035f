import { dryBasis, epochS, later, MINUTE_S, type PitId, toIso } from '@stokehold/domain/quantity';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { FansHeld } from './fans-held.js';
import { readSample } from './index.js';
import { NightTruth } from './truth.js';

const AT = epochS(1_800_000_000);
const STEPS = Array.from({ length: 46 }, (_, nth) => nth);
/** A fan from 100 to 120 °C that falls by a degree every two minutes, to its end after an hour and a half. */
const fan = { from: toIso(AT), stepS: 2 * MINUTE_S, p10: STEPS.map((n) => 100 - n), p50: STEPS.map((n) => 110 - n), p90: STEPS.map((n) => 120 - n) };
/** A chamber that falls as the fan's middle does, by so much above it. */
const course = (aboveK: (minute: number) => number, minutes = 90) =>
  new Map(Array.from({ length: minutes }, (_, nth) => [later(AT, (nth + 1) * MINUTE_S), 110 - (nth + 1) / 2 + aboveK(nth + 1)] as const));

it('counts, for each reach, the fans that held what came: worked by hand', () => {
  const held = new FansHeld();
  held.note(fan, course(() => 0)); // inside throughout
  held.note(fan, course((minute) => (minute < 45 ? 9 : 11))); // inside at 15 and 30, above at 60 and 90
  held.note(fan, course(() => -11)); // below throughout
  held.note(fan, course(() => 10, 30)); // on the edge counts as inside; the night ended after half an hour
  expect(held.report().fans).toEqual([
    { leadMinutes: 15, count: 4, insideFrac: 0.75 },
    { leadMinutes: 30, count: 4, insideFrac: 0.75 },
    { leadMinutes: 60, count: 3, insideFrac: 0.333 },
    { leadMinutes: 90, count: 3, insideFrac: 0.333 },
  ]);
});

it('counts nothing before anything came', () => {
  const held = new FansHeld();
  held.note(fan, new Map());
  expect(held.report().fans).toEqual([]);
});

it('a fire left alone goes on under the same sky: as the true one does until hands touch that', () => {
  const sample = readSample(fileURLToPath(new URL('../../../../infra/sample/brackwater.json', import.meta.url)));
  const { lightAt: _light, fireEnd, ...pit } = sample.pits[0]!;
  const id = '0190a000-0000-7000-8000-000000000001' as PitId;
  const settings = { ...pit, id, fireEnd, zones: pit.zoneLengthsM.map((lengthM) => ({ lengthM })), probes: [], retired: false };
  const truth = new NightTruth(sample, [settings], AT, 3);
  const split = { thicknessM: 0.092, lengthM: 0.36, species: 'white-oak' as const, moisture: dryBasis(0.13) };
  const loads = new Map<PitId, number>();
  let at = AT;
  const burn = (minutes: number) => {
    for (let minute = 0; minute < minutes; minute++) truth.carry((at = later(at, MINUTE_S)), loads);
    return truth.seen(id)!.chamberTempC;
  };
  truth.light(id);
  expect(truth.leaveAlone(id, 90 * MINUTE_S)).toBeUndefined(); // still in start-up
  for (let look = 0; look < 4; look++) {
    burn(30);
    truth.put(id, { pieces: [split], raked: true }, loads);
  }
  const alone = truth.leaveAlone(id, 90 * MINUTE_S)!;
  expect(burn(30)).toBe(alone.get(at));
  truth.put(id, { pieces: [split, split], raked: true }, loads);
  expect(burn(30)).toBeGreaterThan(alone.get(at)! + 5);
  burn(60);
  expect(alone.size).toBe(90);
});
