import { BED_K, BED_KG, PIECE_BURNT, PIECE_CHAR_KG, PIECE_KG, pieceAt } from './layout.js';
import type { FireParameters } from './parameters.js';
import type { BedGrade, SplitLeft } from './pit.js';

/** Glowing bed at which the crew says fair, and full, of the reference bed (0.30 and 0.46 of 0.5 kg). Source: our fit. */
const FAIR_FRAC = 0.6;
const FULL_FRAC = 0.92;
/** What a crew's word stands for, of the reference bed: 0.20, 0.38, 0.65 of 0.5 kg. Source: our fit. */
export const GRADE_FRAC: Readonly<Record<BedGrade, number>> = { low: 0.4, fair: 0.76, full: 1.3 };
/** Below this the loose bed is nearly out (0.12 of 0.5 kg); below that, or colder, it is lost. Source: our fit. */
export const NEARLY_OUT_FRAC = 0.24;
const LOST_FRAC = 0.16;
const LOST_K = 690;
/** Life of the freshest split that 'some' begins and 'most' begins at, and what each word stands for. Source: common practice, no source. */
const SOME_FROM = 0.2;
const MOST_FROM = 0.6;
/** Life that a word of the crew stands for. Source: common practice, no source. */
export const LEFT_FRAC: Readonly<Record<SplitLeft, number>> = { coals: 0.06, some: 0.4, most: 0.82 };

/** Coals that glow: the loose bed and half of the char that still hangs on the pieces, kg. Source: our fit. */
export function glowingKg(x: Float64Array, member: number, pieces: number): number {
  let kg = x[member + BED_KG]!;
  for (let i = 0; i < pieces; i++) kg += 0.5 * x[pieceAt(member, i) + PIECE_CHAR_KG]!;
  return kg;
}

/** What a crew would call a bed of so many glowing kilograms. */
export const gradeBed = (p: FireParameters, glowing: number): BedGrade =>
  glowing < FAIR_FRAC * p.bedKg ? 'low' : glowing < FULL_FRAC * p.bedKg ? 'fair' : 'full';

/** What a crew would call so much life of the freshest split. */
export const gradeLeft = (lifeFrac: number): SplitLeft => (lifeFrac < SOME_FROM ? 'coals' : lifeFrac < MOST_FROM ? 'some' : 'most');

/** Lost: too little coal or too cold to light the next split. Source: our fit. */
export const bedLost = (p: FireParameters, x: Float64Array, member: number) =>
  x[member + BED_KG]! < LOST_FRAC * p.bedKg || x[member + BED_K]! < LOST_K;

/** So little loose coal that it ranks above everything else. Source: our fit. */
export const bedNearlyOut = (p: FireParameters, x: Float64Array, member: number) => x[member + BED_KG]! < NEARLY_OUT_FRAC * p.bedKg;

/** Life 1 - s of the piece laid last, 0 when nothing is left of it. */
export const freshestLifeFrac = (x: Float64Array, member: number, pieces: number): number => {
  for (let i = pieces - 1; i >= 0; i--) {
    const at = pieceAt(member, i);
    if (x[at + PIECE_KG]! > 0) return 1 - x[at + PIECE_BURNT]!;
  }
  return 0;
};

/** Life of all pieces together, each counted as a share of a standard split's dry mass. */
export function lifeSum(x: Float64Array, member: number, pieces: number, standardKg: number): number {
  let sum = 0;
  for (let i = 0; i < pieces; i++) {
    const at = pieceAt(member, i);
    if (x[at + PIECE_KG]! > 0) sum += (1 - x[at + PIECE_BURNT]!) * (x[at + PIECE_KG]! / standardKg);
  }
  return sum;
}

/** Pieces that are not yet broken down to coals. */
export function piecesBurning(x: Float64Array, member: number, pieces: number): number {
  let count = 0;
  for (let i = 0; i < pieces; i++) if (x[pieceAt(member, i) + PIECE_KG]! > 0) count++;
  return count;
}
