import { seedFrom } from '@stokehold/domain/quantity';
import { adapt } from './adapt.js';
import { dispatchRoster } from './dispatch.js';
import { mended } from './mended.js';
import { levelsOf } from './levels.js';
import { nightOf } from './night.js';
import { planFrom } from './plan-from.js';
import type { PlanResult, RoundPlan } from './plan.js';
import type { RoundProblem } from './problem.js';
import type { Roster } from './roster.js';
import { searchRoster, type RosterSearch } from './search-roster.js';
import { settle } from './settle.js';

/** Seed, stop rule and cancel of a search; `from` is a plan to go on from instead of a fresh dispatch. */
export interface PlanOptions extends Pick<RosterSearch, 'seed' | 'stop' | 'cancelled'> {
  readonly from?: RoundPlan;
}

/**
 * The plan of the night: dispatch, or the plan to go on from; then seeded ruin and recreate until `stop` says so. Never worse
 * than the dispatch. The same problem, seed and iterations give the same plan, in whatever order the problem lists things.
 *
 * @param problem  validated (validateRounds)
 * @returns the plan with its levels, bound, reasons, and what it takes to make it again. Held to rounds/plan-rounds.test.ts
 */
export function planRounds(problem: RoundProblem, options: PlanOptions): PlanResult {
  const night = nightOf(problem, options.from);
  const dispatched = mended(dispatchRoster(night));
  return resultOf(options.from ? adapt(night, options.from) : dispatched, options, dispatched);
}

/** Searches on from a roster and tells what was found; never worse than `dispatched`. */
export function resultOf(start: Roster, options: PlanOptions, dispatched: Roster): PlanResult {
  const { night } = start;
  const { roster, iterations, endedBy } = searchRoster(start, { ...options, fallback: dispatched });
  const plan = planFrom(settle(roster));
  return {
    plan, seed: options.seed, iterations, endedBy,
    problemHash: hashOf(night.problem),
    planHash: hashOf([plan.assignments, plan.unplaced, plan.levels]),
    dispatched: levelsOf(dispatched),
    gapWeightedS: plan.levels.lateWeightedS - plan.bound.lateWeightedS,
  };
}

const hashOf = (value: unknown): number => seedFrom(JSON.stringify(value));
