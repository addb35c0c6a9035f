import { dispatchRoster } from './dispatch.js';
import { nightOf } from './night.js';
import { planFrom } from './plan-from.js';
import type { RoundPlan } from './plan.js';
import type { RoundProblem } from './problem.js';

/**
 * A whole plan at once, without a search: most urgent work first, to whoever is near and has done least.
 *
 * @param problem  validated (validateRounds)
 * @returns a plan that keeps every hard rule; what found no place is listed with its reason. Held to checker tests and
 *          tests/published/rounds-*.test.ts
 */
export const dispatchRounds = (problem: RoundProblem): RoundPlan => planFrom(dispatchRoster(nightOf(problem)));
