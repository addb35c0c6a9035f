import { levellingPrice, linkPrice, personPrice, startPrice, tailPrice, unplacedPrice, walkPrice } from './cost.js';
import { followList, leaveChain } from './insertion.js';
import { addWork, freeAfter, indexOn, listOf, NONE, placeAfter, type Roster } from './roster.js';

// What is tried in insertion.ts is done here: every change keeps the chains and the sum of prices up to date.

/** Writes the starts that followList left behind, and counts anew what they touch. */
function commitMoved(roster: Roster): void {
  const { night: { columns }, startS, scratch, sums } = roster;
  for (let i = 0; i < scratch.movedCount; i++) {
    const q = scratch.moved[i]!;
    sums[0]! += startPrice(roster, q, scratch.movedS[i]!) - startPrice(roster, q, startS[q]!);
    startS[q] = scratch.movedS[i]!;
  }
  for (let i = 0; i < scratch.movedCount; i++) {
    const q = scratch.moved[i]!;
    if (columns.isCheck[q] === 1) refreshLinks(roster, q);
  }
}

/** Counts anew what lies before a placed check and what lies after it. */
export function refreshLinks(roster: Roster, j: number): void {
  refreshLink(roster, j);
  const next = roster.after[j]!;
  if (next >= 0) refreshLink(roster, next);
  else refreshTail(roster, roster.night.columns.pit[j]!);
}

function refreshLink(roster: Roster, j: number): void {
  const price = linkPrice(roster, roster.night.columns.pit[j]!, roster.before[j]!, roster.startS[j]!);
  roster.sums[0]! += price - roster.linkPrice[j]!;
  roster.linkPrice[j] = price;
}

function refreshTail(roster: Roster, pit: number): void {
  const price = tailPrice(roster, pit, roster.tail[pit]!);
  roster.sums[0]! += price - roster.tailPrice[pit]!;
  roster.tailPrice[pit] = price;
}

/**
 * Puts a job, which stands in its chain already, on one list at a place and start that were tried; what follows moves.
 *
 * @param waits  whether it keeps this start as its earliest from now on
 */
export function putOn(roster: Roster, j: number, person: number, index: number, startS: number, waits = false): void {
  const { night: { columns }, list, count, sums } = roster;
  const base = person * columns.jobs;
  sums[0]! += detourPrice(roster, person, index, columns.place[j]!) + personPrice(roster, j, person);
  list.copyWithin(base + index + 1, base + index, base + count[person]!);
  list[base + index] = j;
  count[person]! += 1;
  if (columns.isWork[j] === 1) {
    sums[0]! += levellingPrice(roster, person, columns.lengthS[j]!);
    addWork(roster, person, columns.lengthS[j]!);
  }
  roster.startS[j] = startS;
  roster.notBeforeS[j] = waits ? startS : columns.releaseS[j]!;
  roster.placed[j]! += 1;
  if (roster.placed[j] === 1) {
    sums[0]! += startPrice(roster, j, startS) - unplacedPrice(roster, j);
    roster.linkPrice[j] = 0;
    if (columns.isCheck[j] === 1) refreshLinks(roster, j);
  }
  follow(roster, person, index + 1, index + 1);
}

/** Walking that a job at a place between two others adds. */
function detourPrice(roster: Roster, person: number, index: number, place: number): number {
  if (place < 0) return 0;
  const { columns } = roster.night;
  const from = placeAfter(roster, person, index);
  const walk = (a: number, b: number) => columns.walkS[a * columns.places + b]!;
  for (let i = index; i < roster.count[person]!; i++) {
    const next = columns.place[roster.list[person * columns.jobs + i]!]!;
    if (next >= 0) return walkPrice(walk(from, place) + walk(place, next) - walk(from, next));
  }
  return walkPrice(walk(from, place));
}

/** Times a list anew from a place in it; false, and nothing changed, if a hard rule forbids it. */
export function follow(roster: Roster, person: number, index: number, through: number): boolean {
  const possible = followList(roster, person, index, freeAfter(roster, person, index), placeAfter(roster, person, index), through);
  if (possible) commitMoved(roster);
  return possible;
}

