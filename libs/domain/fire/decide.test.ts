import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dryBasis, epochS, later } from '../quantity/index.js';
import { advance, advise, dueOf, estimateOf, type FireBelief, kindle, pencilRule, piecesOf, REFERENCE_SHAPE, ruleA, ruleB, seeCheck, seeReadings } from './index.js';

const AT = epochS(1_800_000_000);
const BAND = { lowC: 121.1, highC: 126.7 };
const around = { weather: { windMPerS: 1.5, fromFireEndRad: 1.5, ambientTempC: 15, rainFrac: 0 }, air: { doorGapM: 0.0254, damperFrac: 1 }, foodLoadFrac: 0.6 };
const wood = { thicknessM: 0.092, lengthM: 0.4, species: 'white-oak', moisture: dryBasis(0.12), onCart: 12 } as const;
const ask = { ...around, band: BAND, wood, effort: 'quick', seed: 7 } as const;
const ahead = (belief: FireBelief, minutes: number) => advance(belief, { ...around, to: later(belief.at, minutes * 60) });
const nothing = { on: { pieces: [], raked: false }, position: 'door' } as const;

/** A fire that has burned steadily, a split every 45 minutes, with probes, and stands `minutes` after its last split. */
function steady(minutes: number, tempC = 124): FireBelief {
  let belief = kindle({ shape: REFERENCE_SHAPE, at: AT, state: 'full', chamberTempC: tempC, ambientTempC: 15, seed: 5 });
  for (let i = 0; i < 3; i++) {
    belief = seeCheck(belief, { bed: 'full', left: i === 0 ? 'some' : 'coals', on: { pieces: piecesOf('one', wood), raked: true }, position: 'door' });
    for (let m = 0; m < (i === 2 ? minutes : 45); m++) belief = seeReadings(ahead(belief, 1), { fireEndTempC: tempC + 1, stackEndTempC: tempC - 1 }).belief;
  }
  return belief;
}

describe('the advice', () => {
  it('is the same for the same belief, ask and seed', () => {
    expect(advise(steady(40), ask)).toEqual(advise(steady(40), ask));
  });
  it('lays nothing on a hot fire with most of a split left', () => {
    const { action, reason } = advise(seeCheck(steady(6, 137), { ...nothing, bed: 'full', left: 'most' }), ask);
    expect(action).toBe('rake');
    expect(['above-band', 'split-has-life']).toContain(reason.code);
  });
  it('lays wood when the split is gone and the temperature in the band', () => {
    const advice = advise(seeCheck(steady(46), { ...nothing, bed: 'fair', left: 'coals' }), ask);
    expect(advice.action).not.toBe('rake');
    expect(advice.source).toBe('forecast');
    expect(new Set([advice.action, ...advice.alternatives.map(({ action }) => action)]).size).toBe(6);
    expect(advice.alternatives).toHaveLength(5);
    for (const other of advice.alternatives) expect(other.cost).toBeGreaterThanOrEqual(advice.expects?.cost ?? Infinity);
    expect(advice.lookAgainS).toBeGreaterThanOrEqual(10 * 60);
    expect(advice.lookAgainS).toBeLessThanOrEqual(50 * 60);
  });
  it('lays more on a cold fire with a low bed than on a warm one with a full bed', () => {
    const cold = advise(seeCheck(steady(50, 112), { ...nothing, bed: 'low', left: 'coals' }), ask);
    const warm = advise(seeCheck(steady(50, 128), { ...nothing, bed: 'full', left: 'coals' }), ask);
    const laidKg = (action: typeof cold.action) => piecesOf(action, wood).reduce((sum, piece) => sum + piece.thicknessM ** 2, 0);
    expect(laidKg(cold.action)).toBeGreaterThan(laidKg(warm.action));
    expect(['bed-low', 'below-band']).toContain(cold.reason.code);
  });
  it('says what is short on the cart and that the fresh one goes on the door side', () => {
    const advice = advise(seeCheck(steady(50, 108), { ...nothing, bed: 'low', left: 'some' }), { ...ask, wood: { ...wood, onCart: 0 } });
    expect(advice.shortOnCart).toBe(piecesOf(advice.action, wood).length);
    expect(advice.shortOnCart).toBeGreaterThan(0);
    expect(advice.layFreshOnDoorSide).toBe(true);
  });
  it('waits for a grade after lighting, and is the pencil rule when nothing was seen for two hours', () => {
    const lit = kindle({ shape: REFERENCE_SHAPE, at: AT, state: 'cold', ambientTempC: 15, seed: 1 });
    expect(advise(ahead(lit, 15), ask).reason.code).toBe('not-yet-lit');
    let blind = seeCheck(steady(5), { on: { pieces: piecesOf('two', wood), raked: true }, position: 'door' });
    for (let i = 0; i < 3; i++) blind = seeCheck(ahead(blind, 40), { on: { pieces: piecesOf('one', wood), raked: true }, position: 'door' });
    expect(advise(blind, ask).source).toBe('pencil-rule');
    expect(advise(blind, ask).reason.code).toBe('nothing-known');
  });
});

