import { describe, expect, it } from 'vitest';
import { epochS, later } from '../quantity/index.js';
import { advance, beliefFromBytes, beliefToBytes, estimateOf, kindle, learnedForTonight, learnedOf, type LearnedPoint, REFERENCE_SHAPE, seeReadings, setBackLearned } from './index.js';

const AT = epochS(1_800_000_000);
const around = { weather: { windMPerS: 1.5, fromFireEndRad: 1.5, ambientTempC: 15, rainFrac: 0 }, air: { doorGapM: 0.0254, damperFrac: 1 }, foodLoadFrac: 0.6 };
const point = (log: number, day: number): LearnedPoint => ({ at: later(AT, day * 86_400), loss: { log, sd: 0.1 }, burn: { log: 0, sd: 0.1 }, coal: { log: 0, sd: 0.1 } });
const start = (more = {}) => kindle({ shape: REFERENCE_SHAPE, at: AT, state: 'fair', chamberTempC: 124, ambientTempC: 15, seed: 4, ...more });
/** A pit whose probes stay colder than the model thinks: it must lose more. */
function cold() {
  let belief = start();
  for (let minute = 2; minute <= 60; minute += 2) {
    belief = advance(belief, { ...around, to: later(AT, minute * 60) });
    belief = seeReadings(belief, { fireEndTempC: 124 - 0.7 * minute, stackEndTempC: 122 - 0.7 * minute }).belief;
  }
  return belief;
}

describe('what a pit learned', () => {
  it('is a greater loss or a weaker fire where the probes stay colder than forecast', () => {
    const before = learnedOf(start());
    const after = learnedOf(cold());
    expect(after.loss.log - after.burn.log).toBeGreaterThan(before.loss.log - before.burn.log);
    expect(after.loss.sd).toBeLessThanOrEqual(before.loss.sd + 0.02);
  });
  it('begins a new night halfway back to the set-up, the latest night counting most', () => {
    expect(learnedForTonight([])).toBeUndefined();
    // By hand: one night of 0.2 counts half; of 0.2 then 0 the later has weight 1, the earlier 0.7.
    expect(learnedForTonight([point(0.2, 0)])?.loss.log).toBeCloseTo(0.1, 12);
    expect(learnedForTonight([point(0.2, 0), point(0, 1)])?.loss.log).toBeCloseTo((0.5 * 0.7 * 0.2) / 1.7, 12);
    expect(learnedForTonight([point(0.2, 0), point(0.2, 1)])?.loss.sd).toBeLessThan(learnedForTonight([point(0.2, 0)])?.loss.sd ?? 0);
  });
  it('is where the next fire is kindled from', () => {
    const learned = { loss: { log: 0.3, sd: 0.05 }, burn: { log: -0.2, sd: 0.05 }, coal: { log: 0, sd: 0.1 } };
    const { lossFactor, burnFactor } = estimateOf(start({ learned })).learned;
    expect(Math.abs(lossFactor - Math.exp(0.3))).toBeLessThan(0.05);
    expect(Math.abs(burnFactor - Math.exp(-0.2))).toBeLessThan(0.05);
  });
  it('is forgotten when it is set back, and nothing else of the fire is', () => {
    const belief = cold();
    const back = beliefFromBytes(setBackLearned(beliefToBytes(belief)));
    expect(Math.abs(learnedOf(back).loss.log)).toBeLessThan(1e-9);
    expect(learnedOf(back).loss.sd).toBeGreaterThan(0.12);
    expect(estimateOf(back).chamberTempC).toEqual(estimateOf(belief).chamberTempC);
    expect(estimateOf(back).bedKg).toEqual(estimateOf(belief).bedKg);
  });
});
