import { seedFrom, type YardId } from '@stokehold/domain/quantity';
import { afterIterations, whicheverFirst, type StopRule } from '../search/index.js';
import { dispatchRoster } from './dispatch.js';
import { compareRanks, levelsOf, ranked } from './levels.js';
import { mended } from './mended.js';
import { nightOf } from './night.js';
import { resultOf } from './plan-rounds.js';
import type { PlanResult } from './plan.js';
import type { RoundProblem } from './problem.js';
import type { Roster } from './roster.js';

export interface YardNight {
  readonly yardId: YardId;
  readonly problem: RoundProblem;
}

export interface YardOptions {
  readonly seed: number;
  /** Iterations for all yards together. */
  readonly iterations: number;
  /** The caller's guard, asked in every yard; once it ends, the yards that are left keep their dispatch. */
  readonly stop?: StopRule;
  readonly cancelled?: () => boolean;
}

/** A yard whose dispatch is not whole is searched so many times as long as one whose is. */
const SHARE_OF_WORST = 3;

/**
 * The nights of several yards, each by itself: dispatch for all, then the search, worst yard first, so that a guard that
 * bites costs the best yards. What a yard gets depends on the seed, its id and its share of the iterations alone.
 *
 * @param yards  validated problems, at most one of each yard
 * @returns a result for each yard, in the order given. Held to rounds/yards.test.ts
 */
export function planYards(yards: readonly YardNight[], { seed, iterations, stop = () => false, cancelled }: YardOptions): readonly { readonly yardId: YardId; readonly result: PlanResult }[] {
  const starts = yards.map(({ yardId, problem }) => {
    const roster = mended(dispatchRoster(nightOf(problem)));
    return { yardId, roster, rank: ranked(levelsOf(roster), roster.night) };
  });
  const worstFirst = [...starts].sort((a, b) => compareRanks(b.rank, a.rank) || (a.yardId < b.yardId ? -1 : 1));
  const weight = ({ rank }: { readonly rank: readonly number[] }) => (isBroken(rank) ? SHARE_OF_WORST : 1);
  const shares = worstFirst.reduce((sum, start) => sum + weight(start), 0);
  const results = new Map<YardId, PlanResult>();
  for (const start of worstFirst) {
    const share = Math.floor((iterations * weight(start)) / shares);
    results.set(start.yardId, searchYard(start, { seed, stop: whicheverFirst(afterIterations(share), stop), ...(cancelled ? { cancelled } : {}) }));
  }
  return yards.flatMap(({ yardId }) => {
    const result = results.get(yardId);
    return result ? [{ yardId, result }] : [];
  });
}

const searchYard = ({ yardId, roster }: { readonly yardId: YardId; readonly roster: Roster }, options: { seed: number; stop: StopRule; cancelled?: () => boolean }): PlanResult =>
  resultOf(roster, { ...options, seed: seedFrom(options.seed, yardId) }, roster);

/** Unsafe checks, work without a place or past its latest: the levels before lateness. */
const isBroken = (rank: readonly number[]) => rank.slice(0, 4).some((level) => level > 0);
