import { put, retime } from './list-change.js';
import { trySlot } from './insertion.js';
import type { Night } from './night.js';
import type { RoundPlan } from './plan.js';
import { workKey } from './problem.js';
import { emptyRoster, type Roster } from './roster.js';

/**
 * A plan made before, laid into the facts of now: the same work for the same people in the same order, each as early as it
 * can be. What the facts no longer allow is left out.
 */
export function adapt(night: Night, before: RoundPlan): Roster {
  const roster = emptyRoster(night);
  const byKey = new Map(night.jobs.map((job, j) => [job.key, j]));
  for (const { work, personIds, startsAt } of before.assignments) {
    const j = byKey.get(workKey(work));
    if (j === undefined || roster.placed[j]! > 0) continue;
    const job = night.jobs[j]!;
    const people = personIds.map((id) => night.people.findIndex((person) => person.id === id)).filter((person) => job.able.includes(person));
    if (people.length !== job.people) continue;
    const meetS = job.people > 1 ? Math.max(0, startsAt - night.problem.from) : 0;
    const slots = people.map((person) => lastSlot(roster, j, person, meetS));
    const startS = Math.max(...slots.map((slot) => slot?.startS ?? Infinity));
    const agreed = slots.map((slot) => (slot && slot.startS < startS ? trySlot(roster, j, slot.person, slot.index, startS) : slot));
    if (agreed.every((slot) => slot !== undefined && slot.startS === startS)) put(roster, j, agreed.flatMap((slot) => slot ?? []));
  }
  retime(roster);
  return roster;
}

/** The last place on a list that leaves every fixed start behind it untouched: plans are laid in order of time. */
function lastSlot(roster: Roster, j: number, person: number, atLeastS: number) {
  const length = roster.lists[person]!.length;
  for (let index = length; index >= Math.max(0, length - 12); index--) {
    const slot = trySlot(roster, j, person, index, atLeastS);
    const next = roster.lists[person]![index];
    if (slot && (next === undefined || slot.startS < roster.startS[next]!)) return slot;
  }
  return undefined;
}
