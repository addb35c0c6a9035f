import { BED_K, BED_KG, FIREBOX_K, FOOD_K, GAUGE_K, INNER_K, MEMBER_NUMBERS, SHELL_K, THIRDS } from './layout.js';

/** A fire at its first instant. */
export interface Start {
  readonly bedKg: number;
  readonly bedK: number;
  readonly ambientK: number;
  /** What the gauges show, K: ambient for a cold pit. */
  readonly chamberK: number;
}

/** A bed that glows, and embers that have just caught, K. Source: our fit (a strong bed is over 1000 °F, common practice, no source). */
export const GLOWING_K = 920;
/** Embers that have just caught, K. Source: our fit. */
export const EMBERS_K = 750;
/** Rise of firebox, shell and grates beside the rise that the gauges show, in steady burning. Source: our fit. */
const FIREBOX_RISE = 2.95;
const SHELL_RISE = 0.65;
const INNER_RISE = 1.15;

/**
 * Writes a fire's first state: steel as warm as the chamber's temperature asks for in steady burning, food at ambient, no
 * ash, no pieces, all multipliers 1. Source: our fit.
 */
export function putStart(x: Float64Array, member: number, start: Start): void {
  x.fill(0, member, member + MEMBER_NUMBERS);
  const riseK = start.chamberK - start.ambientK;
  x[member + BED_KG] = start.bedKg;
  x[member + BED_K] = start.bedK;
  x[member + FIREBOX_K] = start.ambientK + FIREBOX_RISE * riseK;
  for (let third = 0; third < THIRDS; third++) {
    x[member + SHELL_K + third] = start.ambientK + SHELL_RISE * riseK;
    x[member + INNER_K + third] = start.ambientK + INNER_RISE * riseK;
    x[member + FOOD_K + third] = start.ambientK;
    x[member + GAUGE_K + third] = start.chamberK;
  }
}
