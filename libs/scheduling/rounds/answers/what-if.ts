import { ok, type Result } from '@stokehold/domain/quantity';
import { loadOf } from '../load.js';
import type { LoadHour, PlanChange, RoundPlan } from '../plan.js';
import type { RoundProblem, Work } from '../problem.js';
import { validateRounds, type RoundRefusal } from '../validate.js';
import { allPromised, answered, isSame, type AnswerOptions } from './answered.js';
import { levelsApart, type LevelCost } from './levels-apart.js';

/** What a supposed night would be like beside the real one. */
export interface WhatIf {
  readonly changes: readonly PlanChange[];
  readonly costs: readonly LevelCost[];
  /** Work that would have no place and has one now. */
  readonly unplaced: readonly Work[];
  /** Checks that would pass latest safe and do not now. */
  readonly pastLatest: readonly Work[];
  /** Hours that would fail and do not now. */
  readonly failing: readonly LoadHour[];
}

/**
 * Plans a copy of the night as it is supposed to be and tells the difference. Both nights are planned at the same small budget, so
 * that what a longer search would find is not taken for a consequence. Nothing is kept.
 *
 * @param problem   the night as it is
 * @param supposed  the same night with what is supposed
 * @param plan      what people see now
 * @returns the difference, or why the supposed night is none. Held to rounds/answers/what-if.test.ts
 */
export function whatIf(problem: RoundProblem, supposed: RoundProblem, plan: RoundPlan, options: AnswerOptions): Result<WhatIf, RoundRefusal> {
  const valid = validateRounds(supposed);
  if (!valid.ok) return valid;
  const now = answered(allPromised(problem, plan), plan, options).plan;
  const then = answered(allPromised(supposed, now), now, options);
  return ok({
    changes: then.changes,
    costs: levelsApart(now.levels, then.plan.levels),
    unplaced: without(then.plan.unplaced.map(({ work }) => work), now.unplaced.map(({ work }) => work)),
    pastLatest: without(pastLatest(then.plan), pastLatest(now)),
    failing: loadOf(supposed).filter((hour) => hour.fails && !loadOf(problem).some((one) => one.fails && one.fromAt === hour.fromAt && one.skill === hour.skill)),
  });
}

const pastLatest = ({ assignments }: RoundPlan): readonly Work[] => assignments.filter(({ work, pastLatestS }) => work.kind === 'check' && pastLatestS > 0).map(({ work }) => work);

const without = (works: readonly Work[], known: readonly Work[]): readonly Work[] => works.filter((work) => !known.some((one) => isSame(one, work)));
