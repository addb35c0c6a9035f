import type { NightPit } from './night.js';

/** What lies between two checks of a pit, or between the last one and the end of its fire. */
export interface LinkCost {
  readonly unsafeS: number;
  readonly lateWeightedS: number;
  /** Seconds in which a check would begin before the one before it ended: never in a plan. */
  readonly clashS: number;
}

/**
 * The cost of starting a check at `startS` when the check before it started at `beforeS` (none: the pit's first window).
 * Unsafe is what passes latest safe; late what passes due, early what comes before earliest, both by weight.
 */
export function linkCost(pit: NightPit, beforeS: number | undefined, startS: number, beforeLengthS = pit.source.checkS): LinkCost {
  const { gap, weight } = pit.source;
  const earliestS = beforeS === undefined ? pit.firstEarliestS : beforeS + gap.earliestS;
  const dueS = beforeS === undefined ? pit.firstDueS : beforeS + gap.dueS;
  const latestS = beforeS === undefined ? pit.firstLatestS : beforeS + gap.latestSafeS;
  return {
    unsafeS: Math.max(0, startS - latestS),
    lateWeightedS: weight * (Math.max(0, startS - dueS) + Math.max(0, earliestS - startS)),
    clashS: beforeS === undefined ? 0 : Math.max(0, beforeS + beforeLengthS - startS),
  };
}

/** The fire after its last check, until it is no longer kept: nobody may be late for a check that was left out. */
export function tailCost(pit: NightPit, lastS: number | undefined): LinkCost {
  const { gap, weight } = pit.source;
  const dueS = lastS === undefined ? pit.firstDueS : lastS + gap.dueS;
  const latestS = lastS === undefined ? pit.firstLatestS : lastS + gap.latestSafeS;
  return { unsafeS: Math.max(0, pit.keepS - latestS), lateWeightedS: weight * Math.max(0, pit.keepS - dueS), clashS: 0 };
}
