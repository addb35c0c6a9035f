import type { RandomStream } from '@stokehold/domain/quantity';
import { take } from './list-change.js';
import type { Roster } from './roster.js';

/** How many jobs one ruin takes off, and how often they lie around one moment rather than along one person. */
const LEAST = 3;
const MOST = 11;
const AROUND_FRAC = 0.7;

/** Whether the search may move a job: facts and pinned starts stay. */
const movable = (roster: Roster, j: number) => roster.night.jobs[j]!.fixedS === undefined && roster.placed[j]! > 0;

/**
 * Takes 3 to 11 jobs off the lists, around one moment or along one person.
 *
 * @returns what was taken; empty if nothing may move
 */
export function ruin(roster: Roster, random: RandomStream): readonly number[] {
  const count = LEAST + random.below(MOST - LEAST + 1);
  const chosen = random.next() < AROUND_FRAC ? aroundMoment(roster, random, count) : alongPerson(roster, random, count);
  return chosen.flatMap((j) => (roster.placed[j]! > 0 ? take(roster, j) : []));
}

function aroundMoment(roster: Roster, random: RandomStream, count: number): readonly number[] {
  const { night, startS } = roster;
  const seed = random.below(night.jobs.length);
  const momentS = movable(roster, seed) ? startS[seed]! : night.jobs[seed]!.targetS;
  const near: { j: number; awayS: number }[] = [];
  for (let j = 0; j < night.jobs.length; j++) {
    if (!movable(roster, j)) continue;
    const awayS = Math.abs(startS[j]! - momentS);
    if (near.length === count && awayS >= near[count - 1]!.awayS) continue;
    let at = near.length;
    while (at > 0 && near[at - 1]!.awayS > awayS) at--;
    near.splice(at, 0, { j, awayS });
    if (near.length > count) near.pop();
  }
  return near.map(({ j }) => j);
}

function alongPerson(roster: Roster, random: RandomStream, count: number): readonly number[] {
  const list = roster.lists[random.below(roster.lists.length)]?.filter((j) => movable(roster, j)) ?? [];
  if (list.length === 0) return [];
  const first = random.below(list.length);
  return list.slice(first, first + count);
}
