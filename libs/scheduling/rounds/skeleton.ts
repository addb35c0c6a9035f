import { HOUR_S } from '@stokehold/domain/quantity';
import { loadOf } from './load.js';
import { parameter, type RoundPit, type RoundProblem } from './problem.js';

/** Where one check of a pit would lie if the crew were endless. Seconds from the problem's `from`. */
export interface SkeletonCheck {
  /** Evenly spaced between the check before it and the end of the night. */
  readonly targetS: number;
  /** No list starts it earlier: a little before its target, so that checks do not creep forward when people are idle. */
  readonly releaseS: number;
}

/** What part of the due gap the wanted gap is at a moment, s from `from`: less where there is time, more where hands are short. */
export type GapFracAt = (atS: number) => number;

/** Loads between which the wanted gap goes from `gapFrac` to TIGHT_GAP_FRAC. Source: tests/bench/rounds.mjs. */
const EASY_LOAD = 0.75;
const TIGHT_LOAD = 0.95;
const TIGHT_GAP_FRAC = 0.96;

/**
 * The wanted gap through the night, by the load of its hours (loadOf): looking a little more often costs hands and buys room
 * for being a little late, so it is done where hands are.
 */
export function gapFracOf(problem: RoundProblem): GapFracAt {
  const easy = parameter(problem, 'gapFrac');
  const tight = Math.max(easy, TIGHT_GAP_FRAC);
  const hours = loadOf(problem).filter(({ skill }) => skill === undefined);
  const fracs = hours.map(({ loadFrac }) => easy + (tight - easy) * Math.min(1, Math.max(0, (loadFrac - EASY_LOAD) / (TIGHT_LOAD - EASY_LOAD))));
  return (atS) => fracs[Math.min(fracs.length - 1, Math.max(0, Math.floor(atS / HOUR_S)))] ?? easy;
}

/**
 * The checks a pit needs after its frozen ones: as few as keep each gap at the wanted part of the due gap, laid from the
 * first due check (or the last frozen one) until the fire is no longer kept. Held to rounds/skeleton.test.ts.
 *
 * @param lastStartS  start of the last frozen check, s from `from`; without one the pit's first window counts
 */
export function skeletonOf(problem: RoundProblem, pit: RoundPit, lastStartS: number | undefined, fracAt: GapFracAt = gapFracOf(problem)): readonly SkeletonCheck[] {
  const keepS = keepUntilS(problem, pit);
  const { dueS } = pit.gap;
  const firstDueS = pit.first.dueAt - problem.from;
  const firstEarliestS = lastStartS === undefined ? Math.max(0, pit.first.earliestAt - problem.from) : lastStartS + pit.gap.earliestS;
  if (lastStartS === undefined ? firstDueS >= keepS : lastStartS + dueS >= keepS) return [];

  const anchorS = lastStartS ?? Math.max(0, firstEarliestS, firstDueS - (dueS - wantedS(dueS, fracAt(firstDueS))));
  const targets = spread(anchorS, keepS, dueS, fracAt).slice(lastStartS === undefined ? 0 : 1);
  return released(problem, pit, { targets, firstEarliestS });
}

/** Targets with the moment from which each may be begun. */
function released(problem: RoundProblem, pit: RoundPit, { targets, firstEarliestS }: { readonly targets: readonly number[]; readonly firstEarliestS: number }): readonly SkeletonCheck[] {
  const { dueS } = pit.gap;
  const lastReleaseS = keepUntilS(problem, pit) - dueS;
  const earlyS = Math.floor(parameter(problem, 'earlyFrac') * dueS);
  return targets.map((targetS, i) => {
    const earliest = i === 0 ? Math.max(firstEarliestS, targetS - earlyS) : targetS - earlyS;
    return { targetS, releaseS: Math.max(0, earliest, i === targets.length - 1 ? Math.min(targetS, lastReleaseS) : 0) };
  });
}

const wantedS = (dueS: number, frac: number) => Math.max(1, Math.floor(frac * dueS));

/** Moments from an anchor on, each a wanted gap after the one before, all drawn together so that the last gap ends the fire. */
function spread(anchorS: number, keepS: number, dueS: number, fracAt: GapFracAt): readonly number[] {
  const steps = [0];
  while (steps.at(-1)! < keepS - anchorS && (steps.length > 1 || keepS - anchorS > dueS)) steps.push(steps.at(-1)! + wantedS(dueS, fracAt(anchorS + steps.at(-1)!)));
  const wholeS = steps.length > 1 ? steps.pop()! : 1;
  return steps.map((step) => anchorS + Math.floor((step * (keepS - anchorS)) / wholeS));
}

