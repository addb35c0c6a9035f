import type { Levels } from '../plan.js';
import { parameter, type RoundProblem } from '../problem.js';

/**
 * Whether a plan is worth more than another of the same problem: level by level from the first, where promises and weighted
 * lateness share a level at the problem's rate.
 *
 * @returns false where both are worth the same. Held to rounds/answers/better.test.ts
 */
export function isBetter(one: Levels, other: Levels, problem: RoundProblem): boolean {
  const [mine, theirs] = [ranksOf(one, problem), ranksOf(other, problem)];
  const at = mine.findIndex((rank, i) => rank !== theirs[i]);
  return at >= 0 && (mine[at] ?? 0) < (theirs[at] ?? 0);
}

/** Promises are counted in halves: two of them weigh `promiseS` seconds. */
function ranksOf(levels: Levels, problem: RoundProblem): readonly number[] {
  const { unsafeS, unsafeChecks, unplaced, pastLatestS, lateWeightedS, promises, tasksLateS, uneven, unevenUnpleasant, walkS } = levels;
  return [unsafeS, unsafeChecks, unplaced, pastLatestS, 2 * lateWeightedS + parameter(problem, 'promiseS') * promises, tasksLateS, uneven, unevenUnpleasant, walkS];
}
