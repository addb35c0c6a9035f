import type { RandomStream } from '@stokehold/domain/quantity';
import { unplacedCost } from './cost.js';
import { trySlot, type Slot } from './insertion.js';
import { put } from './list-change.js';
import { freeAfter, type Roster } from './roster.js';

/** A place is passed over this often, so that the search does not always come to the same list. */
const SKIP_FRAC = 0.04;
/** Places tried on one list beyond the first that fits. */
const TRIES = 7;

/** Puts jobs back, each at its cheapest place, in one of three orders; without `random` by due alone, every place tried. */
export function recreate(roster: Roster, jobs: readonly number[], random?: RandomStream): void {
  for (const j of inOrder(roster, jobs, random)) {
    if (roster.placed[j]! > 0) continue;
    const slots = cheapest(roster, j, random);
    if (slots) put(roster, j, slots);
  }
}

function inOrder(roster: Roster, jobs: readonly number[], random: RandomStream | undefined): readonly number[] {
  const { jobs: all } = roster.night;
  const way = random?.below(3) ?? 0;
  const byDue = (a: number, b: number) => all[a]!.targetS - all[b]!.targetS || a - b;
  if (way === 0) return [...jobs].sort(byDue);
  if (way === 1) return [...jobs].sort((a, b) => all[b]!.people - all[a]!.people || all[b]!.lengthS - all[a]!.lengthS || byDue(a, b));
  const drawn = new Map(jobs.map((j) => [j, random?.next() ?? 0]));
  return [...jobs].sort((a, b) => drawn.get(a)! - drawn.get(b)! || a - b);
}

/** The cheapest place of a job, or of a pair; undefined if leaving it out costs less or nothing admits it. */
function cheapest(roster: Roster, j: number, random: RandomStream | undefined): readonly Slot[] | undefined {
  const job = roster.night.jobs[j]!;
  const missingCost = unplacedCost(roster, job);
  if (job.able.length < job.people) return undefined;
  if (job.people > 1) return cheapestMeeting(roster, j);
  let best: Slot | undefined;
  for (const person of job.able) {
    for (const slot of slotsOf(roster, j, person, random)) if (!best || slot.cost < best.cost) best = slot;
  }
  return best && best.cost <= missingCost ? [best] : undefined;
}

/** Places on one list around the time of the job: from the first it could begin in, a few on. */
function slotsOf(roster: Roster, j: number, person: number, random: RandomStream | undefined, atLeastS = 0): readonly Slot[] {
  const { night, startS } = roster;
  const list = roster.lists[person]!;
  const fromS = Math.max(night.jobs[j]!.releaseS, atLeastS);
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (startS[list[middle]!]! + night.jobs[list[middle]!]!.lengthS <= fromS) low = middle + 1;
    else high = middle;
  }
  const found: Slot[] = [];
  for (let index = Math.max(0, low - 1); index <= list.length; index++) {
    if (found.length >= TRIES && random) break;
    if (random && random.next() < SKIP_FRAC) continue;
    if (found.length > 0 && freeAfter(roster, person, index) > Math.max(night.jobs[j]!.targetS, fromS) + 3600) break;
    const slot = trySlot(roster, j, person, index, atLeastS);
    if (slot) found.push(slot);
  }
  return found;
}

/** The cheapest start at which as many as the task needs can meet. */
function cheapestMeeting(roster: Roster, j: number): readonly Slot[] | undefined {
  const job = roster.night.jobs[j]!;
  const starts = [...new Set(job.able.flatMap((person) => slotsOf(roster, j, person, undefined).map(({ startS }) => startS)))].sort((a, b) => a - b).slice(0, 24);
  let best: { readonly slots: readonly Slot[]; readonly cost: number } | undefined;
  for (const startS of starts) {
    const slots = job.able
      .flatMap((person) => {
        const own = slotsOf(roster, j, person, undefined, startS).filter((slot) => slot.startS === startS).sort((a, b) => a.cost - b.cost);
        return own.slice(0, 1);
      })
      .sort((a, b) => a.cost - b.cost || a.person - b.person)
      .slice(0, job.people);
    const cost = slots.reduce((sum, slot) => sum + slot.cost, 0);
    if (slots.length === job.people && (!best || cost < best.cost)) best = { slots, cost };
  }
  return best?.slots;
}
