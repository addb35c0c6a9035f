import { describe, expect, it } from 'vitest';
import { epochS, HOUR_S, later } from '../quantity/index.js';
import { type AfterAsk, afterPit } from './after-plan.js';
import type { FoodCook } from './cook.js';
import { cutByCode } from './cuts.js';
import { EDITIONS } from './own-limits.js';

const on = epochS(1_800_000_000);
const cook: FoodCook = { cut: cutByCode('brisket')!, pieceKg: 6.3, onAt: on, seed: 4, members: 20, air: { from: on, stepS: HOUR_S, tempC: [121], sdK: [2] } };
const go = (more: Partial<AfterAsk> = {}) => {
  const after = afterPit({ cook, now: on, limits: EDITIONS['food-code-2022'], outsideC: 21, holdIn: 'insulated-box', holdS: 4 * HOUR_S, coolIn: 'moving-chiller', sliceM: 0.05, ...more });
  if (!after.ok) throw new Error(after.refusal.code);
  return after.value;
};

describe('a brisket after the pit', () => {
  it('rises a little after it comes off, and not by more than very large roasts of hot ovens do (3 to 14 K, cookery figures, from memory)', () => {
    const { leavesC, peakC, peakS } = go();
    expect(peakC - leavesC).toBeGreaterThan(0.2);
    expect(peakC - leavesC).toBeLessThan(14);
    expect(peakS).toBeGreaterThan(0);
  });
  it('stays hot longer in a box than on the bench, and as long as is asked in a warm cabinet', () => {
    const below = (holdIn: AfterAsk['holdIn']) => go({ holdIn, holdS: 12 * HOUR_S }).hold.coreBelowS ?? Infinity;
    expect(below('bench')).toBeLessThan(below('insulated-box'));
    expect(below('warm-cabinet')).toBe(Infinity);
  });
  it('loses heat faster on a frosty night than on a warm one', () => {
    const below = (outsideC: number) => go({ outsideC, holdS: 12 * HOUR_S }).hold.coreBelowS ?? Infinity;
    expect(below(-5)).toBeLessThan(below(30));
  });
  it('cooled whole it breaks 3-501.14(A), so a time to cut is told; a thin slice may be cut later than a thick one (section 7 of the trade\'s physics: a whole one of 12 cm fails)', () => {
    const by = (sliceM: number) => {
      const { advice } = go({ sliceM }).cool;
      return advice.code === 'cut-by' ? advice.byS : advice.code === 'cut-before-it-goes-in' ? 0 : -1;
    };
    expect(go().cool.advice.code).not.toBe('cools-whole');
    expect(by(0.03)).toBeGreaterThanOrEqual(by(0.06));
    expect(go({ sliceM: 0.15 }).cool.advice.code).toBe('too-slow-even-cut');
  });
  it('the thickest that cools keeps the limit when it is asked for, and half as much again does not', () => {
    const thickestM = go().cool.thickestM!;
    expect(go({ sliceM: 0.97 * thickestM }).cool.advice.code).not.toBe('too-slow-even-cut');
    expect(go({ sliceM: 1.5 * thickestM }).cool.advice.code).toBe('too-slow-even-cut');
  });
  it('a set of limits is named by its own section', () => {
    expect(go({ limits: EDITIONS['fsis-2021-option-1'] }).cool.section).toBe('Appendix B option 1');
    expect(go().hold).toMatchObject({ section: '3-501.16(A)(1)' });
  });
  it('one that came off before it was done leaves the pit cooler', () => expect(go({ now: later(on, 6 * HOUR_S), offAt: later(on, 5 * HOUR_S) }).leavesC).toBeLessThan(go().leavesC - 5));
});
