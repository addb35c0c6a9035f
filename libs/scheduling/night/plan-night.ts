import { checkRounds, dispatchRounds, loadOf, validateRounds, type LoadHour, type RoundPlan, type RoundProblem } from '../rounds/index.js';

/** A plan that may be shown, or why there is none: then the plan before it stays. */
export type PlannedNight =
  | { readonly ok: true; readonly plan: RoundPlan; readonly load: readonly LoadHour[] }
  | { readonly ok: false; readonly faults: readonly string[] };

/**
 * Plans the rounds and lets the independent checker judge them: a plan in which it finds anything is not handed out.
 * An impossible night is no fault; its plan lists what found no place and why.
 *
 * @returns the checked plan with the load of each hour. Held to libs/scheduling/night/plan-night.test.ts
 */
export function planNight({ problem }: { readonly problem: RoundProblem }): PlannedNight {
  const valid = validateRounds(problem);
  if (!valid.ok) return { ok: false, faults: [JSON.stringify(valid.refusal)] };
  const plan = dispatchRounds(problem);
  const violations = checkRounds(problem, plan);
  if (violations.length > 0) return { ok: false, faults: violations.map((violation) => JSON.stringify(violation)) };
  return { ok: true, plan, load: loadOf(problem) };
}