/** Takes one job off one list without timing what follows; its place in the order there. */
function liftOff(roster: Roster, j: number, person: number, index: number): void {
  const { night: { columns }, list, count, sums } = roster;
  const base = person * columns.jobs;
  list.copyWithin(base + index, base + index + 1, base + count[person]!);
  count[person]! -= 1;
  sums[0]! -= detourPrice(roster, person, index, columns.place[j]!) + personPrice(roster, j, person);
  if (columns.isWork[j] === 0) return;
  addWork(roster, person, -columns.lengthS[j]!);
  sums[0]! -= levellingPrice(roster, person, columns.lengthS[j]!);
}

/** Takes a job off every list; what follows keeps its start until it is timed again. Remembered among those taken off. */
function takeOff(roster: Roster, j: number): void {
  const { night: { columns }, sums, scratch } = roster;
  const { firstOff, lastOff } = scratch;
  if (roster.placed[j] === 0) return;
  for (let person = 0; person < columns.people; person++) {
    if (columns.isAble[j * columns.people + person] === 0) continue;
    const index = indexOn(roster, person, j);
    if (index < 0) continue;
    liftOff(roster, j, person, index);
    if (firstOff[person] === NONE || index < firstOff[person]!) firstOff[person] = index;
    lastOff[person] = lastOff[person]! > index ? lastOff[person]! - 1 : index;
  }
  sums[0]! += unplacedPrice(roster, j) - startPrice(roster, j, roster.startS[j]!);
  roster.placed[j] = 0;
  if (columns.isCheck[j] === 1) {
    const next = roster.after[j]!;
    const pit = columns.pit[j]!;
    sums[0]! -= roster.linkPrice[j]!;
    roster.linkPrice[j] = 0;
    leaveChain(roster, j);
    if (next >= 0) refreshLink(roster, next);
    else refreshTail(roster, pit);
  }
  scratch.off[scratch.offCount] = j;
  scratch.offCount += 1;
}

/**
 * Takes jobs off their lists and lets what follows move up. Where a detour was shorter than the way it replaces, the next
 * work cannot be reached any more and comes off as well. Everything taken off is in the scratch.
 */
export function takeAll(roster: Roster, jobs: Int32Array | readonly number[], count = jobs.length): void {
  const { night: { columns: { people } }, scratch: { firstOff, lastOff } } = roster;
  firstOff.fill(NONE);
  lastOff.fill(NONE);
  roster.scratch.offCount = 0;
  for (let i = 0; i < count; i++) takeOff(roster, jobs[i]!);
  for (let person = 0; person < people; person++) {
    while (firstOff[person] !== NONE) {
      const index = firstOff[person]!;
      const through = lastOff[person]!;
      if (follow(roster, person, index, through)) firstOff[person] = NONE;
      else {
        const next = nextMovable(roster, person, index);
        if (next < 0) break;
        takeOff(roster, next);
        if (firstOff[person]! > index) firstOff[person] = index;
      }
    }
  }
}

function nextMovable(roster: Roster, person: number, from: number): number {
  const { columns, jobs } = roster.night;
  for (let i = from; i < roster.count[person]!; i++) {
    const j = roster.list[person * columns.jobs + i]!;
    if (!jobs[j]!.frozen) return j;
  }
  return NONE;
}

/** Times every list anew, each job as early as its list allows; what then cannot be kept comes off. Counts every price anew before. */
export function retime(roster: Roster): void {
  for (let person = 0; person < roster.night.columns.people; person++) {
    for (;;) {
      const list = listOf(roster, person);
      const first = list.findIndex((j) => roster.night.columns.isAppointment[j] === 0);
      if (first < 0 || follow(roster, person, first, list.length)) break;
      const last = nextMovable(roster, person, first);
      if (last < 0) break;
      takeAll(roster, [last]);
    }
  }
}
