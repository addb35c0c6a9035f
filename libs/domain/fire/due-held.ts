import { type EpochS, MINUTE_S } from '../quantity/index.js';
import type { Due } from './due.js';

/** Moves smaller than this are the noise of a forecast: nobody walks by them. */
const MOVES_FROM_S = MINUTE_S;

const isNear = (one: EpochS, other: EpochS) => Math.abs(one - other) < MOVES_FROM_S;

/** Whether a due time moved far enough that a plan should know. */
export const dueMoved = (before: Due | undefined, after: Due): boolean => before === undefined || !isNear(before.dueAt, after.dueAt);

/**
 * The due time to hold on to, from the one held so far and a fresh one, as long as nobody looked. A time that has come stays:
 * a check that is late must not slide along with the clock. A time that was still to come does not become one that has passed:
 * nobody was told then, so it is now. Small moves are left out, so that what people read stands still.
 */
export function heldDue(before: Due | undefined, fresh: Due, now: EpochS): Due {
  if (before === undefined) return fresh;
  const hasCome = before.dueAt <= now;
  const notBefore = (at: EpochS): EpochS => (at < now ? now : at);
  const dueAt = hasCome || isNear(before.dueAt, fresh.dueAt) ? before.dueAt : notBefore(fresh.dueAt);
  const keepsLatest = before.latestSafeAt <= now || isNear(before.latestSafeAt, fresh.latestSafeAt);
  const latest = keepsLatest ? before.latestSafeAt : notBefore(fresh.latestSafeAt);
  const latestSafeAt = latest < dueAt ? dueAt : latest;
  const earliest = dueAt === before.dueAt ? before.earliestAt : fresh.earliestAt;
  return { earliestAt: earliest > dueAt ? dueAt : earliest, dueAt, latestSafeAt, why: dueAt === before.dueAt ? before.why : fresh.why };
}
