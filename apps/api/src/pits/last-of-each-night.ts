import { type EpochS, HOUR_S } from '@stokehold/domain/quantity';

/** Looks at a fire further apart than this belong to different nights: no fire burns on so long without anybody. */
const NIGHTS_APART_S = 6 * HOUR_S;

/** Of points in order of time, the last one before each long pause, and the very last. */
export const lastOfEachNight = <T extends { readonly at: EpochS }>(points: readonly T[]): T[] =>
  points.filter(({ at }, nth) => {
    const next = points[nth + 1];
    return next === undefined || next.at - at > NIGHTS_APART_S;
  });
