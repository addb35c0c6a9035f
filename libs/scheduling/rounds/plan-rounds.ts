import { randomStream, seedFrom, type RandomStream } from '@stokehold/domain/quantity';
import { anneal, type Reworkable, type StopRule } from '../search/index.js';
import { clashS, guideCost } from './cost.js';
import { dispatchRoster } from './dispatch.js';
import { compareRanks, levelsOf, ranked } from './levels.js';
import { retime } from './list-change.js';
import { nightOf, type Night } from './night.js';
import { planFrom } from './plan-from.js';
import type { PlanResult } from './plan.js';
import type { RoundProblem } from './problem.js';
import { recreate } from './recreate.js';
import { copyRoster, restoreRoster, type Roster } from './roster.js';
import { ruin } from './ruin.js';
import { settle } from './settle.js';

export interface PlanOptions {
  readonly seed: number;
  readonly stop: StopRule;
}

/** Weighted seconds of lateness that are taken one time in e, at the start of a cycle and at its end. Source: tests/bench/rounds.mjs. */
const WARM = 240;
const COLD = 4;
/** Work left out before that is tried again in each iteration. */
const TRIED_AGAIN = 6;

/**
 * The plan of the night: dispatch, then seeded ruin and recreate until `stop` says so; never worse than the dispatch.
 *
 * @param problem  validated (validateRounds)
 * @returns the plan with its levels, bound, reasons, and what it takes to make it again. Held to rounds/plan-rounds.test.ts
 */
export function planRounds(problem: RoundProblem, options: PlanOptions): PlanResult {
  const night = nightOf(problem);
  return searchFrom(dispatchRoster(night), options);
}

/** Improves a roster and tells what was found; never worse than `fallback`, a whole plan made without a search. */
export function searchFrom(start: Roster, { seed, stop }: PlanOptions, fallback = start): PlanResult {
  const { night } = start;
  const dispatched = levelsOf(fallback);
  let best = copyRoster(fallback);
  let bestRank = ranked(dispatched, night.promiseS);
  const roster = copyRoster(start);
  retime(roster);
  recreate(roster, leftOut(roster));
  const accepted = copyRoster(roster);
  const work: Reworkable = {
    change: (random) => {
      const taken = ruin(roster, random);
      const others = leftOut(roster).filter((j) => !taken.includes(j));
      recreate(roster, [...taken, ...some(others, TRIED_AGAIN, random)], random);
    },
    cost: () => guideCost(roster, levelsOf(roster)),
    accept: () => restoreRoster(accepted, roster),
    reject: () => restoreRoster(roster, accepted),
    keepIfBest: () => {
      const rank = ranked(levelsOf(roster), night.promiseS);
      if (compareRanks(rank, bestRank) >= 0 || clashS(roster) > 0) return;
      best = copyRoster(roster);
      bestRank = rank;
    },
    backToBest: () => {
      restoreRoster(roster, best);
      retime(roster);
      restoreRoster(accepted, roster);
    },
  };
  work.keepIfBest();
  const movable = night.people.length > 0 && night.jobs.some((job) => job.fixedS === undefined);
  const iterations = movable ? anneal(work, { random: randomStream(seedFrom('rounds', seed)), stop, warm: WARM, cold: COLD }) : 0;
  return resultOf(settle(best), { seed, iterations, dispatched, night });
}

/** What stands on no list and could: pinned starts and work for more people than are able aside. */
function leftOut({ night, placed }: Roster): readonly number[] {
  const found: number[] = [];
  for (let j = 0; j < placed.length; j++) {
    const job = night.jobs[j]!;
    if (placed[j] === 0 && job.fixedS === undefined && job.able.length >= job.people) found.push(j);
  }
  return found;
}

/** A stretch of the list, from a random place. */
function some(jobs: readonly number[], most: number, random: RandomStream): readonly number[] {
  const first = jobs.length > most ? random.below(jobs.length - most + 1) : 0;
  return jobs.slice(first, first + most);
}

function resultOf(roster: Roster, found: { seed: number; iterations: number; dispatched: PlanResult['dispatched']; night: Night }): PlanResult {
  const plan = planFrom(roster);
  return {
    plan,
    seed: found.seed,
    iterations: found.iterations,
    problemHash: hashOf(found.night.problem),
    planHash: hashOf([plan.assignments, plan.unplaced, plan.levels]),
    dispatched: found.dispatched,
    gapWeightedS: plan.levels.lateWeightedS - plan.bound.lateWeightedS,
  };
}

const hashOf = (value: unknown): number => seedFrom(JSON.stringify(value));
