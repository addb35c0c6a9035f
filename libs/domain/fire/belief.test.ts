import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dryBasis, epochS, later, OutOfRangeError, randomStream } from '../quantity/index.js';
import {
  advance, beliefFromBytes, beliefToBytes, estimateOf, type FireBelief, forecast, gradeOf, igniteTruth, kindle, parametersOf, piecesOf, REFERENCE_SHAPE,
  seeCheck, seeReadings, stepTruth, UnreadableBeliefError,
} from './index.js';
import { REFERENCE_PIT } from './parameters.js';

const AT = epochS(1_800_000_000);
export const around = {
  weather: { windMPerS: 1.5, fromFireEndRad: 1.5, ambientTempC: 15, rainFrac: 0 }, air: { doorGapM: 0.0254, damperFrac: 1 }, foodLoadFrac: 0.6,
} as const;
const wood = { thicknessM: 0.092, lengthM: 0.4, species: 'white-oak', moisture: dryBasis(0.12) } as const;
const burning = () => kindle({ shape: REFERENCE_SHAPE, at: AT, state: 'full', chamberTempC: 124, ambientTempC: 15, seed: 5 });
const ahead = (belief: FireBelief, minutes: number) => advance(belief, { ...around, to: later(belief.at, minutes * 60) });
const sensible = (belief: FireBelief) => {
  const { chamberTempC, bedKg, glowingBedKg, splitLeftFrac, learned, zoneTempC } = estimateOf(belief);
  for (const value of [...Object.values(chamberTempC), ...Object.values(bedKg), ...Object.values(learned), ...zoneTempC, glowingBedKg, splitLeftFrac]) {
    expect(Number.isFinite(value)).toBe(true);
  }
  expect(belief.members.every((value) => Number.isFinite(value))).toBe(true);
  expect(chamberTempC.p50).toBeGreaterThan(-60);
  expect(chamberTempC.p50).toBeLessThan(500);
  expect(bedKg.p50).toBeGreaterThan(0);
  expect(bedKg.p90).toBeLessThan(5);
};

it('the reference shape has the reference parameters', () => {
  expect(parametersOf(REFERENCE_SHAPE)).toEqual(REFERENCE_PIT);
});

describe('a belief', () => {
  it('goes through bytes and back to the last bit, in 16 to 40 kB', () => {
    const belief = ahead(burning(), 7);
    const bytes = beliefToBytes(belief);
    expect(bytes.byteLength).toBeGreaterThan(16e3);
    expect(bytes.byteLength).toBeLessThan(40e3);
    expect(beliefFromBytes(bytes)).toEqual(belief);
    expect(beliefFromBytes(bytes.slice())).toEqual(belief);
    expect(() => beliefFromBytes(bytes.subarray(8))).toThrow(UnreadableBeliefError);
    expect(() => beliefFromBytes(new Uint8Array(3))).toThrow('Kindle the fire anew');
  });
  it('is the same to the last bit for the same inputs, and never changes', () => {
    const start = burning();
    const before = beliefToBytes(start);
    const once = ahead(start, 30);
    expect(ahead(start, 30)).toEqual(once);
    expect(ahead(ahead(start, 12), 18)).toEqual(once);
    seeCheck(start, { bed: 'low', left: 'most', on: { pieces: [wood], raked: true }, position: 'throat' });
    seeReadings(start, { fireEndTempC: 130, stackEndTempC: 120 });
    expect(beliefToBytes(start)).toEqual(before);
  });
  it('cannot go back in time', () => {
    expect(() => advance(burning(), { ...around, to: later(AT, -60) })).toThrow(OutOfRangeError);
    expect(advance(burning(), { ...around, to: AT })).toEqual(burning());
  });
  it('refuses a pit without geometry and weather that cannot be', () => {
    expect(() => kindle({ shape: { ...REFERENCE_SHAPE, chamberLengthM: 0 }, at: AT, state: 'cold', ambientTempC: 15, seed: 1 })).toThrow('chamber length');
    expect(() => advance(burning(), { ...around, weather: { ...around.weather, windMPerS: NaN }, to: later(AT, 60) })).toThrow('wind');
  });
});

