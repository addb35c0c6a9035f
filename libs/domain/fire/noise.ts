import type { RandomStream } from '../quantity/index.js';
import { FIREBOX_K, INNER_K, LOG_AIR, LOG_BURN, LOG_COAL, LOG_LOSS, THIRDS } from './layout.js';
import type { LaidPiece } from './lay.js';
import type { PitLearned } from './learned.js';

/** A multiplier's log wanders about 0: standard deviation and the time after which it has forgotten. Source: our fit, tests/bench/fire-skill.mjs. */
const WANDERS = [
  { name: 'loss', at: LOG_LOSS, sd: 0.16, forgetsS: 4 * 3600 },
  { name: 'burn', at: LOG_BURN, sd: 0.16, forgetsS: 3 * 3600 },
  { name: 'coal', at: LOG_COAL, sd: 0.18, forgetsS: 3 * 3600 },
  { name: undefined, at: LOG_AIR, sd: 0.13, forgetsS: 480 },
] as const;
/** Heat that the model does not know of, per square root of a minute, K. Source: our fit. */
const FIREBOX_NOISE_K = 0.8;
const INNER_COMMON_NOISE_K = 0.35;
const INNER_NOISE_K = 0.1;

/** Keeps and kicks of the four multipliers for one step: made once a span. */
export const wanderOf = (stepS: number) =>
  WANDERS.map(({ at, sd, forgetsS }) => {
    const keep = Math.exp(-stepS / forgetsS);
    return { at, keep, kick: sd * Math.sqrt(1 - keep * keep) };
  });
/** The same of the air alone, which changes in minutes. */
export const airWanderOf = (stepS: number) => wanderOf(stepS).filter(({ at }) => at === LOG_AIR);
/** The same of the three that take hours. */
export const slowWanderOf = (stepS: number) => wanderOf(stepS).filter(({ at }) => at !== LOG_AIR);
export type Wander = ReturnType<typeof wanderOf>;

/** First draw of the multipliers: about 1, or about what earlier nights taught. */
export function drawMultipliers(x: Float64Array, member: number, random: RandomStream, learned?: PitLearned): void {
  for (const { at, sd, name } of WANDERS) {
    const known = name === undefined ? undefined : learned?.[name];
    x[member + at] = (known?.log ?? 0) + (known?.sd ?? sd) * random.normal();
  }
}

/** Ornstein-Uhlenbeck step of the multipliers of one member; chance handed in as four normal numbers from `from` on. */
export function wanderMember(x: Float64Array, member: number, wander: Wander, normals: Float64Array, from: number): void {
  for (let i = 0; i < wander.length; i++) {
    const { at, keep, kick } = wander[i]!;
    x[member + at] = x[member + at]! * keep + kick * normals[from + i]!;
  }
}

/** Unknown heat into firebox steel and grates of one member, for a step of `stepS`. */
export function unknownHeat(x: Float64Array, member: number, stepS: number, random: RandomStream): void {
  const root = Math.sqrt(stepS / 60);
  x[member + FIREBOX_K] = x[member + FIREBOX_K]! + FIREBOX_NOISE_K * root * random.normal();
  const common = INNER_COMMON_NOISE_K * root * random.normal();
  for (let third = 0; third < THIRDS; third++) {
    x[member + INNER_K + third] = x[member + INNER_K + third]! + common + INNER_NOISE_K * root * random.normal();
  }
}

/** How far a piece may be from what was said of it: mass 12 %, thickness 7 %, moisture 22 %, and one in eight much wetter. Source: our fit. */
export function uncertainPiece(piece: LaidPiece, random: RandomStream): LaidPiece {
  const wet = random.next() < 0.12 ? 0.6 : 0;
  return {
    ...piece,
    dryKg: piece.dryKg * Math.max(0.5, 1 + 0.12 * random.normal()),
    halfThicknessM: piece.halfThicknessM * Math.max(0.6, 1 + 0.07 * random.normal()),
    moisture: Math.min(1.2, piece.moisture * Math.exp(0.22 * random.normal() + wet)),
  };
}
