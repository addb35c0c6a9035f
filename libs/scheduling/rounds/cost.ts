import { PROMISE_SLIP_S } from './levels.js';
import { NONE, type Roster } from './roster.js';

// One number that guides the search down the levels, in eighths of a weighted second. Its weights lie so far apart that a
// trade between levels is rare; the best plan is chosen by the levels themselves, so a trade on the way costs nothing.

const LATE_PER_S = 8;
const UNSAFE_PER_S = 480;
const UNSAFE_CHECK = 160_000;
const CLASH_PER_S = 80_000;
/** Less than one fire past latest safe, and more than any work that is done late. */
const UNPLACED_TASK = 150_000;
const PAST_LATEST_PER_S = 80;
/** Beyond this a second past latest costs little more, so that work done very late still costs less than work left out. */
const VERY_LATE_S = 1500;
const VERY_LATE_PER_S = 4;
/** A check left out, beside what its absence costs the chain: keeps the search looking for a place. */
const UNPLACED_CHECK = 240;
/** A promised check left out changes the numbers of those after it: so many promises it counts for. */
const LATER_PROMISES = 10;
const WALK_PER_S = 2;

/** What it costs to start a check of a pit at `startS` after the check `before` (NONE: the pit's first window). */
export function linkPrice(roster: Roster, pit: number, before: number, startS: number): number {
  const { columns } = roster.night;
  let earliestS: number;
  let dueS: number;
  let latestS: number;
  let doneS = startS;
  if (before < 0) {
    earliestS = columns.firstEarliestS[pit]!;
    dueS = columns.firstDueS[pit]!;
    latestS = columns.firstLatestS[pit]!;
  } else {
    const beforeS = roster.startS[before]!;
    earliestS = beforeS + columns.gapEarliestS[pit]!;
    dueS = beforeS + columns.gapDueS[pit]!;
    latestS = beforeS + columns.gapLatestS[pit]!;
    doneS = beforeS + columns.lengthS[before]!;
  }
  let price = 0;
  if (startS > dueS) price = (startS - dueS) * columns.pitWeight[pit]! * LATE_PER_S;
  else if (startS < earliestS) price = (earliestS - startS) * columns.pitWeight[pit]! * LATE_PER_S;
  if (startS > latestS) price += (startS - latestS) * UNSAFE_PER_S + UNSAFE_CHECK;
  return doneS > startS ? price + (doneS - startS) * CLASH_PER_S : price;
}

/** What a pit's time after its last check costs, until its fire is no longer kept. */
export function tailPrice(roster: Roster, pit: number, last: number): number {
  const { columns } = roster.night;
  const keepS = columns.keepS[pit]!;
  const dueS = last < 0 ? columns.firstDueS[pit]! : roster.startS[last]! + columns.gapDueS[pit]!;
  if (keepS <= dueS) return 0;
  const latestS = last < 0 ? columns.firstLatestS[pit]! : roster.startS[last]! + columns.gapLatestS[pit]!;
  const price = (keepS - dueS) * columns.pitWeight[pit]! * LATE_PER_S;
  return keepS > latestS ? price + (keepS - latestS) * UNSAFE_PER_S + UNSAFE_CHECK : price;
}

/** What a start costs beyond the chain: tasks and breaks past due and latest, a promise that slipped. */
export function startPrice({ night }: Roster, j: number, startS: number): number {
  const { columns } = night;
  let price = 0;
  if (columns.isCheck[j] === 0) {
    if (columns.isTask[j] === 1 && startS > columns.targetS[j]!) price = columns.weight[j]! * (startS - columns.targetS[j]!);
    if (startS > columns.latestS[j]!) price += pastLatestPrice(startS - columns.latestS[j]!);
  }
  const units = columns.promiseUnits[j]!;
  if (units > 0) {
    const slipS = startS - columns.promisedS[j]!;
    if (slipS > PROMISE_SLIP_S || slipS < -PROMISE_SLIP_S) price += 2 * units * night.promiseS;
  }
  return price;
}

