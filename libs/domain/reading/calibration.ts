import type { EpochS } from '../quantity/index.js';

/** A probe held against a thing of known temperature: ice, boiling water, a better thermometer. */
export interface Comparison {
  readonly shownC: number;
  readonly trueC: number;
}
/** A correction of one probe, from a time on; who made it stands in the record. */
export interface Calibration {
  readonly from: EpochS;
  /** One comparison shifts, two shift and stretch; none takes the probe as it is. */
  readonly against: readonly Comparison[];
}

/** Two comparisons nearer than this say nothing of the stretch, K. Source: our choice. */
export const COMPARISONS_APART_K = 30;

/** Makes a shown temperature into the corrected one. */
export type Correct = (shownC: number) => number;

/**
 * The correction that comparisons give: with one its difference everywhere; with two the straight line through both, where they are
 * at least 30 K apart, else the mean of their differences. Held to calibration.test.ts
 */
export function correctionOf(against: readonly Comparison[]): Correct {
  const [first, second] = [...against].sort((a, b) => a.shownC - b.shownC);
  if (!first) return (shownC) => shownC;
  if (!second) return (shownC) => shownC + first.trueC - first.shownC;
  if (second.shownC - first.shownC < COMPARISONS_APART_K) {
    const offsetK = (first.trueC - first.shownC + second.trueC - second.shownC) / 2;
    return (shownC) => shownC + offsetK;
  }
  const stretch = (second.trueC - first.trueC) / (second.shownC - first.shownC);
  return (shownC) => first.trueC + stretch * (shownC - first.shownC);
}

/** The calibration that holds at an instant: the last one made before it, whatever order they come in. */
export function calibrationAt(calibrations: readonly Calibration[], at: EpochS): Calibration | undefined {
  return calibrations.reduce<Calibration | undefined>((last, one) => (one.from <= at && (!last || one.from > last.from) ? one : last), undefined);
}
