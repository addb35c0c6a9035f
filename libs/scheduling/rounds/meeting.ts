import { unplacedPrice } from './cost.js';
import { listPrice, tryPlace } from './insertion.js';
import { putOn } from './list-change.js';
import { indexAt, NONE, type Roster } from './roster.js';

/** So many starts are tried for a meeting of two, earliest first. */
const STARTS = 14;
/** Places tried on each list to find when somebody could come. */
const COMINGS = 5;

interface Place {
  readonly person: number;
  readonly index: number;
  readonly price: number;
}

/** Puts a task for two where the two who are cheapest together can meet; leaves it out if nothing admits it. */
export function meet(roster: Roster, j: number): void {
  const { columns } = roster.night;
  const needs = columns.needs[j]!;
  let best: readonly Place[] = [];
  let bestPrice = unplacedPrice(roster, j);
  let bestStartS = 0;
  for (const startS of startsFor(roster, j)) {
    const places = placesAt(roster, j, startS).sort((a, b) => a.price - b.price || a.person - b.person).slice(0, needs);
    const price = places.reduce((sum, place) => sum + place.price, 0);
    if (places.length < needs || price >= bestPrice) continue;
    best = places;
    bestPrice = price;
    bestStartS = startS;
  }
  for (const { person, index } of best) putOn(roster, j, person, index, bestStartS);
}

/** When somebody able could begin it, each such moment once. */
function startsFor(roster: Roster, j: number): readonly number[] {
  const { columns } = roster.night;
  const starts: number[] = [];
  for (let person = 0; person < columns.people; person++) {
    if (columns.isAble[j * columns.people + person] === 0) continue;
    const low = Math.max(0, indexAt(roster, person, columns.releaseS[j]!) - 1);
    const high = Math.min(roster.count[person]!, low + COMINGS);
    for (let index = low; index <= high; index++) {
      if (tryPlace(roster, j, person, index) && !starts.includes(roster.scratch.startS)) starts.push(roster.scratch.startS);
    }
  }
  return starts.sort((a, b) => a - b).slice(0, STARTS);
}

/** For each person able the cheapest place at which they would begin at just this moment. */
function placesAt(roster: Roster, j: number, startS: number): Place[] {
  const { columns } = roster.night;
  const found: Place[] = [];
  for (let person = 0; person < columns.people; person++) {
    if (columns.isAble[j * columns.people + person] === 0) continue;
    const own = listPrice(roster, j, person);
    const at = indexAt(roster, person, startS);
    let index = NONE;
    let price = 0;
    for (let i = Math.max(0, at - 1); i <= Math.min(roster.count[person]!, at + 1); i++) {
      if (!tryPlace(roster, j, person, i, startS) || roster.scratch.startS !== startS) continue;
      if (index !== NONE && roster.scratch.price >= price) continue;
      index = i;
      price = roster.scratch.price;
    }
    if (index !== NONE) found.push({ person, index, price: price + own });
  }
  return found;
}
