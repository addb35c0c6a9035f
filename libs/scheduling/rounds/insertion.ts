import { linksOf, linkWithout, personCost, SQUARES_PER_S, startCost } from './cost.js';
import type { Job } from './night.js';
import { freeAfter, placeAfter, walkS, type Roster } from './roster.js';

/** Where a job could go on one list, and what the guide cost would rise by. */
export interface Slot {
  readonly person: number;
  readonly index: number;
  readonly startS: number;
  readonly cost: number;
}

/** Seconds of walking that weigh as much as one weighted second of lateness, when a slot is chosen. */
const WALK_S_PER_LATE_S = 4;

/**
 * Follows a list from a place in it: when each job would start if somebody were free at `freeS` in `place`.
 * False if a fixed start, a break's window or the shift's end does not allow it. What moves is left in the roster's ripple.
 */
export function followList(roster: Roster, person: number, from: number, freeS: number, place: number): boolean {
  const { night, startS, ripple: out } = roster;
  out.count = 0;
  const list = roster.lists[person]!;
  const homeS = night.people[person]!.endS;
  let free = freeS;
  let at = place;
  for (let i = from; i < list.length; i++) {
    const q = list[i]!;
    const job = night.jobs[q]!;
    const arriveS = free + walkS(night, at, job.place);
    if (isAppointment(job)) {
      if (arriveS > startS[q]!) return false;
      if (job.place >= 0) return true;
      free = startS[q]! + job.lengthS;
      continue;
    }
    const begin = arriveS > job.releaseS ? arriveS : job.releaseS;
    if (begin > job.hardLatestS || begin + job.lengthS > homeS) return false;
    if (begin === startS[q]) {
      if (job.place >= 0) return true;
    } else {
      out.jobs[out.count] = q;
      out.startS[out.count] = begin;
      out.count += 1;
    }
    free = begin + job.lengthS;
    if (job.place >= 0) at = job.place;
  }
  return true;
}

/** A start that both of two lists, a fact or a pin have agreed on. */
export const isAppointment = (job: Job): boolean => job.fixedS !== undefined || job.people > 1;

/** What the ripple does to the guide cost; the starts are left as they were unless `keep`. */
export function shiftCost(roster: Roster, keep: boolean): number {
  const { night, startS, ripple } = roster;
  let cost = 0;
  for (let i = 0; i < ripple.count; i++) {
    const q = ripple.jobs[i]!;
    const job = night.jobs[q]!;
    cost -= startCost(roster, q, job) + (job.kind === 'check' ? linksOf(roster, q, job) : 0);
    const beforeS = startS[q]!;
    startS[q] = ripple.startS[i]!;
    ripple.startS[i] = beforeS;
    cost += startCost(roster, q, job) + (job.kind === 'check' ? linksOf(roster, q, job) : 0);
  }
  if (!keep) for (let i = 0; i < ripple.count; i++) startS[ripple.jobs[i]!] = ripple.startS[i]!;
  return cost;
}

/** Tries one place on one list; undefined if a hard rule forbids it. `atLeastS` delays the start for a meeting of two. */
export function trySlot(roster: Roster, j: number, person: number, index: number, atLeastS = 0): Slot | undefined {
  const { night, startS, placed } = roster;
  const job = night.jobs[j]!;
  const from = placeAfter(roster, person, index);
  const arriveS = freeAfter(roster, person, index) + walkS(night, from, job.place);
  const begin = Math.max(arriveS, job.releaseS, atLeastS);
  if (job.fixedS !== undefined && begin !== job.fixedS) return undefined;
  if (begin > job.hardLatestS || begin + job.lengthS > night.people[person]!.endS) return undefined;
  const place = job.place >= 0 ? job.place : from;
  if (!followList(roster, person, index, begin + job.lengthS, place)) return undefined;
  const next = nextPlace(roster, person, index);
  const walk = walkS(night, from, job.place) + (next < 0 ? 0 : walkS(night, place, next) - walkS(night, from, next));
  const without = job.kind === 'check' ? linkWithout(roster, job) : 0;
  const before = startS[j]!;
  startS[j] = begin;
  placed[j] = 1;
  let cost = startCost(roster, j, job) + personCost(roster, job, person) + (job.kind === 'check' ? linksOf(roster, j, job) - without : 0);
  cost += shiftCost(roster, false) + Math.floor(walk / WALK_S_PER_LATE_S) + (job.kind === 'break' ? 0 : levelling(roster, job, person));
  placed[j] = 0;
  startS[j] = before;
  return { person, index, startS: begin, cost };
}

/** Work for somebody who has much costs more: the rise of the square of their work, scaled to seconds. */
const levelling = (roster: Roster, job: Job, person: number): number =>
  Math.floor((job.lengthS * (2 * roster.workS[person]! + job.lengthS)) / SQUARES_PER_S);

function nextPlace(roster: Roster, person: number, index: number): number {
  const list = roster.lists[person]!;
  for (let i = index; i < list.length; i++) {
    const { place } = roster.night.jobs[list[i]!]!;
    if (place >= 0) return place;
  }
  return -1;
}
