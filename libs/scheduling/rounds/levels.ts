import { linkCost, tailCost } from './chain-cost.js';
import type { Levels } from './plan.js';
import { isWork, jobAt, NONE, type Roster, walkS } from './roster.js';

/** A changed start counts when it moved by more than this, s. Source: common practice, no source. */
export const PROMISE_SLIP_S = 300;

type Tally = { -readonly [K in keyof Levels]: Levels[K] };

/** The levels of a roster, from nothing. Held to the checker, which counts them again in its own way. */
export function levelsOf(roster: Roster): Levels {
  const { night, placed, startS } = roster;
  const tally: Tally = {
    unsafeS: 0, unsafeChecks: 0, unplaced: 0, pastLatestS: 0, lateWeightedS: 0, tasksLateS: 0, uneven: 0, unevenUnpleasant: 0, promises: 0, walkS: 0,
  };
  chains(roster, tally);
  for (const [j, job] of night.jobs.entries()) {
    if (job.kind !== 'task' && job.kind !== 'break') continue;
    if (placed[j] === 0) {
      tally.unplaced += 1;
      continue;
    }
    tally.pastLatestS += Math.max(0, startS[j]! - job.latestS);
    if (job.kind === 'task') tally.tasksLateS += job.weight * Math.max(0, startS[j]! - job.targetS);
  }
  tally.promises = brokenPromises(roster);
  const work = night.people.map((person) => ({ all: person.workedS, unpleasant: person.unpleasantS }));
  for (let person = 0; person < night.people.length; person++) {
    let place = night.people[person]!.place;
    for (let i = 0; i < roster.count[person]!; i++) {
      const job = night.jobs[jobAt(roster, person, i)]!;
      if (isWork(job)) work[person]!.all += job.lengthS;
      if (job.unpleasant) work[person]!.unpleasant += job.lengthS;
      tally.walkS += walkS(night, place, job.place);
      if (job.place >= 0) place = job.place;
    }
  }
  tally.uneven = spread(work.map(({ all }, i) => share(all, night.people[i]!.shiftS)));
  tally.unevenUnpleasant = spread(work.map(({ unpleasant }, i) => share(unpleasant, night.people[i]!.shiftS)));
  return tally;
}

const share = (workS: number, shiftS: number) => Math.floor((workS * 1_000_000) / shiftS);
const spread = (shares: readonly number[]) => (shares.length === 0 ? 0 : Math.max(...shares) - Math.min(...shares));

function chains(roster: Roster, tally: Tally): void {
  for (const pit of roster.night.pits) {
    let before = NONE;
    for (const j of pit.jobs) {
      if (roster.placed[j] === 0) continue;
      const link = before < 0 ? linkCost(pit, undefined, roster.startS[j]!) : linkCost(pit, roster.startS[before]!, roster.startS[j]!);
      tally.unsafeS += link.unsafeS;
      tally.unsafeChecks += link.unsafeS > 0 ? 1 : 0;
      tally.lateWeightedS += link.lateWeightedS;
      before = j;
    }
    const tail = tailCost(pit, before < 0 ? undefined : roster.startS[before]!);
    tally.unsafeS += tail.unsafeS;
    tally.unsafeChecks += tail.unsafeS > 0 ? 1 : 0;
    tally.lateWeightedS += tail.lateWeightedS;
  }
}

/** Another person costs the units of the promise, a start moved by more than five minutes half of them. */
function brokenPromises(roster: Roster): number {
  if (roster.night.problem.promises.length === 0) return 0;
  let units = 0;
  const kept = new Uint8Array(roster.night.jobs.length);
  for (let person = 0; person < roster.night.people.length; person++) {
    for (let i = 0; i < roster.count[person]!; i++) {
      const j = jobAt(roster, person, i);
      if (roster.night.columns.isPromised[j * roster.night.columns.people + person] === 1) kept[j]! += 1;
    }
  }
  for (const [j, { promise, kind }] of roster.night.jobs.entries()) {
    if (!promise) continue;
    if (roster.placed[j] === 0) units += kind === 'check' ? 0 : promise.units;
    else if (kept[j] !== promise.people.length || kept[j] !== roster.placed[j]) units += promise.units;
    else if (Math.abs(roster.startS[j]! - promise.startS) > PROMISE_SLIP_S) units += promise.units / 2;
  }
  return units;
}

/** The levels as the tuple that is compared: while promises are kept, they share a level with lateness at `promiseS` each. */
export function ranked(levels: Levels, { promiseS, evenly }: Pick<Roster['night'], 'promiseS' | 'evenly'>): readonly number[] {
  return [
    levels.unsafeS, levels.unsafeChecks, levels.unplaced, levels.pastLatestS, 2 * levels.lateWeightedS + promiseS * levels.promises,
    levels.tasksLateS, ...(evenly ? [levels.uneven, levels.unevenUnpleasant] : []), levels.walkS,
  ];
}

/** Negative when the first tuple is better. */
export function compareRanks(one: readonly number[], other: readonly number[]): number {
  for (let i = 0; i < one.length; i++) if (one[i] !== other[i]) return one[i]! - other[i]!;
  return 0;
}
