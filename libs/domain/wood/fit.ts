import { requireRange } from '../quantity/index.js';

/** How a split lies in a firebox. */
export type Lie = 'across' | 'lengthwise' | 'too-long';

/** Longest split, of the firebox's inside width, that lies across with air at both ends; the best is about 0.58. Source: common practice, no source. */
const ACROSS_FRAC = 0.7;
const BEST_ACROSS_FRAC = 0.58;
/** Longest split, of the firebox's inside length, that lies lengthwise behind a shut door. Source: common practice, no source. */
const LENGTHWISE_FRAC = 0.9;

/**
 * Which way a split of this length can lie. Across, parallel to the door, keeps the fire by the door; lengthwise carries it
 * towards the chamber: fine when only the stack end is loaded, wrong when the fire end is. Source: common practice, no source.
 *
 * @param fit.lengthM           length of the split, 0.02 to 3 m
 * @param fit.fireboxDiameterM  inside width, 0.2 to 3 m
 * @param fit.fireboxLengthM    inside length from door to throat, 0.2 to 3 m
 */
export function liesAcross(fit: { readonly lengthM: number; readonly fireboxDiameterM: number; readonly fireboxLengthM: number }): Lie {
  requireRange('length (m)', fit.lengthM, 0.02, 3);
  requireRange('firebox width (m)', fit.fireboxDiameterM, 0.2, 3);
  requireRange('firebox length (m)', fit.fireboxLengthM, 0.2, 3);
  if (fit.lengthM <= ACROSS_FRAC * fit.fireboxDiameterM) return 'across';
  return fit.lengthM <= LENGTHWISE_FRAC * fit.fireboxLengthM ? 'lengthwise' : 'too-long';
}

/** The length to trim to, so that coals lie under the whole split and air passes both ends, m. Source: common practice, no source. */
export const bestAcrossM = (fireboxDiameterM: number): number => BEST_ACROSS_FRAC * fireboxDiameterM;
