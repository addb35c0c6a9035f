import { levellingPrice, linkPrice, personPrice, startPrice, tailPrice, walkPrice } from './cost.js';
import { NEVER_S } from './columns.js';
import { freeAfter, NONE, placeAfter, placedBeside, type Roster } from './roster.js';

// The innermost steps of the search: what one job at one place of one list would change. Nothing is allocated here.

/**
 * Follows a list from a place in it: when each job would start if somebody were free at `freeS` in `place`. False if a fixed
 * start, a break's window or the shift's end does not allow it. What moves is left in the scratch.
 *
 * @param through  up to here the list itself has changed, so that a start which stays where it was ends nothing
 */
export function followList(roster: Roster, person: number, from: number, freeS: number, place: number, through = from): boolean {
  const { night: { columns }, startS, notBeforeS, scratch, list } = roster;
  const { moved, movedS } = scratch;
  const base = person * columns.jobs;
  const end = roster.count[person]!;
  const homeS = columns.homeS[person]!;
  let count = 0;
  let free = freeS;
  let at = place;
  for (let i = from; i < end; i++) {
    const q = list[base + i]!;
    const to = columns.place[q]!;
    const arriveS = to < 0 ? free : free + columns.walkS[at * columns.places + to]!;
    const begunS = startS[q]!;
    if (columns.isAppointment[q] === 1) {
      if (arriveS > begunS) return false;
      if (to >= 0 && i >= through) break;
      free = begunS + columns.lengthS[q]!;
      if (to >= 0) at = to;
      continue;
    }
    const begin = arriveS > notBeforeS[q]! ? arriveS : notBeforeS[q]!;
    if (begin !== begunS) {
      if (begin > columns.hardLatestS[q]! || begin + columns.lengthS[q]! > homeS) return false;
      moved[count] = q;
      movedS[count] = begin;
      count += 1;
    } else if (to >= 0 && i >= through) break;
    free = begin + columns.lengthS[q]!;
    if (to >= 0) at = to;
  }
  scratch.movedCount = count;
  return true;
}

/** What a ripple cost when a hard rule forbids it, or when it costs more than it may. */
export const FORBIDDEN = Infinity;

/**
 * What the guide would rise by if somebody, from a place in their list on, were free at `freeS` in `place`: followList and
 * its price in one walk, ended as soon as it costs more than `most`. All starts are left as they were.
 */
function rippleFrom(roster: Roster, person: number, from: number, freeS: number, place: number, most: number): number {
  const { night: { columns }, startS, notBeforeS, scratch, list } = roster;
  const { moved, movedS } = scratch;
  const base = person * columns.jobs;
  const end = base + roster.count[person]!;
  const homeS = columns.homeS[person]!;
  let count = 0;
  let free = freeS;
  let at = place;
  let price = 0;
  for (let i = base + from; i < end; i++) {
    const q = list[i]!;
    const to = columns.place[q]!;
    const arriveS = to < 0 ? free : free + columns.walkS[at * columns.places + to]!;
    const begunS = startS[q]!;
    if (columns.isAppointment[q] === 1) {
      if (arriveS > begunS) price = FORBIDDEN;
      if (to >= 0 || price === FORBIDDEN) break;
      free = begunS + columns.lengthS[q]!;
      continue;
    }
    const begin = arriveS > notBeforeS[q]! ? arriveS : notBeforeS[q]!;
    if (begin === begunS && to >= 0) break;
    const doneS = begin + columns.lengthS[q]!;
    if (begin > columns.hardLatestS[q]! || doneS > homeS) {
      price = FORBIDDEN;
      break;
    }
    if (begin !== begunS) {
      moved[count] = q;
      movedS[count] = begunS;
      count += 1;
      startS[q] = begin;
      price += priceOfMove(roster, q, begunS);
      if (price > most) break;
    }
    free = doneS;
    if (to >= 0) at = to;
  }
  for (let i = 0; i < count; i++) startS[moved[i]!] = movedS[i]!;
  return price;
}

/** What one job that moved from `begunS` does to its own price, its link and the next of its chain, beside what this trial counted already. */
function priceOfMove(roster: Roster, q: number, begunS: number): number {
  const { night: { columns }, startS, scratch: { mark, counted, trial } } = roster;
  const begin = startS[q]!;
  if (columns.isCheck[q] === 0) return startPrice(roster, q, begin) - startPrice(roster, q, begunS);
  const pit = columns.pit[q]!;
  const own = linkPrice(roster, pit, roster.before[q]!, begin);
  let price = own - (mark[q] === trial ? counted[q]! : roster.linkPrice[q]!);
  mark[q] = trial;
  counted[q] = own;
  const next = roster.after[q]!;
  if (next < 0) price += tailPrice(roster, pit, q) - roster.tailPrice[pit]!;
  else {
    const onward = linkPrice(roster, pit, q, startS[next]!);
    price += onward - (mark[next] === trial ? counted[next]! : roster.linkPrice[next]!);
    mark[next] = trial;
    counted[next] = onward;
  }
  return columns.promiseUnits[q] === 0 ? price : price + startPrice(roster, q, begin) - startPrice(roster, q, begunS);
}

