import { describe, expect, it } from 'vitest';
import { epochS, later, randomStream } from '../quantity/index.js';
import type { FoodCook } from './cook.js';
import { cutByCode } from './cuts.js';
import { doneByFrac, forecastDone } from './done-time.js';
import type { Learned } from './learn.js';
import { learnFrom, lessonOf, nothingLearned } from './lesson.js';
import { OWN_SHARE, SPREAD } from './prior.js';
import { truePiece } from './true-piece.js';

const on = epochS(1_800_000_000);
const fresh = (): Learned => ({ cut: nothingLearned(), pit: nothingLearned() });
const cook = (more: Partial<FoodCook> = {}): FoodCook => ({ cut: cutByCode('pork-shoulder')!, pieceKg: 4, onAt: on, air: { from: on, stepS: 3600, tempC: [123], sdK: [2] }, seed: 5, members: 60, ...more });

describe('what a cut and a pit are taught', () => {
  it('the first lesson, by hand: doubt 1/4 each and 1/2 the piece, a sure lesson of 0.1 leaves 0.025 with each', () => {
    const after = learnFrom(fresh(), { pace: { mean: 0.1, variance: 0 } });
    expect(after.cut.of.pace.mean).toBeCloseTo(0.025, 12);
    expect(after.pit.of.pace.mean).toBeCloseTo(0.025, 12);
    expect(after.cut.of.pace.variance).toBeCloseTo(0.25 * SPREAD.pace ** 2 * 0.75, 12);
    expect([after.cut.cooks, after.pit.cooks]).toEqual([1, 1]);
  });
  it('an empty lesson teaches nothing and counts nothing', () => {
    const learned = fresh();
    expect(learnFrom(learned, {})).toBe(learned);
  });
  it('one cut in three pits: what is the cut\'s and what is each pit\'s comes apart', () => {
    const truth = { cut: 0.12, pits: [-0.1, 0, 0.1] };
    const random = randomStream(11);
    let cut = nothingLearned();
    const pits = truth.pits.map(() => nothingLearned());
    for (let i = 0; i < 60; i++) {
      const p = i % 3;
      const mean = truth.cut + truth.pits[p]! + random.normal() * Math.sqrt(OWN_SHARE) * SPREAD.pace;
      ({ cut, pit: pits[p] } = learnFrom({ cut, pit: pits[p]! }, { pace: { mean, variance: 0.0005 } }) as { cut: typeof cut; pit: typeof cut });
    }
    truth.pits.forEach((own, p) => expect(Math.abs(cut.of.pace.mean + pits[p]!.of.pace.mean - truth.cut - own)).toBeLessThan(0.05));
    expect(pits[2]!.of.pace.mean - pits[0]!.of.pace.mean).toBeGreaterThan(0.1);
  });
});

describe('from finished cooks', () => {
  it('cooks that run slow teach it: the next forecast, with nothing read, is nearer the truth and its band a smaller share of it', () => {
    let learned = fresh();
    for (let i = 0; i < 6; i++) {
      const one = cook({ seed: 20 + i, learned });
      const { readings, doneAt } = truePiece(one, { pace: 0.16 }, 900);
      const lesson = lessonOf({ ...one, readings: readings.filter(({ at }) => at <= doneAt!) }, doneAt!);
      if (!lesson.ok) throw new Error(lesson.refusal.code);
      learned = learnFrom(learned, lesson.value);
    }
    const truth = truePiece(cook(), { pace: 0.16 }, 900).doneAt!;
    const spread = (one: FoodCook) => {
      const done = forecastDone(one, on);
      if (!done.ok) throw new Error(done.refusal.code);
      const p50 = doneByFrac(done.value, 0.5)!;
      return { p50, width: (doneByFrac(done.value, 0.9)! - doneByFrac(done.value, 0.1)!) / (p50 - on) };
    };
    const [before, after] = [spread(cook()), spread(cook({ learned }))];
    expect(Math.abs(after.p50 - truth)).toBeLessThan(0.6 * Math.abs(before.p50 - truth));
    expect(after.width).toBeLessThan(before.width);
  });
  it('a cook that nothing was read of teaches nothing', () => {
    expect(lessonOf(cook(), later(on, 36_000))).toEqual({ ok: true, value: {} });
    expect(lessonOf(cook({ readings: [{ at: later(on, 3600), tempC: 300 }] }), later(on, 36_000))).toEqual({ ok: true, value: {} });
  });
});
