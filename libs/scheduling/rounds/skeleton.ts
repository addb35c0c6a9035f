import { parameter, type RoundPit, type RoundProblem } from './problem.js';

/** Where one check of a pit would lie if the crew were endless. Seconds from the problem's `from`. */
export interface SkeletonCheck {
  /** Evenly spaced between the check before it and the end of the night. */
  readonly targetS: number;
  /** No list starts it earlier: a little before its target, so that checks do not creep forward when people are idle. */
  readonly releaseS: number;
}

/**
 * The checks a pit needs after its frozen ones: as few as keep each gap at `gapFrac` of the due gap, evenly laid from the
 * first due check (or the last frozen one) until the fire is no longer kept. Held to rounds/skeleton.test.ts.
 *
 * @param lastStartS  start of the last frozen check, s from `from`; without one the pit's first window counts
 */
export function skeletonOf(problem: RoundProblem, pit: RoundPit, lastStartS: number | undefined): readonly SkeletonCheck[] {
  const keepS = keepUntilS(problem, pit);
  const { dueS } = pit.gap;
  const spacingMost = Math.max(1, Math.floor(parameter(problem, 'gapFrac') * dueS));
  const earlyS = Math.floor(parameter(problem, 'earlyFrac') * dueS);
  const firstDueS = pit.first.dueAt - problem.from;
  const firstEarliestS = lastStartS === undefined ? Math.max(0, pit.first.earliestAt - problem.from) : lastStartS + pit.gap.earliestS;
  if (lastStartS === undefined ? firstDueS >= keepS : lastStartS + dueS >= keepS) return [];

  const anchorS = lastStartS ?? Math.max(0, firstEarliestS, firstDueS - (dueS - spacingMost));
  const spanS = keepS - anchorS;
  const gaps = spanS <= dueS ? 1 : Math.ceil(spanS / spacingMost);
  const from = lastStartS === undefined ? 0 : 1;
  return Array.from({ length: gaps - from }, (_, i) => {
    const targetS = anchorS + Math.floor(((i + from) * spanS) / gaps);
    const isLast = i + from === gaps - 1;
    const earliest = i === 0 ? Math.max(firstEarliestS, targetS - earlyS) : targetS - earlyS;
    return { targetS, releaseS: Math.max(0, earliest, isLast ? Math.min(targetS, keepS - dueS) : 0) };
  });
}

/**
 * The same for a pit whose next checks were promised: each stays where it was promised as long as the first of them still
 * lies between its earliest and its due; after the last the skeleton goes on. Else the pit is laid anew.
 *
 * @param promisedS  promised starts of the checks after the frozen ones, in order, s from `from`
 */
export function keptSkeleton(problem: RoundProblem, pit: RoundPit, lastStartS: number | undefined, promisedS: readonly number[]): readonly SkeletonCheck[] {
  const [firstS] = promisedS;
  const earliestS = lastStartS === undefined ? pit.first.earliestAt - problem.from : lastStartS + pit.gap.earliestS;
  const dueS = lastStartS === undefined ? pit.first.dueAt - problem.from : lastStartS + pit.gap.dueS;
  if (firstS === undefined || firstS < Math.max(0, earliestS) || firstS > dueS + LATE_AS_PROMISED_S) return skeletonOf(problem, pit, lastStartS);
  const keepS = keepUntilS(problem, pit);
  const kept = promisedS.filter((startS) => startS < keepS).map((startS) => ({ targetS: startS, releaseS: startS }));
  const lastS = kept.at(-1)?.targetS;
  return lastS === undefined ? [] : [...kept, ...skeletonOf(problem, pit, lastS)];
}

/** A promise that has become later than due by no more than this is still kept, s. Source: common practice, no source. */
const LATE_AS_PROMISED_S = 120;

/** Until when the fire is kept, s from `from`: the pit's own end, at most the problem's. */
export const keepUntilS = (problem: RoundProblem, pit: RoundPit): number => Math.min(pit.keepUntil ?? problem.until, problem.until) - problem.from;