describe('readings', () => {
  it('pull the belief towards them, and make it surer', () => {
    const before = estimateOf(burning()).chamberTempC;
    const after = estimateOf(seeReadings(burning(), { fireEndTempC: 131, stackEndTempC: 129 }).belief).chamberTempC;
    expect(after.p50).toBeGreaterThan(before.p50 + 1);
    expect(after.p50).toBeLessThan(130);
    expect(after.p90 - after.p10).toBeLessThan(before.p90 - before.p10);
  });
  it.each([NaN, Infinity, -200, 900])('of %d °C are rejected and change nothing', (fireEndTempC) => {
    const { belief, rejected } = seeReadings(burning(), { fireEndTempC });
    expect(rejected).toEqual(['fire-end']);
    expect(belief.members).toEqual(burning().members);
  });
  it('from a probe that fell by 60 °C are rejected, after ten minutes it is lost, and the other end goes on', () => {
    let belief = burning();
    let lost: readonly string[] = [];
    for (let minute = 0; minute <= 12; minute += 2) {
      const seen = seeReadings(belief, { fireEndTempC: 60, stackEndTempC: estimateOf(belief).zoneTempC[2]! });
      expect(seen.rejected).toEqual(['fire-end']);
      lost = seen.lost;
      belief = ahead(seen.belief, 2);
    }
    expect(lost).toEqual(['fire-end']);
    expect(estimateOf(belief).chamberTempC.p50).toBeGreaterThan(100);
  });
  it('that both disagree for ten minutes win: the belief starts again from them', () => {
    let belief = burning();
    for (let minute = 0; minute <= 12; minute++) belief = ahead(seeReadings(belief, { fireEndTempC: 190, stackEndTempC: 188 }).belief, 1);
    expect(estimateOf(seeReadings(belief, { fireEndTempC: 190, stackEndTempC: 188 }).belief).chamberTempC.p50).toBeGreaterThan(165);
  });
  it('every ten seconds teach no more than one every two minutes, about', () => {
    const spread = (everyS: number) => {
      let belief = burning();
      for (let s = 0; s < 240; s += everyS) {
        belief = advance(seeReadings(belief, { fireEndTempC: 126, stackEndTempC: 124 }).belief, { ...around, to: later(belief.at, everyS) });
      }
      const { p10, p90 } = estimateOf(belief).chamberTempC;
      return p90 - p10;
    };
    expect(spread(10)).toBeGreaterThan(0.6 * spread(120));
  });
  it('of any garbage leave a finite, sensible belief, whatever is seen or done between', () => {
    const temp = fc.option(fc.oneof(fc.double(), fc.double({ min: -100, max: 500 })), { nil: undefined });
    const event = fc.record({
      minutes: fc.integer({ min: 0, max: 90 }), fireEndTempC: temp, stackEndTempC: temp, byHand: fc.boolean(), raked: fc.boolean(),
      bed: fc.constantFrom('low' as const, 'fair' as const, 'full' as const, undefined),
      left: fc.constantFrom('coals' as const, 'some' as const, 'most' as const, undefined),
      splits: fc.integer({ min: 0, max: 6 }), position: fc.constantFrom('door' as const, 'middle' as const, 'throat' as const),
    });
    fc.assert(
      fc.property(fc.array(event, { minLength: 5, maxLength: 60 }), fc.constantFrom('cold' as const, 'embers' as const, 'low' as const, 'full' as const), (events, state) => {
        let belief = kindle({ shape: REFERENCE_SHAPE, at: AT, state, ambientTempC: 15, seed: 9 });
        for (const { minutes, fireEndTempC, stackEndTempC, byHand, splits, bed, left, raked, position } of events) {
          belief = ahead(belief, minutes);
          belief = byHand
            ? seeCheck(belief, { fireEndTempC, stackEndTempC, bed, left, on: { pieces: Array.from({ length: splits }, () => wood), raked }, position })
            : seeReadings(belief, { ...(fireEndTempC === undefined ? {} : { fireEndTempC }), ...(stackEndTempC === undefined ? {} : { stackEndTempC }) }).belief;
        }
        sensible(belief);
      }),
      { numRuns: 20, seed: 4 },
    );
  }, 60_000);
});

