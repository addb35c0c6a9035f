import { epochS } from '@stokehold/domain/quantity';
import {
  changesBetween, checkRounds, loadOf, planRounds, repairRounds, validateRounds, type LoadHour, type PlanChange, type PlanResult, type RoundPlan, type RoundProblem,
} from '../rounds/index.js';
import { afterIterations, whicheverFirst, whileWaited, type StopRule } from '../search/index.js';
import type { Shown } from './facts.js';

/** How a plan was found: enough to find it again. */
export type SearchRecord = Omit<PlanResult, 'plan' | 'dispatched'>;

/** A plan that may be shown, or why there is none: then the plan before it stays. */
export type PlannedNight =
  | { readonly ok: true; readonly plan: RoundPlan; readonly load: readonly LoadHour[]; readonly changes: readonly PlanChange[]; readonly search: SearchRecord }
  | { readonly ok: false; readonly faults: readonly string[] };

export interface NightWanted {
  readonly problem: RoundProblem;
  /** What people see now; without it the night is planned from nothing. */
  readonly before?: RoundPlan | undefined;
  readonly seed: number;
  /** How long to search; 0 takes the old plan laid into the new facts, or the dispatch. */
  readonly iterations: number;
  /** Somebody waits for a repair: it ends as soon as only evenness could get better, and goes on up to so many iterations while a fire is unsafe. */
  readonly untilSafe?: number;
  /** Search although the fact alone would not be worth it. */
  readonly always?: boolean;
  /** Ends the search earlier: a newer fact, a guard. */
  readonly stop?: StopRule;
}

/**
 * Plans the rounds and lets the independent checker judge them: a plan in which it finds anything is not handed out. After a fact
 * the old plan is repaired, and searched only where that is worth it: ten probes do not mean ten plans. An impossible night is
 * no fault; its plan lists what found no place and why.
 *
 * @returns the checked plan with the load of each hour. Held to libs/scheduling/night/plan-night.test.ts
 */
export function planNight(wanted: NightWanted): PlannedNight {
  const { problem } = wanted;
  const valid = validateRounds(problem);
  if (!valid.ok) return { ok: false, faults: [JSON.stringify(valid.refusal)] };
  const { plan, changes, dispatched: _, ...search } = planned(wanted);
  const violations = checkRounds(problem, plan);
  if (violations.length > 0) return { ok: false, faults: violations.map((violation) => JSON.stringify(violation)) };
  return { ok: true, plan, changes, search, load: loadOf(problem) };
}

function planned({ problem, before, seed, iterations, untilSafe, always = false, stop }: NightWanted): PlanResult & { readonly changes: readonly PlanChange[] } {
  const guarded = (rule: StopRule) => ({ seed, stop: stop ? whicheverFirst(rule, stop) : rule });
  const enough = afterIterations(iterations);
  if (before && problem.promises.length > 0) {
    return repairRounds(problem, before, { ...guarded(untilSafe === undefined ? enough : whileWaited(iterations, untilSafe)), onlyIfWorth: !always });
  }
  const found = planRounds(problem, guarded(enough));
  return { ...found, changes: before ? changesBetween(problem, before, found.plan) : [] };
}

/** Of a plan that was shown, what a repair reads: who does what when, and what it had left out. */
export function planShown(shown: readonly Shown[], unplaced: RoundPlan['unplaced'] = []): RoundPlan {
  return {
    assignments: shown.map(({ work, personIds, startsAt, endsAt, dueAt, lateS = 0, pastLatestS = 0, earlyS = 0 }) => ({
      work, personIds, startsAt, endsAt, lateS, pastLatestS, earlyS, ...(dueAt !== undefined && { dueAt }), reason: { code: 'nearest', late: [] },
    })),
    unplaced,
    levels: { unsafeS: 0, unsafeChecks: 0, unplaced: unplaced.length, pastLatestS: 0, lateWeightedS: 0, tasksLateS: 0, uneven: 0, unevenUnpleasant: 0, promises: 0, walkS: 0 },
    bound: { unsafeS: 0, lateWeightedS: 0, peopleForDue: 0, peopleForSafe: 0, peopleIfPitsBound: 0, busiestS: 0 },
  };
}

/** The shown form of a plan. */
export const shownOf = (plan: RoundPlan): readonly Shown[] =>
  plan.assignments.map(({ work, personIds, startsAt, endsAt, dueAt, lateS, pastLatestS, earlyS }) => ({
    work, personIds, startsAt: epochS(startsAt), endsAt, lateS, pastLatestS, earlyS, ...(dueAt !== undefined && { dueAt }),
  }));
