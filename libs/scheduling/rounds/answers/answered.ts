import { afterIterations } from '../../search/index.js';
import { promisesOf } from '../changes.js';
import type { PlanChange, PlanResult, RoundPlan } from '../plan.js';
import { workKey, type RoundProblem, type Work } from '../problem.js';
import { repairRounds } from '../repair.js';

/** How hard an answer is looked for: a copy of the night is planned at a small budget. */
export interface AnswerOptions {
  readonly seed: number;
  /** 100 to 1000 are good for an answer within a blink. */
  readonly iterations: number;
}

/** The plan laid into a copy of its problem, and bettered as long as an answer takes. Nothing of it is kept. */
export function answered(problem: RoundProblem, before: RoundPlan, { seed, iterations }: AnswerOptions): PlanResult & { readonly changes: readonly PlanChange[] } {
  return repairRounds(problem, before, { seed, stop: afterIterations(iterations) });
}

export const isSame = (one: Work, other: Work): boolean => workKey(one) === workKey(other);

export const assignmentOf = (plan: RoundPlan, work: Work) => plan.assignments.find((one) => isSame(one.work, work));

/** A copy of the night in which all that the plan has ahead was promised: an answer then changes only what it must. */
export const allPromised = (problem: RoundProblem, plan: RoundPlan): RoundProblem => ({ ...problem, promises: promisesOf(plan, problem.from) });

/** Pins with this one in place of any other of the same work. */
export const pinned = (problem: RoundProblem, pin: RoundProblem['pins'][number]): RoundProblem => ({
  ...problem, pins: [...problem.pins.filter(({ work }) => !isSame(work, pin.work)), pin],
});