/** What is known of a pit's checks before they are laid; starts in order, s from `from`, of the checks after the frozen ones. */
export interface KnownChecks {
  /** Start of the last frozen check. */
  readonly lastStartS: number | undefined;
  readonly promisedS: readonly number[];
  /** All starts of the plan to go on from, the promised ones among them; without such a plan none. */
  readonly shownS: readonly number[];
  readonly fracAt?: GapFracAt;
}

/**
 * The same for a pit whose next checks were promised or planned before. A promise stays where it is as long as each check comes
 * between its earliest and its due; what was planned beyond it is drawn only so far that it does so too, and comes back to its old
 * place as soon as it can: a fire that was looked at early moves the next looks and not the whole night. Where that would take more
 * checks than the pit needs, it is laid anew.
 */
export function keptSkeleton(problem: RoundProblem, pit: RoundPit, known: KnownChecks): readonly SkeletonCheck[] {
  const { lastStartS, shownS, fracAt = gapFracOf(problem) } = known;
  const promised = keptPromises(problem, pit, known);
  const lastS = promised.at(-1) ?? lastStartS;
  const anew = skeletonOf(problem, pit, lastS, fracAt);
  const drawn = drawnIn(problem, pit, { lastS, shownS: shownS.slice(promised.length), fracAt });
  const rest = drawn.length > 0 && drawn.length <= anew.length + MORE_THAN_NEEDED ? drawn : anew;
  return [...promised.map((startS) => ({ targetS: startS, releaseS: startS })), ...rest];
}

/** A promise that has become later than due by no more than this is still kept, s. Source: common practice, no source. */
const LATE_AS_PROMISED_S = 120;
/** So many checks beyond the fewest are kept rather than a whole night moved. Source: common practice, no source. */
const MORE_THAN_NEEDED = 1;
/** Checks are not drawn nearer together than this part of the wanted gap. Source: common practice, no source. */
const NEAREST_FRAC = 0.85;

/** Promises from the first on, as far as each comes in its time after the one before. */
function keptPromises(problem: RoundProblem, pit: RoundPit, { lastStartS, promisedS }: KnownChecks): readonly number[] {
  const keepS = keepUntilS(problem, pit);
  let earliestS = lastStartS === undefined ? pit.first.earliestAt - problem.from : lastStartS + pit.gap.earliestS;
  let dueS = lastStartS === undefined ? pit.first.dueAt - problem.from : lastStartS + pit.gap.dueS;
  const isOff = promisedS.findIndex((startS) => {
    const off = startS < Math.max(0, earliestS) || startS > dueS + LATE_AS_PROMISED_S || startS >= keepS;
    [earliestS, dueS] = [startS + pit.gap.earliestS, startS + pit.gap.dueS];
    return off;
  });
  return isOff < 0 ? promisedS : promisedS.slice(0, isOff);
}

/** Starts that were planned before, each drawn between its nearest and its due after the one before, on to the end of the fire. */
function drawnIn(problem: RoundProblem, pit: RoundPit, { lastS, shownS, fracAt }: { readonly lastS: number | undefined; readonly shownS: readonly number[]; readonly fracAt: GapFracAt }): readonly SkeletonCheck[] {
  const keepS = keepUntilS(problem, pit);
  const { earliestS, dueS } = pit.gap;
  const firstEarliestS = lastS === undefined ? Math.max(0, pit.first.earliestAt - problem.from) : lastS + earliestS;
  const targets: number[] = [];
  let untilS = lastS === undefined ? pit.first.dueAt - problem.from : lastS + dueS;
  let fromS = lastS === undefined ? firstEarliestS : Math.max(firstEarliestS, lastS + nearestS(dueS, fracAt(lastS)));
  for (const startS of shownS) {
    if (untilS >= keepS) break;
    const targetS = Math.max(fromS, Math.min(startS, untilS));
    targets.push(targetS);
    [untilS, fromS] = [targetS + dueS, targetS + Math.max(earliestS, nearestS(dueS, fracAt(targetS)))];
  }
  const drawn = released(problem, pit, { targets, firstEarliestS });
  return targets.length > 0 && untilS < keepS ? [...drawn, ...skeletonOf(problem, pit, targets.at(-1), fracAt)] : drawn;
}

const nearestS = (dueS: number, frac: number) => Math.floor(NEAREST_FRAC * wantedS(dueS, frac));

/** Until when the fire is kept, s from `from`: the pit's own end, at most the problem's. */
export const keepUntilS = (problem: RoundProblem, pit: RoundPit): number => Math.min(pit.keepUntil ?? problem.until, problem.until) - problem.from;
