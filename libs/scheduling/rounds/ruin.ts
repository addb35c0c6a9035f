import type { RandomStream } from '@stokehold/domain/quantity';
import { takeAll } from './list-change.js';
import { startPrice } from './cost.js';
import { indexAt, NONE, type Roster } from './roster.js';

/** How many jobs one ruin takes off, how often they lie around one moment rather than along one person, and how often where it hurts. */
const LEAST = 3;
const MOST = 7;
const AROUND_FRAC = 0.7;
const HURTS_FRAC = 0.8;

/** Takes 3 to 7 jobs off the lists, around one moment or along one person; what was taken is in the scratch. */
export function ruin(roster: Roster, random: RandomStream): void {
  const count = LEAST + random.below(MOST - LEAST + 1);
  const hurt = random.next() < HURTS_FRAC ? hurting(roster, random) : NONE;
  const seed = hurt >= 0 ? hurt : random.below(roster.night.columns.jobs);
  const chosen = random.next() < AROUND_FRAC ? aroundMoment(roster, seed, count) : alongPerson(roster, seed, random, count);
  takeAll(roster, roster.scratch.chosen, chosen);
}

/** Some job that is late, past its latest or left out; NONE if all is well. */
function hurting(roster: Roster, random: RandomStream): number {
  const { night: { columns }, placed, startS, linkPrice } = roster;
  let found = 0;
  let chosen = NONE;
  for (let j = 0; j < columns.jobs; j++) {
    const hurts = placed[j] === 0 ? columns.isCheck[j] === 0 : linkPrice[j]! > 0 || (columns.isCheck[j] === 0 && startPrice(roster, j, startS[j]!) > 0);
    if (!hurts) continue;
    found += 1;
    if (found === 1 || random.below(found) === 0) chosen = j;
  }
  return chosen;
}

/** The movable jobs that begin nearest to the moment of the seed, from all lists outwards. */
function aroundMoment(roster: Roster, seed: number, count: number): number {
  const { night: { columns }, startS, list, scratch: { chosen, firstOff, lastOff } } = roster;
  const momentS = roster.placed[seed]! > 0 ? startS[seed]! : columns.targetS[seed]!;
  for (let person = 0; person < columns.people; person++) {
    const at = indexAt(roster, person, momentS);
    firstOff[person] = at - 1;
    lastOff[person] = at;
  }
  const trial = ++roster.scratch.trial;
  let found = 0;
  while (found < count) {
    let best = 0x7fffffff;
    let who = NONE;
    let side = 0;
    for (let person = 0; person < columns.people; person++) {
      const base = person * columns.jobs;
      const left = firstOff[person]!;
      const right = lastOff[person]!;
      if (left >= 0) {
        const awayS = Math.abs(momentS - startS[list[base + left]!]!);
        if (awayS < best) [best, who, side] = [awayS, person, -1];
      }
      if (right < roster.count[person]!) {
        const awayS = Math.abs(startS[list[base + right]!]! - momentS);
        if (awayS < best) [best, who, side] = [awayS, person, 1];
      }
    }
    if (who === NONE) break;
    const j = list[who * columns.jobs + (side < 0 ? firstOff[who]!-- : lastOff[who]!++)]!;
    if (columns.isMovable[j] === 0 || roster.scratch.mark[j] === trial) continue;
    roster.scratch.mark[j] = trial;
    chosen[found] = j;
    found += 1;
  }
  return found;
}

/** The movable jobs of one person from the seed on. */
function alongPerson(roster: Roster, seed: number, random: RandomStream, count: number): number {
  const { night: { columns }, list, scratch: { chosen } } = roster;
  if (columns.people === 0) return 0;
  const momentS = roster.placed[seed]! > 0 ? roster.startS[seed]! : columns.targetS[seed]!;
  const person = random.below(columns.people);
  const at = Math.max(0, indexAt(roster, person, momentS) - (count >> 1));
  let found = 0;
  for (let i = at; i < roster.count[person]! && found < count; i++) {
    const j = list[person * columns.jobs + i]!;
    if (columns.isMovable[j] === 0) continue;
    chosen[found] = j;
    found += 1;
  }
  return found;
}
