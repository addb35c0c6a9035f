import type { Job, Night } from './night.js';

/** Nobody, nowhere, no job. */
export const NONE = -1;

/**
 * A plan while it is being made: for each person the work in its order, and for each job its start. Mutable and private to
 * the planner; a plan leaves it through planFrom. All that changes lies in one block of whole numbers, so that a copy is one
 * move of memory.
 */
export interface Roster {
  readonly night: Night;
  readonly cells: Int32Array;
  /** Jobs of each person in order: person x jobs of the night + place in the order. */
  readonly list: Int32Array;
  readonly count: Int32Array;
  /** Work on each list, with what was done before, s. */
  readonly workS: Int32Array;
  /** The same of all lists together, in its one cell. */
  readonly allWorkS: Int32Array;
  /** Start of each job, s from `from`; meaningless while it is unplaced. */
  readonly startS: Int32Array;
  /** A job waits for this moment although it could begin: its release, or later so that the next check of its pit is not late. */
  readonly notBeforeS: Int32Array;
  /** On how many lists a job stands: 0, or as many as it needs people. */
  readonly placed: Int32Array;
  /** Of a placed check, the placed checks of its pit beside it; NONE at the ends. */
  readonly before: Int32Array;
  readonly after: Int32Array;
  /** First and last placed check of each pit. */
  readonly head: Int32Array;
  readonly tail: Int32Array;
  /** What the way from the check before costs, of each placed check; and of each pit the time after its last. */
  readonly linkPrice: Float64Array;
  readonly tailPrice: Float64Array;
  /** The guide of the search: what the whole roster costs. */
  readonly sums: Float64Array;
  readonly scratch: Scratch;
}

/** Where a trial leaves its result; one a roster, to spare the heap. */
export interface Scratch {
  /** Jobs that a change would move, and their new starts. */
  readonly moved: Int32Array;
  readonly movedS: Int32Array;
  movedCount: number;
  /** Marks of jobs, by the number of the trial that set them. */
  readonly mark: Int32Array;
  trial: number;
  /** What a link costs in the trial that marked its check. */
  readonly counted: Float64Array;
  /** What the last trial of a place found, and the cheapest of one list. */
  startS: number;
  price: number;
  /** Whether the job alone cost too much there, whatever follows. */
  tooDear: boolean;
  bestPrice: number;
  bestIndex: number;
  bestStartS: number;
  bestWaits: boolean;
  /** Jobs taken off and not yet put back. */
  readonly off: Int32Array;
  offCount: number;
  /** First and last place of each list from which something was taken; NONE where nothing was. */
  readonly firstOff: Int32Array;
  readonly lastOff: Int32Array;
  /** Jobs chosen to be taken off, and to be put back. */
  readonly chosen: Int32Array;
  readonly keys: Float64Array;
}

/** A roster in which nothing stands yet. */
export function bareRoster(night: Night): Roster {
  const { jobs, people } = night.columns;
  const pits = night.pits.length;
  const cells = new Int32Array(people * jobs + 2 * people + 1 + 5 * jobs + 2 * pits);
  const prices = new Float64Array(jobs + pits + 1);
  let used = 0;
  const part = (length: number) => cells.subarray(used, (used += length));
  const roster: Roster = {
    night, cells, list: part(people * jobs), count: part(people), workS: part(people), allWorkS: part(1), startS: part(jobs), notBeforeS: part(jobs), placed: part(jobs),
    before: part(jobs), after: part(jobs), head: part(pits), tail: part(pits),
    linkPrice: prices.subarray(0, jobs), tailPrice: prices.subarray(jobs, jobs + pits), sums: prices.subarray(jobs + pits),
    scratch: { moved: new Int32Array(jobs), movedS: new Int32Array(jobs), movedCount: 0, mark: new Int32Array(jobs), counted: new Float64Array(jobs), trial: 0, startS: 0, price: 0, tooDear: false, bestPrice: 0, bestIndex: 0, bestStartS: 0, bestWaits: false, off: new Int32Array(jobs), offCount: 0, ...scratchLists(jobs, people) },
  };
  for (const [person, { workedS }] of night.people.entries()) addWork(roster, person, workedS);
  roster.notBeforeS.set(night.columns.releaseS);
  for (const part of [roster.before, roster.after, roster.head, roster.tail]) part.fill(NONE);
  return roster;
}

const scratchLists = (jobs: number, people: number) => ({
  firstOff: new Int32Array(people), lastOff: new Int32Array(people), chosen: new Int32Array(jobs), keys: new Float64Array(jobs),
});

