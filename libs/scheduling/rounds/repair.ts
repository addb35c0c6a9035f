import { adapt } from './adapt.js';
import { changesBetween, promisesOf } from './changes.js';
import { clashS } from './cost.js';
import { dispatchRoster } from './dispatch.js';
import { compareRanks, levelsOf, ranked } from './levels.js';
import { take } from './list-change.js';
import { nightOf } from './night.js';
import { searchFrom, type PlanOptions } from './plan-rounds.js';
import type { Levels, Repair, RoundPlan } from './plan.js';
import { workKey, type RoundProblem } from './problem.js';
import { recreate } from './recreate.js';
import type { Roster } from './roster.js';

/** With more of the work orphaned than this, a fresh dispatch may be the better start. Source: tests/bench/rounds.mjs. */
const MANY_FRAC = 0.05;

/**
 * The plan of before, repaired after a fact: the old order laid into the new facts, what lost its place put back where it
 * costs least, then searched with each changed promise at its price. A fresh dispatch is taken where it is better even so.
 *
 * @param problem  the problem of now; without promises of its own, everything the old plan has ahead is a promise
 */
export function repairRounds(problem: RoundProblem, before: RoundPlan, options: PlanOptions): Repair {
  const promised = problem.promises.length > 0 ? problem : { ...problem, promises: promisesOf(before, problem.from) };
  const night = nightOf(promised);
  const adapted = adapt(night, before);
  const orphans = adapted.placed.reduce((sum, placed, j) => sum + (placed === 0 && before.assignments.some(({ work }) => workKey(work) === night.jobs[j]!.key) ? 1 : 0), 0);
  refill(adapted);
  const fresh = dispatchRoster(night);
  const rank = (roster: Roster) => ranked(levelsOf(roster), night.promiseS);
  const lost = orphans > night.jobs.length * MANY_FRAC && compareRanks(rank(fresh), rank(adapted)) < 0;
  const result = searchFrom(lost ? fresh : adapted, options, fresh);
  return { ...result, changes: changesBetween(promised, before, result.plan) };
}

/** Gives a place to everything that stands on no list; checks that overlap another of their pit are laid again. */
function refill(roster: Roster): void {
  for (const { jobs } of roster.night.pits) {
    let doneS = -Infinity;
    for (const j of jobs) {
      if (roster.placed[j] === 0) continue;
      if (roster.startS[j]! < doneS && roster.night.jobs[j]!.fixedS === undefined) take(roster, j);
      else doneS = roster.startS[j]! + roster.night.jobs[j]!.lengthS;
    }
  }
  recreate(roster, roster.night.jobs.flatMap((job, j) => (roster.placed[j] === 0 && job.fixedS === undefined ? [j] : [])));
}

export interface RepairWorth {
  readonly worth: boolean;
  readonly because: 'same-night' | 'unsafe' | 'work-without-place' | 'past-latest' | 'later';
}

/** Added lateness that nobody is asked to change a plan for, weighted seconds. Source: common practice, no source. */
const BEARABLE_S = 300;

/**
 * Whether a fact is worth a new plan: the old plan is laid into the new facts without any search, and only what it then
 * costs more decides. Ten probes do not mean ten plans.
 */
export function worthRepair(problem: RoundProblem, before: RoundPlan): RepairWorth {
  const promised = problem.promises.length > 0 ? problem : { ...problem, promises: promisesOf(before, problem.from) };
  const adapted = adapt(nightOf(promised), before);
  const now = levelsOf(adapted);
  const was = stillAhead(problem, before);
  if (now.unsafeS > was.unsafeS || clashS(adapted) > 0) return { worth: true, because: 'unsafe' };
  if (now.unplaced > was.unplaced) return { worth: true, because: 'work-without-place' };
  if (now.pastLatestS > was.pastLatestS) return { worth: true, because: 'past-latest' };
  return now.lateWeightedS > was.lateWeightedS + BEARABLE_S ? { worth: true, because: 'later' } : { worth: false, because: 'same-night' };
}

/** The levels of what an older plan has still ahead. */
function stillAhead(problem: RoundProblem, before: RoundPlan): Pick<Levels, 'unsafeS' | 'unplaced' | 'pastLatestS' | 'lateWeightedS'> {
  const ahead = before.assignments.filter(({ startsAt }) => startsAt >= problem.from);
  const sum = (of: (assignment: RoundPlan['assignments'][number]) => number) => ahead.reduce((all, assignment) => all + of(assignment), 0);
  return {
    unsafeS: sum(({ work, pastLatestS }) => (work.kind === 'check' ? pastLatestS : 0)),
    unplaced: before.unplaced.filter(({ work }) => work.kind !== 'check').length,
    pastLatestS: sum(({ work, pastLatestS }) => (work.kind === 'check' ? 0 : pastLatestS)),
    lateWeightedS: sum(({ work, lateS, earlyS }) => (work.kind === 'check' ? (problem.pits.find(({ id }) => id === work.pitId)?.weight ?? 1) * (lateS + earlyS) : 0)),
  };
}