describe('due and latest safe', () => {
  it('come later on a full bed with a fresh split than when the split is gone', () => {
    const fresh = seeCheck(steady(45), { bed: 'full', left: 'coals', on: { pieces: piecesOf('one', wood), raked: true }, position: 'door' });
    const bare = seeCheck(steady(45), { ...nothing, bed: 'fair', left: 'coals' });
    const until = (belief: FireBelief) => dueOf(ahead(belief, 1), { ...around, band: BAND, lastLookAt: belief.at }).latestSafeAt - belief.at;
    expect(until(fresh)).toBeGreaterThan(until(bare));
  });
  it('are no later than half an hour after the last look when nothing is measured', () => {
    const belief = kindle({ shape: REFERENCE_SHAPE, at: AT, state: 'full', chamberTempC: 150, ambientTempC: 15, seed: 5 });
    expect(dueOf(belief, { ...around, band: BAND, lastLookAt: AT }).dueAt - AT).toBeLessThanOrEqual(30 * 60);
  });
  it('stay in the past once they are overdue', () => {
    const look = seeCheck(steady(20), { ...nothing, bed: 'fair', left: 'some' });
    const first = dueOf(ahead(look, 2), { ...around, band: BAND, lastLookAt: look.at });
    const later90 = dueOf(ahead(look, 90), { ...around, band: BAND, lastLookAt: look.at });
    expect(later90.dueAt).toBeLessThan(look.at + 60 * 60);
    expect(Math.abs(later90.dueAt - first.dueAt)).toBeLessThan(20 * 60);
  });
  it('keep their order on any fire: last look < earliest <= due <= latest safe', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('cold' as const, 'embers' as const, 'low' as const, 'fair' as const, 'full' as const),
        fc.integer({ min: 0, max: 240 }), fc.integer({ min: 0, max: 300 }), fc.integer({ min: 60, max: 160 }), fc.integer({ min: 0, max: 2 }),
        (state, minutes, ago, lowC, splits) => {
          const start = kindle({ shape: REFERENCE_SHAPE, at: AT, state, ambientTempC: 15, seed: 3 });
          const belief = ahead(seeCheck(start, { on: { pieces: Array.from({ length: splits }, () => wood), raked: true }, position: 'door' }), minutes);
          const lastLookAt = later(belief.at, -ago * 60);
          const { earliestAt, dueAt, latestSafeAt } = dueOf(belief, { ...around, band: { lowC, highC: lowC + 6 }, lastLookAt });
          expect(lastLookAt).toBeLessThan(earliestAt);
          expect(earliestAt).toBeLessThanOrEqual(dueAt);
          expect(dueAt).toBeLessThanOrEqual(latestSafeAt);
        },
      ),
      { numRuns: 60, seed: 11 },
    );
  }, 60_000);
});

describe('rules for a pencil', () => {
  it.each([
    // By hand: want = 0.65 + 0.2 (1 - life) + 0.015 x °F below the middle; 5 °F are 2.78 K.
    { splitLifeSum: 1, belowF: 0, action: 'one-thin' }, { splitLifeSum: 0, belowF: 0, action: 'one' }, { splitLifeSum: 0, belowF: 30, action: 'one-thick' },
    { splitLifeSum: 0, belowF: 50, action: 'two' }, { splitLifeSum: 1, belowF: -20, action: 'rake' },
  ])('in proportion: $splitLifeSum left and $belowF °F below the middle is $action', ({ splitLifeSum, belowF, action }) => {
    expect(pencilRule({ splitLifeSum, chamberTempC: 123.9 - belowF / 1.8, band: BAND })).toBe(action);
  });
  it('never leaves a low bed without a whole split', () => {
    expect(pencilRule({ bed: 'low', splitLifeSum: 1, chamberTempC: 140, band: BAND })).toBe('one');
    expect(ruleA({ bed: 'low' })).toBe('two');
    expect(ruleA({ bed: 'full' })).toBe('one');
    expect(ruleB({ bed: 'full', splitLifeSum: 0.9, chamberTempC: 124, band: BAND })).toBe('rake');
    expect(ruleB({ bed: 'fair', splitLifeSum: 0.1, chamberTempC: 116, band: BAND })).toBe('two');
    expect(ruleB({ bed: 'fair', splitLifeSum: 0.1, chamberTempC: 124, band: BAND })).toBe('one');
  });
});

it('an estimate says how sure it is: wider after an hour without a look', () => {
  const belief = steady(30);
  const width = (b: FireBelief) => estimateOf(b).chamberTempC.p90 - estimateOf(b).chamberTempC.p10;
  expect(width(ahead(belief, 60))).toBeGreaterThan(1.5 * width(belief));
});
