import { breakIntoCoals, unburnt } from './burn.js';
import {
  BED_KG, MEMBER_NUMBERS, MOST_PIECES, PIECE_BURNT, PIECE_CHAR_KG, PIECE_DENSITY, PIECE_HALF_M, PIECE_HEATED, PIECE_KG, PIECE_MOISTURE,
  PIECE_NUMBERS, pieceAt,
} from './layout.js';
import type { FireParameters } from './parameters.js';

/** A piece as the fire feels it. */
export interface LaidPiece {
  readonly dryKg: number;
  readonly halfThicknessM: number;
  readonly moisture: number;
  readonly dryKgPerM3: number;
  /** Burnt already: 0 for a fresh one. */
  readonly burntFrac?: number;
  readonly heatedFrac?: number;
}

/** Writes a piece into the place that begins at `at`. Changes `x`. */
export function putPiece(x: Float64Array, at: number, piece: LaidPiece): void {
  x[at + PIECE_KG] = piece.dryKg;
  x[at + PIECE_HALF_M] = piece.halfThicknessM;
  x[at + PIECE_MOISTURE] = piece.moisture;
  x[at + PIECE_BURNT] = piece.burntFrac ?? 0;
  x[at + PIECE_HEATED] = piece.heatedFrac ?? 0;
  x[at + PIECE_CHAR_KG] = 0;
  x[at + PIECE_DENSITY] = piece.dryKgPerM3;
}

/** Of attached char, what a rake knocks off; a piece burnt beyond 62 % is also broken 5 % thinner. Source: our fit. */
const RAKED_FRAC = 0.85;
const RAKE_BREAKS_BEYOND = 0.62;

/** Rakes the fire of one member: attached char falls into the bed, nearly burnt pieces get thinner. */
export function rake(x: Float64Array, member: number, pieces: number): void {
  for (let i = 0; i < pieces; i++) {
    const at = pieceAt(member, i);
    if (!(x[at + PIECE_KG]! > 0)) continue;
    const knockedKg = RAKED_FRAC * x[at + PIECE_CHAR_KG]!;
    x[at + PIECE_CHAR_KG] = x[at + PIECE_CHAR_KG]! - knockedKg;
    x[member + BED_KG] = x[member + BED_KG]! + knockedKg;
    if (x[at + PIECE_BURNT]! > RAKE_BREAKS_BEYOND) x[at + PIECE_HALF_M] = x[at + PIECE_HALF_M]! * 0.95;
  }
}

/**
 * Frees a place on every member's grate: drops places that are empty everywhere, and if none is, makes the two oldest
 * pieces one, heat for heat.
 *
 * @returns pieces on the grate afterwards, at most MOST_PIECES - 1
 */
export function makeRoom(p: FireParameters, x: Float64Array, members: number, pieces: number): number {
  let count = 0;
  for (let i = 0; i < pieces; i++) {
    let alive = false;
    for (let m = 0; m < members && !alive; m++) alive = x[pieceAt(m * MEMBER_NUMBERS, i) + PIECE_KG]! > 0;
    if (!alive) continue;
    if (count < i) for (let m = 0; m < members; m++) movePiece(x, m * MEMBER_NUMBERS, i, count);
    count++;
  }
  for (let i = count; i < pieces; i++) for (let m = 0; m < members; m++) clearPiece(x, pieceAt(m * MEMBER_NUMBERS, i));
  if (count < MOST_PIECES) return count;
  for (let m = 0; m < members; m++) mergeOldest(p, x, m * MEMBER_NUMBERS);
  for (let i = 2; i < count; i++) for (let m = 0; m < members; m++) movePiece(x, m * MEMBER_NUMBERS, i, i - 1);
  for (let m = 0; m < members; m++) clearPiece(x, pieceAt(m * MEMBER_NUMBERS, count - 1));
  return count - 1;
}

function movePiece(x: Float64Array, member: number, from: number, to: number): void {
  const at = pieceAt(member, from);
  x.copyWithin(pieceAt(member, to), at, at + PIECE_NUMBERS);
}

function clearPiece(x: Float64Array, at: number): void {
  x.fill(0, at, at + PIECE_NUMBERS);
}

/** Place 0 takes over what lies in place 1: dry mass, char and unburnt heat add up; the rest is weighed by what is unburnt. */
function mergeOldest(p: FireParameters, x: Float64Array, member: number): void {
  const a = pieceAt(member, 0);
  const b = pieceAt(member, 1);
  if (!(x[b + PIECE_KG]! > 0)) return;
  if (!(x[a + PIECE_KG]! > 0)) return movePiece(x, member, 1, 0);
  const leftA = x[a + PIECE_KG]! * unburnt(p, x[a + PIECE_BURNT]!);
  const leftB = x[b + PIECE_KG]! * unburnt(p, x[b + PIECE_BURNT]!);
  const left = leftA + leftB;
  if (!(left > 0)) {
    breakIntoCoals(p, x, member, b);
    return;
  }
  for (const what of [PIECE_HALF_M, PIECE_MOISTURE, PIECE_HEATED, PIECE_DENSITY]) {
    x[a + what] = (x[a + what]! * leftA + x[b + what]! * leftB) / left;
  }
  x[a + PIECE_KG] = x[a + PIECE_KG]! + x[b + PIECE_KG]!;
  x[a + PIECE_CHAR_KG] = x[a + PIECE_CHAR_KG]! + x[b + PIECE_CHAR_KG]!;
  x[a + PIECE_BURNT] = 1 - (left / x[a + PIECE_KG]!) ** (1 / p.shrinkExponent);
}
