import type { PlanChange, PlanView, Skill } from '@stokehold/domain/contract';
import { clamp, toIso } from '@stokehold/domain/quantity';
import type { LoadHour, RoundPlan } from '@stokehold/scheduling/rounds';
import type { Shown, ShownChange } from '@stokehold/scheduling/night';
import type { KeptPlan } from './plan.store.js';

const sideOf = (shown: Shown | undefined): PlanChange['from'] => (shown ? { people: [...shown.personIds], startsAt: toIso(shown.startsAt) } : null);

export const changeView = ({ work, code, from, to }: ShownChange): PlanChange => ({ work, code, from: sideOf(from), to: sideOf(to) });

export const loadView = ({ fromAt, untilAt, skill, loadFrac, fails, missingPeople }: LoadHour): PlanView['load'][number] => ({
  fromAt: toIso(fromAt), untilAt: toIso(untilAt), skill: (skill as Skill | undefined) ?? null, loadFrac, fails, missingPeople,
});

export const unplacedView = ({ work, reason }: RoundPlan['unplaced'][number]): PlanView['unplaced'][number] => ({ work, reason: reason.code });

/** 1 when everybody works the same part of their shift; the planner counts the spread in millionths. */
export const evennessOf = ({ uneven }: RoundPlan['levels']): number => clamp(1 - uneven / 1e6, 0, 1);

export const planView = (plan: KeptPlan): PlanView => ({
  madeAt: toIso(plan.madeAt),
  because: plan.because,
  assignments: plan.assignments.map(({ work, personIds, startsAt, endsAt, lateS, pastLatestS }) => ({
    work, people: [...personIds], startsAt: toIso(startsAt), endsAt: toIso(endsAt), lateS, pastLatestS,
  })),
  unplaced: plan.unplaced,
  load: plan.load,
  changes: plan.changes,
  lateWeightedS: plan.lateWeightedS,
  boundWeightedS: plan.boundWeightedS,
  evenness: plan.evenness,
});
