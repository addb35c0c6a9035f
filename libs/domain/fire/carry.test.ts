import { expect, it } from 'vitest';
import { type EpochS, fromIso, later } from '../quantity/index.js';
import { USUAL_SPLIT } from '../wood/index.js';
import { beliefFromBytes, carryFire, dueOf, type FireToCarry, forecast, REFERENCE_SHAPE, type Surroundings } from './index.js';

const start = fromIso('2027-01-16T04:00:00Z');
const at = (minutes: number) => later(start, 60 * minutes);
const around: Surroundings = {
  weather: { windMPerS: 1.5, fromFireEndRad: 1, ambientTempC: 12, rainFrac: 0 }, air: { doorGapM: 0.0254, damperFrac: 1 }, foodLoadFrac: 0.5,
};
const band = { lowC: 118, highC: 124 };
const fire = (to: EpochS, more: Partial<FireToCarry> = {}): FireToCarry => ({
  from: { at: start, state: 'fair' }, shape: REFERENCE_SHAPE, seed: 7, to, around, band, readings: [], lastLookAt: start, wantsOutlook: false, ...more,
});
const look = (minutes: number) => ({
  at: at(minutes), bed: 'fair' as const, left: 'some' as const, on: { pieces: [USUAL_SPLIT, USUAL_SPLIT], raked: true }, position: 'door' as const,
});

it('a way in two pieces comes out as the way in one', () => {
  const half = carryFire(fire(at(20)));
  const whole = carryFire(fire(at(50)));
  const rest = carryFire(fire(at(50), { from: { belief: half.belief } }));
  expect(rest.belief).toEqual(whole.belief);
  expect(half.looked).toBeDefined();
  expect(rest.looked).toBeUndefined();
});

it('wood is laid at the time of the look, and what is believed right after it is handed back', () => {
  const { looked, estimate } = carryFire(fire(at(30), { look: look(10), lastLookAt: at(10) }));
  const without = carryFire(fire(at(30)));
  expect(beliefFromBytes(looked!).at).toBe(at(10));
  expect(estimate.at).toBe(at(30));
  expect(estimate.splitsBurning).toBeGreaterThan(without.estimate.splitsBurning);
  const late = carryFire(fire(at(30), { from: { belief: looked! } }));
  expect(late.estimate).toEqual(estimate);
});

it('readings before and after a look are taken in at their own times', () => {
  const warm = { fireEndTempC: 131, stackEndTempC: 127 };
  const readings = [2, 4, 6, 8, 10, 12, 14, 16, 18, 20].map((minutes) => ({ until: at(minutes), ...warm }));
  const carried = carryFire(fire(at(20), { look: look(9), readings, lastLookAt: at(9) }));
  expect(Math.abs(carried.estimate.chamberTempC.p50 - 129)).toBeLessThan(3);
  expect(carried.rejected).toEqual([]);
  expect(carryFire(fire(at(20), { look: look(9), readings, lastLookAt: at(9) }))).toEqual(carried);
});

it('a reading that cannot be is named and changes nothing', () => {
  const steady = Array.from({ length: 10 }, (_, nth) => ({ until: at(2 * nth + 2), fireEndTempC: 122, stackEndTempC: 119 }));
  const wild = carryFire(fire(at(22), { readings: [...steady, { until: at(22), fireEndTempC: 300 }] }));
  expect(wild.rejected).toEqual(['fire-end']);
  expect(wild.estimate.chamberTempC).toEqual(carryFire(fire(at(22), { readings: steady })).estimate.chamberTempC);
});

it('one look ahead gives the same fan and the same due time as two', () => {
  const { belief, outlook } = carryFire(fire(at(12), { wantsOutlook: true }));
  const believed = beliefFromBytes(belief);
  expect(outlook?.forecast).toEqual(forecast(believed, { ...around, band, horizonS: 5400, stepS: 120 }));
  expect(outlook?.due).toEqual(dueOf(believed, { ...around, band, lastLookAt: start }));
});

it('a belief that cannot be read any more begins again with a fair bed at the last look', () => {
  const again = carryFire(fire(at(40), { from: { belief: new Uint8Array(16) }, lastLookAt: at(10) }));
  expect(again.estimate).toEqual(carryFire(fire(at(40), { from: { at: at(10), state: 'fair' } })).estimate);
});

it('nothing goes backwards: a look before what is believed is taken in now', () => {
  const half = carryFire(fire(at(20)));
  expect(carryFire(fire(at(20), { from: { belief: half.belief }, look: look(19) })).estimate.at).toBe(at(20));
});
