import { randomStream, seedFrom, type RandomStream } from '@stokehold/domain/quantity';
import { anneal, whicheverFirst, type Progress, type Reworkable, type StopRule } from '../search/index.js';
import { Best } from './best.js';
import { retime } from './list-change.js';
import type { Night } from './night.js';
import type { PlanResult } from './plan.js';
import { recreate } from './recreate.js';
import { copyRoster, placedBeside, restoreRoster, type Roster } from './roster.js';
import { ruin } from './ruin.js';

/** Eighths of a weighted second of lateness that are taken one time in e, at the start of a cycle and at its end. Source: tests/bench/rounds.mjs. */
const WARM = 6000;
const COLD = 32;
/** Iterations for each job above which a search is in no hurry; and how many are reckoned with where the stop rule does not know. */
const UNHURRIED = 8;
const UNKNOWN_MOST = 1500;
/** Work left out before that is tried again in each iteration. */
const TRIED_AGAIN = 6;
/** A mending that found nothing better for so many iterations ends. */
const STUCK = 60;
/** Iterations between two questions whether the search is cancelled. */
const CANCEL_EVERY = 64;

export interface RosterSearch {
  readonly seed: number;
  readonly stop: StopRule;
  /** Asked now and then; true ends the search, and the best so far is the plan. */
  readonly cancelled?: () => boolean;
  /** A whole roster that the result is never worse than. Default: the start. */
  readonly fallback?: Roster;
  /** Ends the search as soon as every fire is in time and all work has its place. */
  readonly untilWhole?: boolean;
}

export interface FoundRoster {
  readonly roster: Roster;
  readonly iterations: number;
  readonly endedBy: PlanResult['endedBy'];
}

/** Ruin and recreate with annealing from a roster on, until the stop rule says so. The same seed and iterations give the same roster. */
export function searchRoster(start: Roster, { seed, stop, cancelled, fallback = start, untilWhole = false }: RosterSearch): FoundRoster {
  const { night } = start;
  const roster = copyRoster(start);
  const best = new Best(fallback);
  retime(roster);
  refill(roster);
  best.offer(roster);
  const movable = night.people.length > 0 && night.jobs.some((job) => job.fixedS === undefined);
  if (!movable) return { roster: best.roster, iterations: 0, endedBy: 'nothing-to-move' };
  let wasCancelled = false;
  const cancel: StopRule = ({ iterations }) => (wasCancelled = iterations % CANCEL_EVERY === 0 && cancelled?.() === true);
  const whole: StopRule = untilWhole ? wholeOrStuck(best) : () => false;
  const options = { random: randomStream(seedFrom('rounds', seed)), stop: whicheverFirst(cancel, whole, toldOf(best, stop)), warm: untilWhole ? COLD : warmth(night, stop), cold: COLD };
  const iterations = anneal(reworkable(roster, best), options);
  return { roster: best.roster, iterations, endedBy: wasCancelled ? 'cancelled' : 'stop' };
}

/** The rule, told how good the best so far is. */
const toldOf = (best: Best, stop: StopRule): StopRule =>
  Object.assign(({ iterations }: Progress) => stop({ iterations, fallsShort: best.fallsShort, isEnough: best.isEnough }), stop.most === undefined ? {} : { most: stop.most });

/** Ends when every fire is in time and all work has its place, or when that has not come nearer for long. */
function wholeOrStuck(best: Best): StopRule {
  let seen = best.found;
  let seenAt = 0;
  return ({ iterations }) => {
    if (best.found !== seen) [seen, seenAt] = [best.found, iterations];
    return best.isWhole() || iterations - seenAt > STUCK;
  };
}

function reworkable(roster: Roster, best: Best): Reworkable {
  const accepted = copyRoster(roster);
  return {
    change: (random) => {
      ruin(roster, random);
      const { scratch: { off, offCount } } = roster;
      recreate(roster, off, tryAgain(roster, off, offCount, random), random);
    },
    cost: () => roster.sums[0]!,
    accept: () => restoreRoster(accepted, roster),
    reject: () => restoreRoster(roster, accepted),
    keepIfBest: () => best.offer(roster),
    backToBest: () => {
      restoreRoster(roster, best.roster);
      retime(roster);
      restoreRoster(accepted, roster);
    },
  };
}

/** A search with few iterations for its work begins less warm: it has no time to lose what is good already. */
function warmth({ jobs }: Night, { most = UNKNOWN_MOST }: StopRule): number {
  const hurry = Math.min(1, most / (UNHURRIED * jobs.length));
  return Math.max(COLD, WARM * hurry * hurry);
}

/** Puts back what stands on no list and could, by due. */
export function refill(roster: Roster): void {
  const { scratch: { chosen }, placed, night: { columns } } = roster;
  let count = 0;
  for (let j = 0; j < columns.jobs; j++) if (placed[j] === 0 && columns.isMovable[j] === 1) chosen[count++] = j;
  recreate(roster, chosen, count);
}

/**
 * Adds to what was taken off what stood on no list before and is wanted: tasks and breaks, and checks whose fire falls due before the
 * next look at it; some of it, where there is much. How many there are then.
 */
function tryAgain(roster: Roster, off: Int32Array, offCount: number, random: RandomStream): number {
  const { scratch: { chosen, mark }, placed, night: { columns } } = roster;
  const trial = ++roster.scratch.trial;
  for (let i = 0; i < offCount; i++) mark[off[i]!] = trial;
  let found = 0;
  for (let j = 0; j < columns.jobs; j++) if (placed[j] === 0 && columns.isMovable[j] === 1 && mark[j] !== trial && isWanted(roster, j)) chosen[found++] = j;
  const first = found > TRIED_AGAIN ? random.below(found - TRIED_AGAIN + 1) : 0;
  const most = Math.min(found, TRIED_AGAIN);
  for (let i = 0; i < most; i++) off[offCount + i] = chosen[first + i]!;
  return offCount + most;
}

/** Whether work on no list is missed: not a check that the looks beside it make needless. */
function isWanted(roster: Roster, j: number): boolean {
  const { columns } = roster.night;
  if (columns.isCheck[j] === 0) return true;
  const after = placedBeside(roster, j, 1);
  return after >= 0 ? roster.linkPrice[after]! > 0 : roster.tailPrice[columns.pit[j]!]! > 0;
}
