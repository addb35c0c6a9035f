import { describe, expect, it } from 'vitest';
import { dryBasis, epochS, later } from '../quantity/index.js';
import { advance, airOf, beliefFromBytes, beliefToBytes, byUrgency, carryFire, estimateOf, type FireBelief, type FireTroubleCode, kindle, piecesOf, REFERENCE_SHAPE, seeCheck, seeReadings, type Surroundings, troublesOf, USUAL_AIR_SET } from './index.js';

const AT = epochS(1_800_000_000);
const around: Surroundings = { weather: { windMPerS: 1.5, fromFireEndRad: 1.5, ambientTempC: 15, rainFrac: 0 }, air: airOf(USUAL_AIR_SET), foodLoadFrac: 0.6 };
const wood = { thicknessM: 0.092, lengthM: 0.4, species: 'white-oak', moisture: dryBasis(0.12) } as const;
const one = { pieces: piecesOf('one', wood), raked: true };
const codes = (belief: FireBelief, what: Surroundings = around): readonly FireTroubleCode[] => troublesOf(belief, what).map(({ code }) => code);
const burning = () => seeCheck(kindle({ shape: REFERENCE_SHAPE, at: AT, state: 'full', chamberTempC: 124, ambientTempC: 15, seed: 5 }), { bed: 'full', left: 'some', on: one, position: 'door' });
/** Carried on for so many minutes, with what the probes show meanwhile. */
function with2(belief: FireBelief, minutes: number, shows: (minute: number, belief: FireBelief) => { fireEndTempC?: number; stackEndTempC?: number }): FireBelief {
  let now = belief;
  for (let minute = 2; minute <= minutes; minute += 2) {
    now = advance(now, { ...around, to: later(belief.at, minute * 60) });
    now = seeReadings(now, shows(minute, now)).belief;
  }
  return now;
}
const healthy = (_: number, belief: FireBelief) => {
  const zones = estimateOf(belief).zoneTempC;
  return { fireEndTempC: zones[0]! + 0.5, stackEndTempC: zones[2]! - 0.5 };
};

describe('what is wrong at a fire', () => {
  it('is nothing while it burns well and its probes agree', () => {
    expect(codes(with2(burning(), 30, healthy))).toEqual([]);
  });
  it('is a probe lost after it failed low for ten minutes; the other goes on', () => {
    const found = troublesOf(with2(burning(), 16, (minute, belief) => ({ ...healthy(minute, belief), fireEndTempC: 55 })), around);
    expect(found).toMatchObject([{ code: 'probe-lost', end: 'fire-end' }]);
  });
  it('is ends that disagree when one probe drifts slowly away', () => {
    const drifting = with2(burning(), 60, (minute, belief) => ({ ...healthy(minute, belief), stackEndTempC: healthy(minute, belief).stackEndTempC - Math.min(14, 0.5 * minute) }));
    expect(codes(drifting)).toContain('ends-disagree');
  });
  it('is nothing known when neither probe nor person told anything for an hour', () => {
    expect(codes(advance(burning(), { ...around, to: later(AT, 62 * 60) }))).toContain('nothing-known');
  });
  it('is a fire not lit yet after lighting, and one that is out when nobody came for hours', () => {
    expect(codes(kindle({ shape: REFERENCE_SHAPE, at: AT, state: 'cold', ambientTempC: 15, seed: 1 }))).toEqual(['not-lit']);
    expect(codes(advance(burning(), { ...around, to: later(AT, 6 * 3600) }))[0]).toBe('out');
  });
  it('is first of all a bed nearly out, long before it is lost', () => {
    const left = (minutes: number) => advance(burning(), { ...around, to: later(AT, minutes * 60) });
    const minutes = [60, 90, 120, 150, 180];
    const first = minutes.find((minute) => codes(left(minute)).includes('bed-nearly-out'));
    expect(first).toBeDefined();
    expect(codes(left(first!))[0]).toBe('bed-nearly-out');
    expect(estimateOf(left(first!)).mode).toBe('bed-nearly-out');
    expect(estimateOf(left(first!)).bedLostRiskFrac).toBeLessThan(0.1);
  });
  it('is wood that nobody recorded when most of a split lies where all should be coals; nothing is learned from it', () => {
    const old = advance(burning(), { ...around, to: later(AT, 100 * 60) });
    const found = seeCheck(old, { bed: 'fair', left: 'most', on: { pieces: [], raked: false }, position: 'door' });
    expect(codes(found)).toContain('wood-not-recorded');
    expect(estimateOf(found).learned.burnFactor).toBeCloseTo(estimateOf(old).learned.burnFactor, 1);
  });
  it('is a wind that drives the fire or holds it back, and a screen takes most of the first away', () => {
    const blown = (windMPerS: number, fromFireEndRad: number, screen = false): Surroundings => ({ ...around, weather: { ...around.weather, windMPerS, fromFireEndRad }, air: airOf({ ...USUAL_AIR_SET, screen }) });
    expect(troublesOf(burning(), blown(8, 0))).toMatchObject([{ code: 'wind-burst', onto: 'firebox' }]);
    expect(troublesOf(burning(), blown(8, Math.PI))).toMatchObject([{ code: 'wind-burst', onto: 'stack' }]);
    expect(codes(burning(), blown(6, 0, true))).toEqual([]);
  });
  it('is a belief that began again when both probes showed what could not be for ten minutes', () => {
    const again = with2(burning(), 16, () => ({ fireEndTempC: 190, stackEndTempC: 186 }));
    expect(codes(again)).toContain('diverged');
    expect(Math.abs(estimateOf(again).chamberTempC.p50 - 188)).toBeLessThan(8);
  });
  it('is said most urgent first, and kept with the belief', () => {
    expect(byUrgency([{ code: 'not-lit' }, { code: 'out' }, { code: 'running-away', end: 'fire-end', riseKPerMin: 20 }]).map(({ code }) => code)).toEqual(['running-away', 'out', 'not-lit']);
    const diverged = with2(burning(), 16, () => ({ fireEndTempC: 190, stackEndTempC: 186 }));
    expect(beliefFromBytes(beliefToBytes(diverged))).toEqual(diverged);
  });
});

it('the air that a look left is remembered: a door to a finger burns on as such, whatever is assumed', () => {
  const fire = { shape: REFERENCE_SHAPE, seed: 1, around, band: { lowC: 121, highC: 127 }, readings: [], lastLookAt: AT, wantsOutlook: false, from: { at: AT, state: 'full' } } as const;
  const look = { at: later(AT, 60), bed: 'full', left: 'some', on: one, position: 'door' } as const;
  const usual = carryFire({ ...fire, to: later(AT, 120), look });
  const finger = carryFire({ ...fire, to: later(AT, 120), look: { ...look, air: { door: 'one-finger', damper: 'open', screen: false } } });
  const after = (belief: Uint8Array) => carryFire({ ...fire, from: { belief }, to: later(AT, 25 * 60) }).estimate.chamberTempC.p50;
  expect(beliefFromBytes(finger.belief).air).toEqual({ door: 'one-finger', damper: 'open', screen: false });
  expect(after(finger.belief)).toBeLessThan(after(usual.belief) - 1);
});
