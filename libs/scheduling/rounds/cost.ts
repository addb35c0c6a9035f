import type { Job } from './night.js';
import { PROMISE_SLIP_S } from './levels.js';
import type { Levels } from './plan.js';
import { placedAfter, placedBefore, type Roster } from './roster.js';

// One number that guides the search down the levels. Its weights lie so far apart that a trade between levels is rare;
// the best plan is chosen by the levels themselves, so a trade on the way costs nothing.

const UNSAFE_PER_S = 60;
const UNSAFE_CHECK = 20_000;
const CLASH_PER_S = 10_000;
const UNPLACED_TASK = 60_000;
const PAST_LATEST_PER_S = 30;
/** A check left out, beside what its absence costs the chain: keeps the search looking for a place. */
const UNPLACED_CHECK = 30;

/** linkCost and tailCost weighed, in plain numbers: this is the innermost step of the search. Held to rounds/cost.test.ts. */
function link(roster: Roster, pit: number, before: number, after: number): number {
  const { source, firstEarliestS, firstDueS, firstLatestS, keepS } = roster.night.pits[pit]!;
  const { gap, weight } = source;
  const first = before < 0;
  const beforeS = first ? 0 : roster.startS[before]!;
  const startS = after < 0 ? keepS : roster.startS[after]!;
  const pastLatestS = startS - (first ? firstLatestS : beforeS + gap.latestSafeS);
  const pastDueS = startS - (first ? firstDueS : beforeS + gap.dueS);
  let cost = 0;
  if (pastLatestS > 0) cost += pastLatestS * UNSAFE_PER_S + UNSAFE_CHECK;
  if (pastDueS > 0) cost += pastDueS * weight;
  if (after < 0) return cost;
  const beforeEarliestS = (first ? firstEarliestS : beforeS + gap.earliestS) - startS;
  if (beforeEarliestS > 0) cost += beforeEarliestS * weight;
  if (first) return cost;
  const overlapS = beforeS + roster.night.jobs[before]!.lengthS - startS;
  return overlapS > 0 ? cost + overlapS * CLASH_PER_S : cost;
}

/** Squared seconds of work that weigh as much as one weighted second of lateness. */
export const SQUARES_PER_S = 120_000;

/** The guide: what a roster is worth as one whole number. */
export function guideCost(roster: Roster, levels: Levels): number {
  const squares = roster.workS.reduce((sum, workS) => sum + Math.floor((workS * workS) / SQUARES_PER_S), 0);
  return (
    levels.unsafeS * UNSAFE_PER_S + levels.unsafeChecks * UNSAFE_CHECK + clashS(roster) * CLASH_PER_S + levels.unplaced * UNPLACED_TASK +
    levels.pastLatestS * PAST_LATEST_PER_S + levels.lateWeightedS + Math.floor((levels.promises * roster.night.promiseS) / 2) +
    Math.ceil(levels.tasksLateS / 8) + squares + Math.floor(levels.walkS / 4)
  );
}

/** Seconds in which two checks of a pit overlap: 0 in every plan that leaves the planner. */
export function clashS(roster: Roster): number {
  let sum = 0;
  for (const { jobs } of roster.night.pits) {
    let doneS = -Infinity;
    for (const j of jobs) {
      if (roster.placed[j] === 0) continue;
      sum += Math.max(0, doneS - roster.startS[j]!);
      doneS = roster.startS[j]! + roster.night.jobs[j]!.lengthS;
    }
  }
  return sum;
}

/** The two links of a pit's chain that a placed check holds. */
export function linksOf(roster: Roster, j: number, job: Job): number {
  const before = placedBefore(roster, job);
  const after = placedAfter(roster, job);
  return link(roster, job.pit, before, j) + link(roster, job.pit, j, after);
}

/** The one link that would be left if this check were not there. */
export const linkWithout = (roster: Roster, job: Job): number => link(roster, job.pit, placedBefore(roster, job), placedAfter(roster, job));

/** What a start costs beyond the chain: tasks and breaks past due and latest, a promise that slipped. */
export function startCost(roster: Roster, j: number, job: Job): number {
  const startS = roster.startS[j]!;
  let cost = 0;
  if (job.kind === 'task') cost += Math.ceil((job.weight * Math.max(0, startS - job.targetS)) / 8);
  if (job.kind !== 'check') cost += PAST_LATEST_PER_S * Math.max(0, startS - job.latestS);
  if (job.promise && Math.abs(startS - job.promise.startS) > PROMISE_SLIP_S) cost += Math.floor((job.promise.units * roster.night.promiseS) / 4);
  return cost;
}

/** What a person costs who was not promised, beyond a slipped start. */
export function personCost(roster: Roster, job: Job, person: number): number {
  if (!job.promise || job.promise.people.includes(person)) return 0;
  return Math.floor((job.promise.units * roster.night.promiseS) / 2);
}

export const unplacedCost = (roster: Roster, job: Job): number =>
  (job.kind === 'check' ? UNPLACED_CHECK : job.kind === 'absence' ? 0 : UNPLACED_TASK) + (job.promise ? Math.floor((job.promise.units * roster.night.promiseS) / 2) : 0);
