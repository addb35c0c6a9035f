import type { PersonId } from '@stokehold/domain/quantity';
import { enterChain, leaveChain, tryPlace } from './insertion.js';
import { putOn, retime } from './list-change.js';
import type { Night } from './night.js';
import type { RoundPlan } from './plan.js';
import { workKey } from './problem.js';
import { recount } from './cost.js';
import { emptyRoster, jobAt, NONE, type Roster } from './roster.js';

/** So many places are looked at from the end of a list backwards. */
const LOOK_BACK = 12;

/**
 * A plan made before, laid into the facts of now: the same work for the same people, in the order in which it now comes, each at its
 * old time, or at its due if it was late, or as early after it as it can be. What the facts no longer allow is left out.
 *
 * @param night  made from the same plan, so that its checks have their places
 */
export function adapt(night: Night, before: RoundPlan): Roster {
  const roster = emptyRoster(night);
  recount(roster);
  const byPerson = new Map(night.people.map((person, index) => [person.id, index]));
  for (const { j, personIds, startS } of inOrder(night, before)) {
    if (roster.placed[j]! > 0) continue;
    const people = personIds.map((id) => byPerson.get(id) ?? NONE).filter((person) => night.jobs[j]!.able.includes(person));
    if (people.length === night.columns.needs[j]) layBack(roster, j, people, startS);
  }
  retime(roster);
  return roster;
}

interface Laid {
  readonly j: number;
  readonly personIds: readonly PersonId[];
  readonly startS: number;
}

/** The work of a plan that is still on the night, by its time now: a check's place in the skeleton, else its old start. */
function inOrder({ jobs, problem }: Night, before: RoundPlan): readonly Laid[] {
  const byKey = new Map(jobs.map((job, j) => [job.key, j]));
  return before.assignments
    .flatMap(({ work, personIds, startsAt }): Laid[] => {
      const j = byKey.get(workKey(work));
      if (j === undefined) return [];
      const startS = startsAt - problem.from;
      return [{ j, personIds, startS: jobs[j]!.kind === 'check' ? jobs[j]!.targetS : startS }];
    })
    .sort((one, other) => one.startS - other.startS || one.j - other.j);
}

/** Puts a job on the lists of the people who had it, at the first moment all of them can. */
function layBack(roster: Roster, j: number, people: readonly number[], startS: number): void {
  const { columns, jobs } = roster.night;
  enterChain(roster, j);
  const fixedS = jobs[j]!.fixedS;
  const [only] = people;
  if (people.length === 1 && fixedS === undefined && only !== undefined) {
    layAlone(roster, j, only, Math.max(0, jobs[j]!.kind === 'task' ? Math.min(startS, columns.targetS[j]!) : startS));
    return;
  }
  const atLeastS = fixedS ?? (columns.needs[j]! > 1 ? Math.max(0, startS) : 0);
  const first = people.map((person) => lastPlace(roster, j, person, atLeastS));
  const agreedS = Math.max(...first.map((place) => place?.startS ?? Infinity));
  const places = agreedS === Infinity || (fixedS !== undefined && agreedS !== fixedS) ? [] : first.flatMap((place, i) => {
    if (!place) return [];
    const { person, index } = place;
    return place.startS === agreedS || (tryPlace(roster, j, person, index, agreedS) && roster.scratch.startS === agreedS) ? [{ person: people[i]!, index }] : [];
  });
  if (places.length < people.length) leaveChain(roster, j);
  else for (const { person, index } of places) putOn(roster, j, person, index, agreedS);
}

/** Work of one person: at its time and waiting for it, else as early as it can be. */
function layAlone(roster: Roster, j: number, person: number, startS: number): void {
  const place = lastPlace(roster, j, person, startS) ?? lastPlace(roster, j, person, 0);
  if (place) putOn(roster, j, person, place.index, place.startS, place.startS <= startS);
  else leaveChain(roster, j);
}

/** The last place on a list that leaves every fixed start behind it untouched: plans are laid in order of time. */
function lastPlace(roster: Roster, j: number, person: number, atLeastS: number): { readonly person: number; readonly index: number; readonly startS: number } | undefined {
  const count = roster.count[person]!;
  for (let index = count; index >= Math.max(0, count - LOOK_BACK); index--) {
    if (!tryPlace(roster, j, person, index, atLeastS)) continue;
    const { startS } = roster.scratch;
    if (index === count || startS < roster.startS[jobAt(roster, person, index)]!) return { person, index, startS };
  }
  return undefined;
}
