import type { CookId } from '@stokehold/domain/quantity';
import { weighLies, type Weighed } from './checker.js';
import type { Lies } from './plan.js';
import type { PlacementProblem } from './problem.js';

/** Pieces of a cook taken from one zone to another; without `from` they stood beside the pit, without `to` they leave it. */
export interface HandMove {
  readonly cookId: CookId;
  readonly pieces: number;
  readonly fromZoneId?: string;
  readonly toZoneId?: string;
}
export interface HandMoved {
  readonly lies: Lies;
  readonly before: Weighed;
  readonly after: Weighed;
  /** What the move costs in seconds of crew work; negative when it saves. */
  readonly moreS: number;
  /** Pieces x weight without a place, more than before. */
  readonly moreUnplaced: number;
}

/** What lies where after a move. More pieces than lie there move none from nothing: the checker then finds too many. */
export function movedLies(lies: Lies, { cookId, pieces, fromZoneId, toZoneId }: HandMove): Lies {
  const left = lies.map((one) => (one.cookId === cookId && one.zoneId === fromZoneId ? { ...one, pieces: one.pieces - pieces } : one));
  if (fromZoneId !== undefined && !lies.some((one) => one.cookId === cookId && one.zoneId === fromZoneId)) left.push({ cookId, zoneId: fromZoneId, pieces: -pieces });
  const at = left.findIndex((one) => one.cookId === cookId && one.zoneId === toZoneId);
  const put = toZoneId === undefined ? left : at < 0 ? [...left, { cookId, zoneId: toZoneId, pieces }] : left.map((one, i) => (i === at ? { ...one, pieces: one.pieces + pieces } : one));
  return put.filter((one) => one.pieces !== 0);
}

/** A move by hand, judged at once by the independent checker: what it breaks and what it costs. Held to placement/by-hand.test.ts. */
export function moveByHand(problem: PlacementProblem, lies: Lies, move: HandMove): HandMoved {
  const before = weighLies(problem, lies);
  const moved = movedLies(lies, move);
  const after = weighLies(problem, moved);
  return { lies: moved, before, after, moreS: after.levels.priceS - before.levels.priceS, moreUnplaced: after.levels.unplaced - before.levels.unplaced };
}
