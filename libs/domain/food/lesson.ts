import type { EpochS } from '../quantity/index.js';
import type { CookRefusal, FoodCook } from './cook.js';
import { momentsOf } from './correct.js';
import { refusalOf } from './done-time.js';
import { type Effect, type Effects, type Learned, LEARNED_KEYS, type LearnedKey } from './learn.js';
import { OWN_SHARE, priorOf, SPREAD, TRAIT_PLACE, TRAITS } from './prior.js';
import { seeReadings } from './see-readings.js';
import { ok, refuse, type Result } from '../quantity/index.js';

/** Share of a trait's usual variance that the cut has, and the pit; the rest is the piece's own. Source: our choice. */
const SHARED = (1 - OWN_SHARE) / 2;
/** An effect never becomes surer than this share of the usual variance: cuts and pits change over the years. Source: our choice. */
const SUREST = 0.02;

/** What is thought of a cut or a pit before its first cook. Source: `SPREAD`. */
export const nothingLearned = (): Effects => ({
  cooks: 0, of: Object.fromEntries(LEARNED_KEYS.map((key) => [key, { mean: 0, variance: SHARED * SPREAD[key] ** 2 }])) as unknown as Effects['of'],
});

/** What one finished cook says by itself, apart from what was thought before it; a key that it says nothing about is absent. */
export type Lesson = Partial<Readonly<Record<LearnedKey, Effect>>>;

/** A belief that hardly moved says nothing. Source: our choice. */
const LEAST_MOVED = 0.97;

/**
 * What a finished cook teaches: where its readings left the members, with the belief before it taken out again, so that nothing is
 * counted twice.
 *
 *     1/r = 1/v - 1/v0       y = r (m/v - m0/v0)       v0, m0 before the readings, v, m after
 *
 * Source: product of normal densities. Held to lesson.test.ts
 *
 * @param cook    with its measured air and its readings, and what was learned when it was forecast
 * @param offAt   when it came off
 */
export function lessonOf(cook: FoodCook, offAt: EpochS): Result<Lesson, CookRefusal> {
  const refusal = refusalOf(cook);
  if (refusal) return refuse(refusal);
  const { roll, verdicts } = seeReadings(cook, offAt);
  if (!verdicts.includes('used')) return ok({});
  const lesson: Partial<Record<LearnedKey, Effect>> = {};
  for (const key of LEARNED_KEYS) {
    const before = priorOf(cook, key);
    const after = momentsOf(Float64Array.from({ length: roll.bodies.members }, (_, m) => roll.traits[m * TRAITS.length + TRAIT_PLACE[key]]!));
    const v0 = before.sd ** 2;
    if (after.variance > LEAST_MOVED * v0) continue;
    const r = 1 / (1 / after.variance - 1 / v0);
    lesson[key] = { mean: r * (after.mean / after.variance - before.mean / v0), variance: r };
  }
  return ok(lesson);
}

/** One effect after a lesson: it takes its share of the surprise, by its share of the doubt. */
const taught = (effect: Effect, other: Effect, seen: Effect, own: number, usual: number): Effect => {
  const total = effect.variance + other.variance + seen.variance + own;
  const gain = effect.variance / total;
  return { mean: effect.mean + gain * (seen.mean - effect.mean - other.mean), variance: Math.max(SUREST * usual, effect.variance * (1 - gain)) };
};

/**
 * Cut and pit after a finished cook: each takes the surprise in proportion to how unsure it was, the piece itself keeps a half.
 *
 * Source: Kalman's filter for a sum of three normal effects, of which the first two are kept. Held to lesson.test.ts
 */
export function learnFrom(learned: Learned, lesson: Lesson): Learned {
  const keys = LEARNED_KEYS.filter((key) => lesson[key]);
  if (keys.length === 0) return learned;
  const cut = { ...learned.cut.of };
  const pit = { ...learned.pit.of };
  for (const key of keys) {
    const usual = SPREAD[key] ** 2;
    cut[key] = taught(learned.cut.of[key], learned.pit.of[key], lesson[key]!, OWN_SHARE * usual, usual);
    pit[key] = taught(learned.pit.of[key], learned.cut.of[key], lesson[key]!, OWN_SHARE * usual, usual);
  }
  return { cut: { cooks: learned.cut.cooks + 1, of: cut }, pit: { cooks: learned.pit.cooks + 1, of: pit } };
}
