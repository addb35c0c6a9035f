import { followList, isAppointment, shiftCost, type Slot } from './insertion.js';
import { freeAfter, isWork, placeAfter, type Roster } from './roster.js';

/** Puts a job where the slots say, one slot a person, and moves what follows. */
export function put(roster: Roster, j: number, slots: readonly Slot[]): void {
  const job = roster.night.jobs[j]!;
  for (const { person, index, startS } of slots) {
    roster.lists[person]!.splice(index, 0, j);
    roster.startS[j] = startS;
    if (isWork(job)) roster.workS[person]! += job.lengthS;
    follow(roster, person, index + 1);
  }
  roster.placed[j] = slots.length;
}

/**
 * Takes a job off every list and lets what follows move up. Where a detour was shorter than the way it replaces, the next
 * work cannot be reached any more and comes off as well.
 *
 * @returns everything taken off
 */
export function take(roster: Roster, j: number): readonly number[] {
  const taken = [j];
  const job = roster.night.jobs[j]!;
  roster.placed[j] = 0;
  for (const [person, list] of roster.lists.entries()) {
    const index = list.indexOf(j);
    if (index < 0) continue;
    list.splice(index, 1);
    if (isWork(job)) roster.workS[person]! -= job.lengthS;
    while (!follow(roster, person, index)) {
      const next = list.slice(index).find((other) => !roster.night.jobs[other]!.frozen);
      if (next === undefined) break;
      taken.push(...take(roster, next));
    }
  }
  return taken;
}

/** Times a list anew from a place in it; false, and nothing changed, if a hard rule forbids it. */
export function follow(roster: Roster, person: number, index: number): boolean {
  const possible = followList(roster, person, index, freeAfter(roster, person, index), placeAfter(roster, person, index));
  if (possible) shiftCost(roster, true);
  return possible;
}

/** Times every list anew, each job as early as its list allows; what then cannot be kept comes off. */
export function retime(roster: Roster): void {
  for (const [person, list] of roster.lists.entries()) {
    for (let index = 0; index < list.length; index++) {
      const job = roster.night.jobs[list[index]!]!;
      if (isAppointment(job)) continue;
      while (!follow(roster, person, index)) {
        const last = list.slice(index).find((other) => !roster.night.jobs[other]!.frozen);
        if (last === undefined) break;
        take(roster, last);
      }
      break;
    }
  }
}
