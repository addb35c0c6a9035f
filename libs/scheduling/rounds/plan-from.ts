import { later, type EpochS } from '@stokehold/domain/quantity';
import { boundOf } from './bound.js';
import { closeHoles } from './close-holes.js';
import { hindrancesAt, unplacedReason } from './hindrance.js';
import { levelsOf } from './levels.js';
import type { Job } from './night.js';
import type { Assignment, AssignmentReason, RoundPlan } from './plan.js';
import { workKey, type Work } from './problem.js';
import { jobAt, peopleOf, placedBeside, walkS, type Roster } from './roster.js';

/** The plan that people see: every piece of work with its person, time and reason, or unplaced and why. */
export function planFrom(open: Roster): RoundPlan {
  const { roster, missedS } = closeHoles(open);
  const { night } = roster;
  const assignments: Assignment[] = [];
  const unplaced: { work: Work; reason: ReturnType<typeof unplacedReason> }[] = [];
  for (const [j, job] of night.jobs.entries()) {
    if (job.work === undefined) continue;
    if (roster.placed[j]! > 0) assignments.push(assignmentOf(roster, j, job, job.work));
    else if (job.kind !== 'check' || missedS.has(j)) unplaced.push({ work: job.work, reason: unplacedReason(roster, j, missedS.get(j) ?? job.targetS) });
  }
  assignments.sort((a, b) => a.startsAt - b.startsAt || (workKey(a.work) < workKey(b.work) ? -1 : 1));
  return { assignments, unplaced, levels: levelsOf(roster), bound: boundOf(night.problem, night.opening) };
}

interface Window {
  readonly earliestS: number;
  readonly dueS: number;
  readonly latestS: number;
}

function windowOf(roster: Roster, j: number, job: Job): Window {
  if (job.kind !== 'check') return { earliestS: -Infinity, dueS: job.kind === 'break' ? job.latestS : job.targetS, latestS: job.latestS };
  const pit = roster.night.pits[job.pit]!;
  const before = placedBeside(roster, j, -1);
  if (before < 0) return { earliestS: pit.firstEarliestS, dueS: pit.firstDueS, latestS: pit.firstLatestS };
  const { gap } = pit.source;
  const beforeS = roster.startS[before]!;
  return { earliestS: beforeS + gap.earliestS, dueS: beforeS + gap.dueS, latestS: beforeS + gap.latestSafeS };
}

function assignmentOf(roster: Roster, j: number, job: Job, work: Work): Assignment {
  const { night } = roster;
  const at = (s: number): EpochS => later(night.problem.from, s);
  const startS = roster.startS[j]!;
  const window = windowOf(roster, j, job);
  const lateS = Math.max(0, startS - window.dueS);
  const people = peopleOf(roster, j);
  return {
    work,
    personIds: people.map((person) => night.people[person]!.id).sort(),
    startsAt: at(startS),
    endsAt: at(startS + job.lengthS),
    dueAt: at(window.dueS),
    latestSafeAt: at(window.latestS),
    slackS: window.latestS - startS,
    lateS,
    pastLatestS: Math.max(0, startS - window.latestS),
    earlyS: Math.max(0, window.earliestS - startS),
    reason: { code: reasonCode(roster, j, job, people), late: lateS > 0 ? hindrancesAt(roster, j, Math.max(0, window.dueS)) : [] },
  };
}

function reasonCode(roster: Roster, j: number, job: Job, people: readonly number[]): AssignmentReason['code'] {
  if (job.frozen && job.kind !== 'break') return 'frozen';
  if (job.kind === 'break') return 'own-break';
  if (job.pinned) return 'pinned';
  if (job.able.length === people.length) return 'only-one-able';
  const { night, startS } = roster;
  const walkTo = (person: number): number => {
    let place = night.people[person]!.place;
    for (let i = 0; i < roster.count[person]!; i++) {
      const other = jobAt(roster, person, i);
      if (other === j || startS[other]! >= startS[j]!) break;
      if (night.jobs[other]!.place >= 0) place = night.jobs[other]!.place;
    }
    return walkS(night, place, job.place);
  };
  const own = Math.max(...people.map(walkTo));
  return job.able.every((person) => people.includes(person) || own <= walkTo(person)) ? 'nearest' : 'evens-load';
}
