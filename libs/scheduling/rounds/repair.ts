import { afterIterations } from '../search/index.js';
import { adapt } from './adapt.js';
import { changesBetween, promisesOf } from './changes.js';
import { clashS } from './cost.js';
import { dispatchRoster } from './dispatch.js';
import { compareRanks, levelsOf, ranked } from './levels.js';
import { takeAll } from './list-change.js';
import { mended } from './mended.js';
import { nightOf } from './night.js';
import { resultOf, type PlanOptions } from './plan-rounds.js';
import { refill } from './search-roster.js';
import type { Levels, Repair, RoundPlan } from './plan.js';
import type { RoundProblem } from './problem.js';
import type { Roster } from './roster.js';

export interface RepairOptions extends Omit<PlanOptions, 'from'> {
  /** Searches only where the old plan, laid into the new facts, falls short of what it was. Default false. */
  readonly onlyIfWorth?: boolean;
}

/**
 * The plan of before, repaired after a fact: the old order laid into the new facts, what lost its place put back where it
 * costs least, then searched with each changed promise at its price. Where the old order
 * cannot be mended, and only there, a fresh dispatch is the start if it is better.
 *
 * @param problem  the problem of now; without promises of its own, everything the old plan has ahead is a promise
 * @param before   the plan that people have
 * @returns the plan with its changes, each with its cause. Held to rounds/repair.test.ts
 */
export function repairRounds(problem: RoundProblem, before: RoundPlan, { onlyIfWorth = false, ...options }: RepairOptions): Repair {
  const promised = withPromises(problem, before);
  const laid = laidAgain(promised, before);
  const isWorth = !onlyIfWorth || worthOf(laid, before).worth;
  const start = startOf(laid);
  const result = resultOf(start, isWorth ? options : { ...options, stop: afterIterations(0) }, start);
  return { ...result, changes: changesBetween(promised, before, result.plan) };
}

const withPromises = (problem: RoundProblem, before: RoundPlan): RoundProblem =>
  problem.promises.length > 0 ? problem : { ...problem, promises: promisesOf(before, problem.from) };

/** The old plan in the new facts, with what lost its place or has none yet put back where it costs least. */
function laidAgain(problem: RoundProblem, before: RoundPlan): Roster {
  const adapted = adapt(nightOf(problem, before), before);
  layAgain(adapted);
  refill(adapted);
  return adapted;
}

/** Mended where the facts broke it; a fresh dispatch where even that is worse. */
function startOf(laid: Roster): Roster {
  if (!isBroken(laid)) return laid;
  const repaired = mended(laid);
  if (!isBroken(repaired)) return repaired;
  const { night } = laid;
  const fresh = dispatchRoster(night);
  return clashS(repaired) > 0 || compareRanks(ranked(levelsOf(fresh), night), ranked(levelsOf(repaired), night)) < 0 ? fresh : repaired;
}

/** A fire unsafe that need not be, work without a place, or two checks of a pit at once. */
function isBroken(roster: Roster): boolean {
  const { unsafeS, unplaced } = levelsOf(roster);
  return unsafeS > roster.night.opening.unsafeS || unplaced > 0 || clashS(roster) > 0;
}

/** Takes off checks that overlap another of their pit, so that they are laid again. */
function layAgain(roster: Roster): void {
  for (const { jobs } of roster.night.pits) {
    let doneS = -Infinity;
    for (const j of jobs) {
      if (roster.placed[j] === 0) continue;
      if (roster.startS[j]! < doneS && roster.night.jobs[j]!.fixedS === undefined) takeAll(roster, [j]);
      else doneS = roster.startS[j]! + roster.night.jobs[j]!.lengthS;
    }
  }
}

export interface RepairWorth {
  readonly worth: boolean;
  readonly because: 'same-night' | 'unsafe' | 'work-without-place' | 'past-latest' | 'later';
}

/** Added lateness that nobody is asked to change a plan for, weighted seconds. Source: common practice, no source. */
const BEARABLE_S = 300;

/**
 * Whether a fact is worth a search: the old plan is laid into the new facts, what has no place yet is put where it costs least, and
 * only what that then costs more than the old plan did decides, what no plan could avoid left aside. Ten probes do not mean ten
 * searches.
 */
export const worthRepair = (problem: RoundProblem, before: RoundPlan): RepairWorth => worthOf(laidAgain(withPromises(problem, before), before), before);

function worthOf(laid: Roster, before: RoundPlan): RepairWorth {
  const { opening, problem } = laid.night;
  const now = levelsOf(laid);
  const was = stillAhead(problem, before);
  const because = ((): RepairWorth['because'] => {
    if (now.unsafeS > Math.max(was.unsafeS, opening.unsafeS) || clashS(laid) > 0) return 'unsafe';
    if (now.unplaced > was.unplaced) return 'work-without-place';
    if (now.pastLatestS > was.pastLatestS) return 'past-latest';
    return now.lateWeightedS > Math.max(was.lateWeightedS, opening.lateWeightedS) + BEARABLE_S ? 'later' : 'same-night';
  })();
  return { worth: because !== 'same-night', because };
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