const pastLatestPrice = (pastS: number): number =>
  pastS <= VERY_LATE_S ? PAST_LATEST_PER_S * pastS : PAST_LATEST_PER_S * VERY_LATE_S + VERY_LATE_PER_S * (pastS - VERY_LATE_S);

/** What a person costs who was not promised, beyond a slipped start; shared by the people of the job. */
export function personPrice({ night }: Roster, j: number, person: number): number {
  const { columns } = night;
  const units = columns.promiseUnits[j]!;
  return units === 0 || columns.isPromised[j * columns.people + person] === 1 ? 0 : 4 * units * night.promiseS;
}

export function unplacedPrice({ night }: Roster, j: number): number {
  const { columns } = night;
  const promised = 4 * columns.promiseUnits[j]! * night.promiseS;
  if (columns.isCheck[j] === 0) return UNPLACED_TASK + promised;
  return promised > 0 ? UNPLACED_CHECK + LATER_PROMISES * promised : UNPLACED_CHECK;
}

/**
 * The rise of the price of uneven work when `moreS` is added to somebody's: negative for whoever has less than their share. Work
 * shared out evenly costs nothing, however much there is: a check is never left out for the work it makes.
 *
 *     price = sum over people of work^2 / per - (all work)^2 / sum of per            per grows with the shift
 */
export function levellingPrice({ night, workS, allWorkS }: Roster, person: number, moreS: number): number {
  if (!night.evenly) return 0;
  const { squarePer, squarePerAll } = night.columns;
  return squareRise(workS[person]!, moreS, squarePer[person]!) - squareRise(allWorkS[0]!, moreS, squarePerAll);
}

const squareRise = (nowS: number, moreS: number, per: number): number => Math.floor(((nowS + moreS) * (nowS + moreS)) / per) - Math.floor((nowS * nowS) / per);

export const walkPrice = (seconds: number): number => WALK_PER_S * seconds;

/** Counts every price anew: the sum that the search then keeps up to date by what changes. Held to rounds/cost.test.ts. */
export function recount(roster: Roster): void {
  const { night, startS, placed } = roster;
  const { columns } = night;
  let sum = 0;
  for (const [p, pit] of night.pits.entries()) {
    let last = NONE;
    roster.head[p] = NONE;
    for (const j of pit.jobs) {
      if (placed[j] === 0) continue;
      if (last < 0) roster.head[p] = j;
      else roster.after[last] = j;
      roster.before[j] = last;
      roster.after[j] = NONE;
      sum += roster.linkPrice[j] = linkPrice(roster, p, last, startS[j]!);
      last = j;
    }
    roster.tail[p] = last;
    sum += roster.tailPrice[p] = tailPrice(roster, p, last);
  }
  for (let j = 0; j < columns.jobs; j++) sum += placed[j]! > 0 ? startPrice(roster, j, startS[j]!) : unplacedPrice(roster, j);
  roster.sums[0] = sum + listPrices(roster);
}

/** Walking, even load and people who were not promised. */
function listPrices(roster: Roster): number {
  const { columns } = roster.night;
  let sum = 0;
  for (let person = 0; person < columns.people; person++) {
    const base = person * columns.jobs;
    let place = columns.standsAt[person]!;
    for (let i = 0; i < roster.count[person]!; i++) {
      const j = roster.list[base + i]!;
      sum += personPrice(roster, j, person);
      const to = columns.place[j]!;
      if (to < 0) continue;
      sum += walkPrice(columns.walkS[place * columns.places + to]!);
      place = to;
    }
    if (roster.night.evenly) sum += squareRise(0, roster.workS[person]!, columns.squarePer[person]!);
  }
  return roster.night.evenly ? sum - squareRise(0, roster.allWorkS[0]!, columns.squarePerAll) : sum;
}

/** Seconds in which two checks of a pit overlap: 0 in every plan that leaves the planner. */
export function clashS(roster: Roster): number {
  let sum = 0;
  for (const { jobs } of roster.night.pits) {
    let doneS = -Infinity;
    for (const j of jobs) {
      if (roster.placed[j] === 0) continue;
      sum += Math.max(0, doneS - roster.startS[j]!);
      doneS = roster.startS[j]! + roster.night.columns.lengthS[j]!;
    }
  }
  return sum;
}
