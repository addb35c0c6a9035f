import { clamp } from '../quantity/index.js';
import { memberAt, MEMBERS } from './belief.js';
import {
  ASH_KG, BED_K, BED_KG, FIREBOX_K, LOG_AIR, LOG_LOSS, PIECE_BURNT, PIECE_CHAR_KG, PIECE_HALF_M, PIECE_HEATED, PIECE_KG, PIECE_MOISTURE,
  pieceAt, PIT_NUMBERS,
} from './layout.js';
import type { FireParameters } from './parameters.js';

/** Numbers of a piece that an observation corrects; its density stays as laid. */
const PIECE_LEARNED = [PIECE_KG, PIECE_HALF_M, PIECE_MOISTURE, PIECE_BURNT, PIECE_HEATED, PIECE_CHAR_KG] as const;

/** What the members expect to be seen, K or whatever the observation's unit is: its mean and variance. */
export function expected(seen: Float64Array): { readonly mean: number; readonly variance: number } {
  let mean = 0;
  for (let i = 0; i < seen.length; i++) mean += seen[i]!;
  mean /= seen.length;
  let squares = 0;
  for (let i = 0; i < seen.length; i++) squares += (seen[i]! - mean) * (seen[i]! - mean);
  return { mean, variance: squares / (seen.length - 1) };
}

/**
 * One scalar observation taken into all members: ensemble square-root filter, serial, without perturbed observations.
 *
 *     K = cov(x, Hx) / (P + R)        mean += K (y - H mean)        each deviation -= alpha K times its own,
 *     alpha = 1 / (1 + sqrt(R / (P + R)))                                            [WHITAKER-2002] eq. 10 and 13
 *
 * The bed is corrected in its log, so that it stays positive. A piece that has burnt out in a member stays so there.
 * Changes `x`; afterwards every number is inside its physical range.
 *
 * @param seen  what each member expects, H x
 * @param y     what was seen, same unit
 * @param sd    how far a reading may be off, and what the model leaves out
 */
export function observe(p: FireParameters, x: Float64Array, pieces: number, seen: Float64Array, y: number, sd: number): void {
  const { mean, variance } = expected(seen);
  if (!(variance > 1e-10) || !Number.isFinite(y)) return;
  const total = variance + sd * sd;
  const gain = (y - mean) / total;
  const shrinkGain = 1 / (1 + Math.sqrt((sd * sd) / total)) / total;
  const off = seen.map((value) => value - mean);
  const pull = off.map((value) => gain - shrinkGain * value);
  for (let m = 0; m < MEMBERS; m++) x[memberAt(m) + BED_KG] = Math.log(x[memberAt(m) + BED_KG]!);
  correctPit(x, off, pull);
  for (let m = 0; m < MEMBERS; m++) x[memberAt(m) + BED_KG] = Math.exp(x[memberAt(m) + BED_KG]!);
  for (let piece = 0; piece < pieces; piece++) correctPiece(x, piece, off, pull);
  for (let m = 0; m < MEMBERS; m++) keepPhysical(p, x, memberAt(m), pieces);
}

/** Every number of the pit moves with its covariance to what was seen; `off` sums to nothing, so the means drop out. */
function correctPit(x: Float64Array, off: Float64Array, pull: Float64Array): void {
  const cov = new Float64Array(PIT_NUMBERS);
  for (let m = 0; m < MEMBERS; m++) {
    const at = memberAt(m);
    const mine = off[m]! / (MEMBERS - 1);
    for (let i = 0; i < PIT_NUMBERS; i++) cov[i] = cov[i]! + x[at + i]! * mine;
  }
  for (let m = 0; m < MEMBERS; m++) {
    const at = memberAt(m);
    const mine = pull[m]!;
    for (let i = 0; i < PIT_NUMBERS; i++) x[at + i] = x[at + i]! + cov[i]! * mine;
  }
}

/** The same for one piece, over the members in which it still burns; of fewer than three nothing is learned. */
function correctPiece(x: Float64Array, piece: number, off: Float64Array, pull: Float64Array): void {
  let count = 0;
  let offSum = 0;
  for (let m = 0; m < MEMBERS; m++) {
    if (!(x[pieceAt(memberAt(m), piece) + PIECE_KG]! > 0)) continue;
    count++;
    offSum += off[m]!;
  }
  if (count < 3) return;
  for (let i = PIECE_LEARNED.length - 1; i >= 0; i--) {
    const what = PIECE_LEARNED[i]!;
    let sum = 0;
    let cov = 0;
    for (let m = 0; m < MEMBERS; m++) {
      const at = pieceAt(memberAt(m), piece);
      if (!(x[at + PIECE_KG]! > 0)) continue;
      sum += x[at + what]!;
      cov += x[at + what]! * off[m]!;
    }
    cov = (cov - (sum / count) * offSum) / (count - 1);
    for (let m = 0; m < MEMBERS; m++) {
      const at = pieceAt(memberAt(m), piece);
      if (x[at + PIECE_KG]! > 0) x[at + what] = Math.max(1e-9, x[at + what]! + cov * pull[m]!);
    }
  }
}

/** A firebox holds no more coals than this, of the reference bed. Source: our fit. */
export const MOST_BED = 5;

/** Physical ranges: bed up to five times the reference, bed and steel temperatures, multipliers between 0.45 and 2.2. Source: our fit. */
export function keepPhysical(p: FireParameters, x: Float64Array, member: number, pieces: number): void {
  x[member + BED_KG] = clamp(x[member + BED_KG]!, 0.002 * p.bedKg, MOST_BED * p.bedKg);
  x[member + BED_K] = clamp(x[member + BED_K]!, 230, 1400);
  for (let i = FIREBOX_K; i < ASH_KG; i++) x[member + i] = clamp(x[member + i]!, 220, 1100);
  x[member + ASH_KG] = clamp(x[member + ASH_KG]!, 0, 10 * p.ashKg);
  for (let i = LOG_LOSS; i <= LOG_AIR; i++) x[member + i] = clamp(x[member + i]!, -0.8, 0.8);
  for (let i = 0; i < pieces; i++) {
    const at = pieceAt(member, i);
    if (!(x[at + PIECE_KG]! > 0)) continue;
    x[at + PIECE_KG] = clamp(x[at + PIECE_KG]!, 0.02, 60);
    x[at + PIECE_HALF_M] = clamp(x[at + PIECE_HALF_M]!, 0.004, 0.25);
    x[at + PIECE_MOISTURE] = clamp(x[at + PIECE_MOISTURE]!, 0.02, 1.4);
    x[at + PIECE_BURNT] = clamp(x[at + PIECE_BURNT]!, 0, 0.98);
    x[at + PIECE_HEATED] = clamp(x[at + PIECE_HEATED]!, 0, 1);
    x[at + PIECE_CHAR_KG] = clamp(x[at + PIECE_CHAR_KG]!, 0, 0.3 * x[at + PIECE_KG]!);
  }
}
