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
  for (const value of seen) mean += value / seen.length;
  let variance = 0;
  for (const value of seen) variance += (value - mean) ** 2 / (seen.length - 1);
  return { mean, variance };
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
  const innovation = y - mean;
  const shrink = 1 / (1 + Math.sqrt((sd * sd) / total));
  const alive = new Float64Array(MEMBERS).fill(1);
  for (let i = 0; i < PIT_NUMBERS; i++) correct(x, i, seen, mean, innovation / total, shrink / total, alive, i === BED_KG);
  for (let piece = 0; piece < pieces; piece++) {
    for (let m = 0; m < MEMBERS; m++) alive[m] = x[pieceAt(memberAt(m), piece) + PIECE_KG]! > 0 ? 1 : 0;
    for (const what of PIECE_LEARNED) correct(x, pieceAt(0, piece) + what, seen, mean, innovation / total, shrink / total, alive, false);
  }
  for (let m = 0; m < MEMBERS; m++) keepPhysical(p, x, memberAt(m), pieces);
}

function correct(
  x: Float64Array, index: number, seen: Float64Array, seenMean: number, gain: number, shrinkGain: number, alive: Float64Array, inLog: boolean,
): void {
  let count = 0;
  let mean = 0;
  for (let m = 0; m < MEMBERS; m++) {
    if (alive[m] === 0) continue;
    count++;
    mean += inLog ? Math.log(x[memberAt(m) + index]!) : x[memberAt(m) + index]!;
  }
  if (count < 3) return;
  mean /= count;
  let cov = 0;
  for (let m = 0; m < MEMBERS; m++) {
    if (alive[m] === 0) continue;
    const value = x[memberAt(m) + index]!;
    cov += ((inLog ? Math.log(value) : value) - mean) * (seen[m]! - seenMean);
  }
  cov /= count - 1;
  for (let m = 0; m < MEMBERS; m++) {
    if (alive[m] === 0) continue;
    const change = cov * (gain - shrinkGain * (seen[m]! - seenMean));
    const at = memberAt(m) + index;
    x[at] = inLog ? x[at]! * Math.exp(change) : x[at]! + change;
  }
}

/** Physical ranges: bed up to five times the reference, bed and steel temperatures, multipliers between 0.45 and 2.2. Source: our fit. */
export function keepPhysical(p: FireParameters, x: Float64Array, member: number, pieces: number): void {
  x[member + BED_KG] = clamp(x[member + BED_KG]!, 0.002 * p.bedKg, 5 * p.bedKg);
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