/** The facts alone: frozen work, begun breaks, absences. Pinned starts are placed by whoever plans. */
export function emptyRoster(night: Night): Roster {
  const roster = bareRoster(night);
  const facts = night.jobs.flatMap((job, j) => (job.frozen ? [j] : [])).sort((a, b) => night.jobs[a]!.releaseS - night.jobs[b]!.releaseS || a - b);
  for (const j of facts) {
    roster.startS[j] = night.jobs[j]!.releaseS;
    for (const person of night.jobs[j]!.able) append(roster, j, person);
  }
  return roster;
}

/** Adds to the work on a list; less than nothing takes away. */
export function addWork({ workS, allWorkS }: Roster, person: number, moreS: number): void {
  workS[person]! += moreS;
  allWorkS[0]! += moreS;
}

/** Puts a job with its start at the end of a list; its prices are counted later. */
export function append(roster: Roster, j: number, person: number): void {
  const { night: { columns }, list, count, placed } = roster;
  list[person * columns.jobs + count[person]!] = j;
  count[person]! += 1;
  if (columns.isWork[j] === 1) addWork(roster, person, columns.lengthS[j]!);
  placed[j]! += 1;
}

export function copyRoster(roster: Roster): Roster {
  const copy = bareRoster(roster.night);
  restoreRoster(copy, roster);
  return copy;
}

/** Sets a roster to the state of another of the same night. */
export function restoreRoster(roster: Roster, copy: Roster): void {
  roster.cells.set(copy.cells);
  roster.linkPrice.set(copy.linkPrice);
  roster.tailPrice.set(copy.tailPrice);
  roster.sums[0] = copy.sums[0]!;
}

export const endS = (roster: Roster, j: number): number => roster.startS[j]! + roster.night.columns.lengthS[j]!;

/** Seconds from one place to another; nothing to walk to a job that is done where one stands. */
export const walkS = (night: Night, from: number, to: number): number => (to < 0 ? 0 : night.walkS[from]![to]!);

/** The nth job of a person. */
export const jobAt = (roster: Roster, person: number, index: number): number => roster.list[person * roster.night.columns.jobs + index]!;

/** Where a person stands after the first `index` jobs of their list. */
export function placeAfter(roster: Roster, person: number, index: number): number {
  const { columns } = roster.night;
  const base = person * columns.jobs;
  for (let i = index - 1; i >= 0; i--) {
    const place = columns.place[roster.list[base + i]!]!;
    if (place >= 0) return place;
  }
  return columns.standsAt[person]!;
}

/** When a person is free after the first `index` jobs of their list. */
export function freeAfter(roster: Roster, person: number, index: number): number {
  const { columns } = roster.night;
  const readyS = columns.readyS[person]!;
  if (index === 0) return readyS;
  const last = roster.list[person * columns.jobs + index - 1]!;
  const doneS = roster.startS[last]! + columns.lengthS[last]!;
  return doneS > readyS ? doneS : readyS;
}

/** Place in the order at which a person has ended everything before a moment. */
export function indexAt(roster: Roster, person: number, atS: number): number {
  const { night: { columns }, list, startS } = roster;
  const base = person * columns.jobs;
  let low = 0;
  let high = roster.count[person]!;
  while (low < high) {
    const middle = (low + high) >> 1;
    const j = list[base + middle]!;
    if (startS[j]! + columns.lengthS[j]! <= atS) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Place of a job on a person's list; NONE where it does not stand there. */
export function indexOn(roster: Roster, person: number, j: number): number {
  const { list } = roster;
  const base = person * roster.night.columns.jobs;
  const end = base + roster.count[person]!;
  for (let i = base; i < end; i++) if (list[i] === j) return i - base;
  return NONE;
}

/** The jobs of a person in order, as an array of its own. */
export const listOf = (roster: Roster, person: number): readonly number[] => {
  const base = person * roster.night.columns.jobs;
  return Array.from(roster.list.subarray(base, base + roster.count[person]!));
};

/** The people on whose lists a job stands. */
export const peopleOf = (roster: Roster, j: number): readonly number[] => roster.night.people.flatMap((_, person) => (indexOn(roster, person, j) >= 0 ? [person] : []));

/** Whether work counts: absences do not. */
export const isWork = (job: Job): boolean => job.kind === 'check' || job.kind === 'task';

/** The nearest placed check of the same pit before (step -1) or after (step 1) a check that may itself be unplaced. */
export function placedBeside(roster: Roster, j: number, step: 1 | -1): number {
  const { columns, pits } = roster.night;
  const chain = pits[columns.pit[j]!]!.jobs;
  for (let k = columns.link[j]! + step; k >= 0 && k < chain.length; k += step) if (roster.placed[chain[k]!]! > 0) return chain[k]!;
  return NONE;
}
