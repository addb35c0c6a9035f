import { dispatchRoster } from './dispatch.js';
import { mended } from './mended.js';
import { nightOf } from './night.js';
import { planFrom } from './plan-from.js';
import type { RoundPlan } from './plan.js';
import type { RoundProblem } from './problem.js';

/**
 * A whole plan at once: most urgent work first, to whoever is near and has done least. Where that leaves a fire unsafe or
 * work without a place, a short search with a fixed seed mends just this and ends as soon as it has.
 *
 * @param problem  validated (validateRounds)
 * @returns a plan that keeps every hard rule; what found no place is listed with its reason. Held to checker tests and
 *          tests/published/rounds-*.test.ts
 */
export const dispatchRounds = (problem: RoundProblem): RoundPlan => planFrom(mended(dispatchRoster(nightOf(problem))));