describe('a fire check', () => {
  const check = { on: { pieces: [], raked: false }, position: 'door' } as const;
  it('that grades the bed low leaves less bed than one that grades it full', () => {
    const bedOf = (bed: 'low' | 'full') => estimateOf(seeCheck(burning(), { ...check, bed })).glowingBedKg;
    expect(bedOf('low')).toBeLessThan(0.75 * bedOf('full'));
  });
  it('that sees most of a split leaves more life than one that sees coals', () => {
    const lifeOf = (left: 'coals' | 'most') => estimateOf(seeCheck(burning(), { ...check, left })).splitLeftFrac;
    expect(lifeOf('coals')).toBeLessThan(lifeOf('most') - 0.3);
  });
  it('that sees most of a split where none can be finds the one nobody recorded', () => {
    const old = ahead(burning(), 100);
    expect(estimateOf(old).splitsBurning).toBe(0);
    const found = estimateOf(seeCheck(old, { ...check, left: 'most' }));
    expect(found.splitsBurning).toBe(1);
    expect(found.splitLeftFrac).toBeGreaterThan(0.6);
  });
  it('lays wood that burns: 40 minutes later the chamber is hotter than without it', () => {
    const laid = seeCheck(ahead(burning(), 40), { on: { pieces: [wood, wood], raked: true }, position: 'door' });
    const unsaid = seeCheck(ahead(burning(), 40), { on: { pieces: [wood, wood], raked: false }, position: 'door' });
    expect(unsaid.members).toEqual(laid.members); // common practice, no source: who lays a split rakes the coals even first
    const bare = seeCheck(ahead(burning(), 40), { on: { pieces: [], raked: true }, position: 'door' });
    expect(estimateOf(ahead(laid, 40)).chamberTempC.p50).toBeGreaterThan(estimateOf(ahead(bare, 40)).chamberTempC.p50 + 10);
  });
  it('takes six pieces again and again: the oldest become one', () => {
    let belief = burning();
    for (let i = 0; i < 4; i++) belief = ahead(seeCheck(belief, { on: { pieces: Array.from({ length: 6 }, () => wood), raked: true }, position: 'door' }), 5);
    sensible(belief);
    expect(estimateOf(belief).splitsBurning).toBeLessThanOrEqual(8);
  });
  it('refuses seven pieces', () => {
    expect(() => seeCheck(burning(), { on: { pieces: Array.from({ length: 7 }, () => wood), raked: true }, position: 'door' })).toThrow(OutOfRangeError);
  });
});

describe('how a fire stands', () => {
  it('is starting up from cold, burning later, and out when nobody feeds it', () => {
    let belief = kindle({ shape: REFERENCE_SHAPE, at: AT, state: 'cold', ambientTempC: 15, seed: 2 });
    expect(estimateOf(belief).mode).toBe('start-up');
    expect(estimateOf(belief).chamberTempC.p50).toBeCloseTo(15, 0);
    belief = seeCheck(ahead(belief, 45), { bed: 'fair', left: 'some', on: { pieces: [wood, wood], raked: true }, position: 'door' });
    belief = ahead(belief, 30);
    expect(estimateOf(belief).mode).toBe('burning');
    expect(estimateOf(ahead(belief, 400)).mode).toBe('out');
    expect(estimateOf(ahead(belief, 400)).bedLostRiskFrac).toBeGreaterThan(0.5);
  });
  it('is told for as many zones as the pit has', () => {
    for (const zones of [1, 2, 3, 4, 6]) {
      const belief = kindle({ shape: { ...REFERENCE_SHAPE, zones }, at: AT, state: 'full', ambientTempC: 15, seed: 2 });
      expect(estimateOf(belief).zoneTempC).toHaveLength(zones);
    }
  });
});