/** What a check of a chain costs at its start, with the next of its chain, above the chain without it; begins a trial. */
function priceInChain(roster: Roster, j: number): number {
  const { night: { columns }, startS, scratch } = roster;
  const trial = ++scratch.trial;
  if (columns.isCheck[j] === 0) return 0;
  const pit = columns.pit[j]!;
  const own = linkPrice(roster, pit, roster.before[j]!, startS[j]!);
  scratch.mark[j] = trial;
  scratch.counted[j] = own;
  const next = roster.after[j]!;
  if (next < 0) {
    // The tail is not followed by anything of the chain: the move of a check before it cannot reach it twice.
    return own + tailPrice(roster, pit, j) - roster.tailPrice[pit]!;
  }
  const onward = linkPrice(roster, pit, j, startS[next]!);
  scratch.mark[next] = trial;
  scratch.counted[next] = onward;
  return own + onward - roster.linkPrice[next]!;
}

/** Puts a check into the chain of its pit, so that places for it can be tried. */
export function enterChain(roster: Roster, j: number): void {
  if (roster.night.columns.isCheck[j] === 0) return;
  const pit = roster.night.columns.pit[j]!;
  const left = placedBeside(roster, j, -1);
  const right = placedBeside(roster, j, 1);
  roster.before[j] = left;
  roster.after[j] = right;
  if (left >= 0) roster.after[left] = j;
  else roster.head[pit] = j;
  if (right >= 0) roster.before[right] = j;
  else roster.tail[pit] = j;
}

/** Takes a check out of the chain of its pit. */
export function leaveChain(roster: Roster, j: number): void {
  if (roster.night.columns.isCheck[j] === 0) return;
  const pit = roster.night.columns.pit[j]!;
  const left = roster.before[j]!;
  const right = roster.after[j]!;
  if (left >= 0) roster.after[left] = right;
  else roster.head[pit] = right;
  if (right >= 0) roster.before[right] = left;
  else roster.tail[pit] = left;
  roster.before[j] = NONE;
  roster.after[j] = NONE;
}

/**
 * Tries a job that stands in its chain at one place of one list: whether every hard rule allows it. Its start and what the
 * guide would rise by are left in the scratch.
 *
 * @param atLeastS  delays the start for a meeting of two
 * @param most      a place that costs more is passed over; what a job costs by itself may decide so
 */
export function tryPlace(roster: Roster, j: number, person: number, index: number, atLeastS = 0, most = FORBIDDEN): boolean {
  const { night: { columns }, startS, scratch } = roster;
  const from = placeAfter(roster, person, index);
  const to = columns.place[j]!;
  const walk = to < 0 ? 0 : columns.walkS[from * columns.places + to]!;
  let begin = freeAfter(roster, person, index) + walk;
  if (begin < columns.releaseS[j]!) begin = columns.releaseS[j]!;
  if (begin < atLeastS) begin = atLeastS;
  const doneS = begin + columns.lengthS[j]!;
  scratch.startS = begin;
  scratch.tooDear = false;
  if (begin > columns.hardLatestS[j]! || doneS > columns.homeS[person]!) return false;
  const place = to < 0 ? from : to;
  startS[j] = begin;
  const next = nextPlace(roster, person, index);
  const detourS = next < 0 ? walk : walk + columns.walkS[place * columns.places + next]! - columns.walkS[from * columns.places + next]!;
  const own = walkPrice(detourS) + startPrice(roster, j, begin) + priceInChain(roster, j);
  scratch.tooDear = own > most;
  if (scratch.tooDear) return false;
  scratch.price = own + rippleFrom(roster, person, index, doneS, place, most - own);
  return scratch.price <= most && scratch.price !== FORBIDDEN;
}

/** What putting a job on somebody's list costs wherever it stands there. */
export const listPrice = (roster: Roster, j: number, person: number): number =>
  personPrice(roster, j, person) + (roster.night.columns.isWork[j] === 1 ? levellingPrice(roster, person, roster.night.columns.lengthS[j]!) : 0);

function nextPlace(roster: Roster, person: number, index: number): number {
  const { columns } = roster.night;
  const base = person * columns.jobs;
  const end = roster.count[person]!;
  for (let i = index; i < end; i++) {
    const place = columns.place[roster.list[base + i]!]!;
    if (place >= 0) return place;
  }
  return NONE;
}

/** No later start of a check than this is worth a trial: there the next check of its pit begins. */
export const clashFrom = (roster: Roster, j: number): number => (roster.after[j]! < 0 ? NEVER_S : roster.startS[roster.after[j]!]!);

/** From when on a job of a chain is late: there a place that is too dear by itself is followed by none that is cheaper. */
export function lateFrom(roster: Roster, j: number): number {
  const { night: { columns }, startS, before } = roster;
  if (columns.isCheck[j] === 0) return columns.targetS[j]!;
  const pit = columns.pit[j]!;
  return before[j]! < 0 ? columns.firstDueS[pit]! : startS[before[j]!]! + columns.gapDueS[pit]!;
}

/** When a check of a chain should begin at the earliest so that the next of its pit is not late, if it is not late itself for that. */
export function waitsUntil(roster: Roster, j: number): number {
  const { night: { columns }, startS, after } = roster;
  if (columns.isCheck[j] === 0) return 0;
  const pit = columns.pit[j]!;
  const next = after[j]!;
  const wishedS = (next < 0 ? columns.keepS[pit]! : startS[next]!) - columns.gapDueS[pit]!;
  return Math.min(wishedS, lateFrom(roster, j));
}
