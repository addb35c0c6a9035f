import { describe, expect, it } from 'vitest';
import { dryBasis, epochS, later } from '../quantity/index.js';
import { bedTailFrac, widened } from './bed-risk.js';
import { memberAt, MEMBERS } from './belief.js';
import { advance, advise, airOf, type FireBelief, kindle, REFERENCE_SHAPE, seeCheck, USUAL_AIR_SET } from './index.js';
import { BED_KG, MEMBER_NUMBERS } from './layout.js';

const AT = epochS(1_800_000_000);
const around = { weather: { windMPerS: 1, fromFireEndRad: 1.5, ambientTempC: 15, rainFrac: 0 }, air: airOf(USUAL_AIR_SET), foodLoadFrac: 0.6 };
const wood = { thicknessM: 0.092, lengthM: 0.4, species: 'white-oak', moisture: dryBasis(0.12), onCart: 12 } as const;
const BAND = { lowC: 121.1, highC: 126.7 };
/** Coals alone, every member's loose bed as said, kg. */
function coals(bedKg: (member: number) => number): FireBelief {
  const belief = kindle({ shape: REFERENCE_SHAPE, at: AT, state: 'embers', chamberTempC: 124, ambientTempC: 15, seed: 5 });
  const members = belief.members.slice();
  for (let m = 0; m < MEMBERS; m++) members[memberAt(m) + BED_KG] = bedKg(m);
  return { ...belief, members };
}

describe('a bed nearly out', () => {
  it('is told apart below one member in forty: by hand, half of a normal log bed lies below its middle', () => {
    // Middle 0.12 kg (0.24 of the reference bed): half of it lies below.
    expect(bedTailFrac(coals((m) => 0.12 * Math.exp(m % 2 === 0 ? 0.3 : -0.3)))).toBeCloseTo(0.5, 6);
    // Middle 0.24 kg, sd of the log 0.3: z = -ln 2 / 0.3 = -2.31, 1.04 %.
    expect(Math.abs(bedTailFrac(coals((m) => 0.24 * Math.exp(m % 2 === 0 ? 0.3 : -0.3))) - 0.0104)).toBeLessThan(0.0005);
    expect(bedTailFrac(coals(() => 0.6))).toBeLessThan(1e-9);
  });
  it('is not called where burning wood feeds it', () => {
    const low = coals(() => 0.1);
    const fed = advance(seeCheck(low, { on: { pieces: [wood, wood], raked: false }, position: 'door' }), { ...around, to: later(AT, 60) });
    expect(bedTailFrac(low)).toBeGreaterThan(0.9);
    expect(bedTailFrac(fed)).toBe(0);
  });
  it('is counted on more draws than there are members: the first forty as they are, the others near them', () => {
    const belief = kindle({ shape: REFERENCE_SHAPE, at: AT, state: 'fair', chamberTempC: 124, ambientTempC: 15, seed: 5 });
    const many = widened(belief, 128);
    const meanLog = (of: FireBelief, count: number) => Array.from({ length: count }, (_, m) => Math.log(of.members[memberAt(m) + BED_KG]!)).reduce((sum, log) => sum + log / count, 0);
    expect(many.members).toHaveLength(128 * MEMBER_NUMBERS);
    expect(many.members.slice(0, belief.members.length)).toEqual(belief.members);
    expect(Math.abs(meanLog(many, 128) - meanLog(belief, 40))).toBeLessThan(0.08);
    expect(widened(belief, 128)).toEqual(many);
  });
  it('puts no plan first that may lose it, while another may not, whatever the temperature', () => {
    const graded = (tempC: number) => seeCheck(coals((m) => 0.3 * Math.exp(0.02 * (m - 20))), { bed: 'low', left: 'coals', fireEndTempC: tempC + 1, stackEndTempC: tempC - 1, on: { pieces: [], raked: false }, position: 'door' });
    for (const tempC of [118, 124, 135]) {
      const advice = advise(graded(tempC), { ...around, band: BAND, wood, seed: 1, effort: 'quick' });
      expect(advice.action).not.toBe('rake');
      if (advice.expects) for (const other of advice.alternatives) expect(Math.max(0.01, advice.expects.bedLostRiskFrac)).toBeLessThanOrEqual(Math.max(0.01, other.bedLostRiskFrac));
    }
  }, 60_000);
});