it('a forecast is a fan that opens, starts where the belief stands, and says when the band is left', () => {
  const belief = seeReadings(ahead(seeCheck(burning(), { on: { pieces: [wood], raked: true }, position: 'door' }), 5), { fireEndTempC: 124, stackEndTempC: 123 }).belief;
  const { chamberTempC: fan, bedKg, zones, leavesBandAfterS } = forecast(belief, { ...around, band: { lowC: 100, highC: 130 }, horizonS: 5400, stepS: 300 });
  expect(fan.p50).toHaveLength(19);
  expect(bedKg).toHaveLength(19);
  expect(fan.p50[0]).toBeCloseTo(estimateOf(belief).chamberTempC.p50, 9);
  fan.p50.forEach((middle, i) => {
    expect(fan.p10[i]!).toBeLessThanOrEqual(middle);
    expect(fan.p90[i]!).toBeGreaterThanOrEqual(middle);
  });
  expect(zones.tempC).toHaveLength(3);
  for (const zone of zones.tempC) {
    expect(zone.p50).toHaveLength(10);
    zone.p50.forEach((middle, i) => expect([zone.p10[i]! <= middle, zone.p90[i]! >= middle]).toEqual([true, true]));
  }
  expect(0.5 * (zones.tempC[0]!.p50[3]! + zones.tempC[2]!.p50[3]!)).toBeCloseTo(fan.p50[6]!, 0);
  expect(fan.p90[9]! - fan.p10[9]!).toBeGreaterThan(fan.p90[0]! - fan.p10[0]!);
  expect(leavesBandAfterS).toBeGreaterThan(20 * 60);
  expect(() => forecast(belief, { ...around, band: { lowC: 100, highC: 130 }, horizonS: 1e6, stepS: 300 })).toThrow(OutOfRangeError);
});

describe('a simulated pit', () => {
  const lit = (seed: number, spread?: number) => igniteTruth({ shape: REFERENCE_SHAPE, at: AT, ambientTempC: 15, random: randomStream(seed), ...(spread === undefined ? {} : { spread }) });
  const night = (seed: number) => {
    let truth = lit(seed);
    for (let minute = 0; minute < 240; minute += 40) truth = stepTruth(truth, { ...around, to: later(AT, (minute + 40) * 60) }, { raked: true, pieces: piecesOf('one', wood) });
    return gradeOf(truth);
  };
  it('is the same night for the same seed, and another for another', () => {
    expect(night(1)).toEqual(night(1));
    expect(night(1)).not.toEqual(night(2));
  });
  it('warms up when fed, and goes out when not', () => {
    expect(night(3).chamberTempC).toBeGreaterThan(80);
    const left = gradeOf(stepTruth(lit(3), { ...around, to: later(AT, 8 * 3600) }));
    expect(left.bedLost).toBe(true);
    expect(left.left).toBe('coals');
    expect(left.bed).toBe('low');
  });
});

it('the first look at a fire knows better than its lighting time: a chamber read at 118 °C is not held to be cold', () => {
  const lit = ahead(kindle({ shape: REFERENCE_SHAPE, at: AT, state: 'cold', ambientTempC: 15, seed: 3 }), 20);
  expect(estimateOf(lit).chamberTempC.p50).toBeLessThan(40);
  const seen = seeCheck(lit, { bed: 'fair', fireEndTempC: 118, on: { pieces: [], raked: false }, position: 'door' });
  expect(Math.abs(estimateOf(seen).chamberTempC.p50 - 118)).toBeLessThan(6);
});

it('two ends that agree with each other know better than the belief; one that is far off alone does not', () => {
  const graded = seeCheck(burning(), { bed: 'full', on: { pieces: [], raked: false }, position: 'door' });
  const both = seeCheck(graded, { fireEndTempC: 60, stackEndTempC: 56, on: { pieces: [], raked: false }, position: 'door' });
  expect(Math.abs(estimateOf(both).chamberTempC.p50 - 58)).toBeLessThan(6);
  const one = seeCheck(graded, { fireEndTempC: 20, on: { pieces: [], raked: false }, position: 'door' });
  expect(estimateOf(one).chamberTempC.p50).toBeGreaterThan(100);
});
