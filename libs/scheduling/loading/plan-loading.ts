import type { CookId, EpochS, PitId, ServiceId } from '@stokehold/domain/quantity';
import { checkCookPlan, planCooks, validateCookPlan, type CookPlan, type CookPlanProblem, type CookPlanRefusal, type CookPlanViolation } from '../cook-plan/index.js';
import { checkPlacement, planPlacement, validatePlacement, type PlacementPlan, type PlacementProblem, type PlacementRefusal, type PlacementViolation } from '../placement/index.js';
import { afterIterations } from '../search/index.js';
import type { LoadingFacts } from './facts.js';
import { pitProblem, stayOf } from './pit-problem.js';
import { CookingTimes, yardProblem } from './yard-problem.js';

/** A cook or a service that no plan can be made for, and why; the rest is planned without it. */
export interface SetAside {
  readonly cookId?: CookId;
  readonly serviceId?: ServiceId;
  readonly pitId?: PitId;
  readonly refusal: CookPlanRefusal | PlacementRefusal;
}
export interface PitLoading {
  readonly pitId: PitId;
  readonly problem: PlacementProblem;
  readonly plan: PlacementPlan;
}
export interface LoadingPlanned {
  /** Absent when there is nothing to plan. */
  readonly cooks?: { readonly problem: CookPlanProblem; readonly plan: CookPlan };
  readonly pits: readonly PitLoading[];
  readonly setAside: readonly SetAside[];
  /** What the checkers found; a plan with faults is left out. */
  readonly faults: readonly (CookPlanViolation | PlacementViolation)[];
}

/** Iterations of a cook plan: about half a second for 14 cooks. Source: tests/bench/cook-plan.mjs. */
const ITERATIONS = 1500;
/** Steps towards the bound: they take far longer for many cooks, and somebody waits. Source: tests/bench/cook-plan.mjs. */
const BOUND_STEPS = 40;
const FEW_BOUND_STEPS = 6;
const MANY_COOKS = 20;

/** What a refusal is about, so that it can be set aside. */
function culpritsOf(refusal: CookPlanRefusal | PlacementRefusal): readonly { readonly cookId?: CookId; readonly serviceId?: ServiceId }[] {
  if (refusal.code === 'service-too-early') return refusal.services.map(({ serviceId }) => ({ serviceId }));
  return 'cookId' in refusal ? [{ cookId: refusal.cookId }] : [];
}

/** The problem without what cannot be planned; undefined when nobody can say what is to be left out. */
function planable(problem: CookPlanProblem, aside: SetAside[]): CookPlanProblem | undefined {
  let left = problem;
  while (left.cooks.length > 0) {
    const checked = validateCookPlan(left);
    if (checked.ok) return left;
    const culprits = culpritsOf(checked.refusal);
    for (const culprit of culprits) aside.push({ ...culprit, refusal: checked.refusal });
    if (culprits.length === 0) {
      aside.push({ refusal: checked.refusal });
      return undefined;
    }
    left = {
      ...left, services: left.services.filter(({ id }) => !culprits.some(({ serviceId }) => serviceId === id)),
      cooks: left.cooks.filter(({ id, serviceId }) => !culprits.some((one) => one.cookId === id || one.serviceId === serviceId)),
    };
  }
  return undefined;
}

function loaded(problem: PlacementProblem, aside: SetAside[]): PlacementProblem | undefined {
  let left = problem;
  for (;;) {
    const checked = validatePlacement(left);
    if (checked.ok) return left;
    const [culprit] = culpritsOf(checked.refusal);
    aside.push({ ...culprit, pitId: problem.pitId, refusal: checked.refusal });
    if (culprit?.cookId === undefined) return undefined;
    left = { ...left, groups: left.groups.filter(({ id }) => id !== culprit.cookId) };
  }
}

/** The cook plan of a yard, and with it what lies where on each pit; each past its independent checker. Pure: for a worker. */
export function planLoading(facts: LoadingFacts): LoadingPlanned {
  const setAside: SetAside[] = [];
  const faults: (CookPlanViolation | PlacementViolation)[] = [];
  const problem = facts.pits.length === 0 ? undefined : planable(yardProblem(facts, new CookingTimes()), setAside);
  const plan = problem && planCooks(problem, { seed: facts.seed, stop: afterIterations(ITERATIONS), boundSteps: problem.cooks.length > MANY_COOKS ? FEW_BOUND_STEPS : BOUND_STEPS });
  const broken = problem && plan ? checkCookPlan(problem, plan) : [];
  faults.push(...broken);
  const shown = problem && plan && broken.length === 0 ? { problem, plan } : undefined;
  const pits = facts.pits.flatMap((pit): PitLoading[] => {
    const own = facts.cooks.flatMap((cook) => {
      const start = shown?.plan.starts.find(({ cookId }) => cookId === cook.id);
      if ((cook.on?.pitId ?? start?.pitId) !== pit.id) return [];
      return [{ cook, stay: stayOf(cook, facts.now, start && { onAt: start.onAt as EpochS, offAt: start.likelyOffAt }) }];
    });
    const wanted = loaded(pitProblem(pit, own), setAside);
    if (!wanted) return [];
    const laid = planPlacement(wanted);
    const wrong = checkPlacement(wanted, laid);
    faults.push(...wrong);
    return wrong.length === 0 ? [{ pitId: pit.id, problem: wanted, plan: laid }] : [];
  });
  return { ...(shown && { cooks: shown }), pits, setAside, faults };
}
