import type { RandomStream } from '@stokehold/domain/quantity';
import { unplacedPrice } from './cost.js';
import { clashFrom, enterChain, FORBIDDEN, lateFrom, leaveChain, listPrice, tryPlace, waitsUntil } from './insertion.js';
import { putOn } from './list-change.js';
import { meet } from './meeting.js';
import { freeAfter, indexAt, type Roster } from './roster.js';

/** A place is passed over this often, so that the search does not always come to the same list. */
const SKIP_FRAC = 0.04;
/** Places tried on one list beyond the first that fits. */
const TRIES = 7;
/** Work is not tried later than this after its target once a place was found, s. */
const FAR_S = 3600;

/** Puts the first `count` jobs back, each at its cheapest place, in one of three orders; without `random` by due alone, every place tried. */
export function recreate(roster: Roster, jobs: Int32Array, count: number, random?: RandomStream): void {
  inOrder(roster, jobs, count, random);
  for (let i = 0; i < count; i++) {
    const j = jobs[i]!;
    if (roster.placed[j] === 0) placeBack(roster, j, random);
  }
}

/** Sorts the first `count` jobs: by due, pairs and long work first, or as drawn. */
function inOrder(roster: Roster, jobs: Int32Array, count: number, random: RandomStream | undefined): void {
  const { night: { columns }, scratch: { keys } } = roster;
  const way = random?.below(3) ?? 0;
  for (let i = 0; i < count; i++) {
    const j = jobs[i]!;
    const dueS = columns.targetS[j]!;
    keys[j] = way === 0 ? dueS : way === 1 ? -1e6 * columns.needs[j]! - 10 * columns.lengthS[j]! + dueS / 1e6 : (random?.next() ?? 0);
  }
  for (let i = 1; i < count; i++) {
    const j = jobs[i]!;
    const key = keys[j]!;
    let at = i;
    for (; at > 0; at--) {
      const other = jobs[at - 1]!;
      if (keys[other]! < key || (keys[other] === key && other < j)) break;
      jobs[at] = other;
    }
    jobs[at] = j;
  }
}

/** Puts one job at its cheapest place, unless leaving it out costs less or nothing admits it. */
function placeBack(roster: Roster, j: number, random: RandomStream | undefined): void {
  const { columns } = roster.night;
  if (columns.needs[j]! > 1) {
    meet(roster, j);
    return;
  }
  enterChain(roster, j);
  let best = unplacedPrice(roster, j);
  let bestPerson = -1;
  let bestIndex = 0;
  let bestStartS = 0;
  let bestWaits = false;
  const { scratch } = roster;
  for (let person = 0; person < columns.people; person++) {
    if (columns.isAble[j * columns.people + person] === 0) continue;
    if (!cheapestOn(roster, j, person, best, random)) continue;
    best = scratch.bestPrice;
    bestPerson = person;
    bestIndex = scratch.bestIndex;
    bestStartS = scratch.bestStartS;
    bestWaits = scratch.bestWaits;
  }
  if (bestPerson < 0) leaveChain(roster, j);
  else putOn(roster, j, bestPerson, bestIndex, bestStartS, bestWaits);
}

/** Tries places on one list around the time of the job, from the first it could begin in, a few on: whether one is cheaper than `than`. */
function cheapestOn(roster: Roster, j: number, person: number, than: number, random: RandomStream | undefined): boolean {
  const { night: { columns }, scratch } = roster;
  const own = listPrice(roster, j, person);
  const fromS = columns.releaseS[j]!;
  const farS = Math.max(columns.targetS[j]!, fromS) + FAR_S;
  const clashS = clashFrom(roster, j);
  const count = roster.count[person]!;
  let found = 0;
  let best = than;
  const low = indexAt(roster, person, fromS);
  const waitS = waitsUntil(roster, j);
  const lateS = lateFrom(roster, j);
  for (let index = low > 0 ? low - 1 : 0; index <= count; index++) {
    if (random && (found >= TRIES || random.next() < SKIP_FRAC)) {
      if (found >= TRIES) break;
      continue;
    }
    const freeS = freeAfter(roster, person, index);
    if (found > 0 && (freeS > farS || freeS >= clashS)) break;
    const most = random ? best - own : FORBIDDEN;
    if (tryPlace(roster, j, person, index, 0, most)) {
      found += 1;
      if (scratch.price + own < best) best = keep(scratch, own, index, false);
    } else {
      if (best < than) found += 1;
      if (scratch.tooDear && scratch.startS > lateS) break;
    }
    if (waitS <= scratch.startS || !tryPlace(roster, j, person, index, waitS, best - own)) continue;
    if (scratch.price + own < best) best = keep(scratch, own, index, true);
  }
  return best < than;
}

/** Remembers the place just tried as the cheapest of its list; its price. */
function keep(scratch: Roster['scratch'], own: number, index: number, waits: boolean): number {
  scratch.bestPrice = scratch.price + own;
  scratch.bestIndex = index;
  scratch.bestStartS = scratch.startS;
  scratch.bestWaits = waits;
  return scratch.bestPrice;
}
