import type { Job, Night } from './night.js';

/** Not on any list. */
export const UNPLACED = -1;

/**
 * A plan while it is being made: for each person the work in its order, and for each job its start. Mutable and private to
 * the planner; a plan leaves it through planFrom.
 */
export interface Roster {
  readonly night: Night;
  /** Jobs of each person in order. */
  readonly lists: number[][];
  /** Start of each job, s from `from`; meaningless while it is unplaced. */
  readonly startS: Int32Array;
  /** On how many lists a job stands: 0, or as many as it needs people. */
  readonly placed: Uint8Array;
  /** Work on each list, with what was done before, s. */
  readonly workS: number[];
  /** Jobs that a change at one place would move, with their new starts; one a roster, to spare the heap. */
  readonly ripple: { readonly jobs: Int32Array; readonly startS: Int32Array; count: number };
}

const noRipple = (jobs: number): Roster['ripple'] => ({ jobs: new Int32Array(jobs), startS: new Int32Array(jobs), count: 0 });

/** The facts alone: frozen work, begun breaks, absences. Pinned starts are placed by whoever plans. */
export function emptyRoster(night: Night): Roster {
  const roster: Roster = {
    night,
    lists: night.people.map(() => []),
    startS: new Int32Array(night.jobs.length),
    placed: new Uint8Array(night.jobs.length),
    workS: night.people.map(({ workedS }) => workedS),
    ripple: noRipple(night.jobs.length),
  };
  const facts = night.jobs.flatMap((job, j) => (job.frozen ? [j] : [])).sort((a, b) => night.jobs[a]!.releaseS - night.jobs[b]!.releaseS || a - b);
  for (const j of facts) {
    const job = night.jobs[j]!;
    for (const person of job.able) {
      roster.lists[person]!.push(j);
      if (isWork(job)) roster.workS[person]! += job.lengthS;
    }
    roster.startS[j] = job.releaseS;
    roster.placed[j] = job.able.length;
  }
  return roster;
}

export const copyRoster = (roster: Roster): Roster => ({
  night: roster.night,
  lists: roster.lists.map((list) => [...list]),
  startS: roster.startS.slice(),
  placed: roster.placed.slice(),
  workS: [...roster.workS],
  ripple: noRipple(roster.night.jobs.length),
});

/** Sets a roster back to a copy made of it before. */
export function restoreRoster(roster: Roster, copy: Roster): void {
  for (let p = 0; p < copy.lists.length; p++) {
    roster.lists[p] = copy.lists[p]!.slice();
    roster.workS[p] = copy.workS[p]!;
  }
  roster.startS.set(copy.startS);
  roster.placed.set(copy.placed);
}

export const endS = (roster: Roster, j: number): number => roster.startS[j]! + roster.night.jobs[j]!.lengthS;

/** Seconds from one place to another; nothing to walk to a job that is done where one stands. */
export const walkS = (night: Night, from: number, to: number): number => (to < 0 ? 0 : night.walkS[from]![to]!);

/** Where a person stands after the first `count` jobs of their list. */
export function placeAfter(roster: Roster, person: number, count: number): number {
  const list = roster.lists[person]!;
  for (let i = count - 1; i >= 0; i--) {
    const { place } = roster.night.jobs[list[i]!]!;
    if (place >= 0) return place;
  }
  return roster.night.people[person]!.place;
}

/** When a person is free after the first `count` jobs of their list. */
export const freeAfter = (roster: Roster, person: number, count: number): number =>
  count === 0 ? roster.night.people[person]!.readyS : Math.max(roster.night.people[person]!.readyS, endS(roster, roster.lists[person]![count - 1]!));

/** The check of this pit that stands before this one, among those placed; -1 if none. */
export function placedBefore(roster: Roster, job: Job): number {
  const chain = roster.night.pits[job.pit]!.jobs;
  for (let k = job.link - 1; k >= 0; k--) if (roster.placed[chain[k]!]! > 0) return chain[k]!;
  return -1;
}

export function placedAfter(roster: Roster, job: Job): number {
  const chain = roster.night.pits[job.pit]!.jobs;
  for (let k = job.link + 1; k < chain.length; k++) if (roster.placed[chain[k]!]! > 0) return chain[k]!;
  return -1;
}

/** The people on whose lists a job stands. */
export const peopleOf = (roster: Roster, j: number): readonly number[] =>
  roster.lists.flatMap((list, person) => (list.includes(j) ? [person] : []));

/** Whether work counts: absences do not. */
export const isWork = (job: Job): boolean => job.kind === 'check' || job.kind === 'task';
