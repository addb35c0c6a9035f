import type { PlanChange, PlanView, Skill } from '@stokehold/domain/contract';
import { toIso } from '@stokehold/domain/quantity';
import type { LoadHour, RoundPlan, UnplacedReason } from '@stokehold/scheduling/rounds';
import type { Shown, ShownChange } from '@stokehold/scheduling/night';
import type { Assigned, KeptPlan } from './plan.store.js';

const sideOf = (shown: Shown | undefined): PlanChange['from'] => (shown ? { people: [...shown.personIds], startsAt: toIso(shown.startsAt) } : null);

export const changeView = ({ work, code, from, to, because }: ShownChange): PlanChange => ({
  work, code, from: sideOf(from), to: sideOf(to), because: { code: because.code, personId: because.personId ?? null, work: because.work ?? null },
});

export const loadView = ({ fromAt, untilAt, skill, loadFrac, fails, missingPeople, mend }: LoadHour): PlanView['load'][number] => ({
  fromAt: toIso(fromAt), untilAt: toIso(untilAt), skill: (skill as Skill | undefined) ?? null, loadFrac, fails, missingPeople, mend: mend.code,
});

export const unplacedView = ({ work, reason }: RoundPlan['unplaced'][number]): PlanView['unplaced'][number] => ({ work, reason: reason.code });

export const assignmentView = ({ work, personIds, startsAt, endsAt, lateS, pastLatestS, pinned }: Assigned): PlanView['assignments'][number] => ({
  work, people: [...personIds], startsAt: toIso(startsAt), endsAt: toIso(endsAt), lateS, pastLatestS, pinned,
});

export const planView = (plan: KeptPlan): PlanView => ({
  madeAt: toIso(plan.madeAt),
  because: plan.because,
  assignments: plan.assignments.map(assignmentView),
  unplaced: plan.unplaced,
  load: plan.load,
  changes: plan.changes,
  decisions: plan.decisions,
  lateWeightedS: plan.lateWeightedS,
  boundWeightedS: plan.boundWeightedS,
  evenness: plan.evenness,
  search: { seed: plan.search.seed, iterations: plan.search.iterations, gapWeightedS: plan.search.gapWeightedS, improved: plan.search.improved },
});

/** What an older plan had left out, as far as a repair reads it. */
export const unplacedOf = ({ unplaced }: Pick<PlanView, 'unplaced'>): RoundPlan['unplaced'] =>
  unplaced.map(({ work, reason }) => ({ work, reason: { code: reason as UnplacedReason['code'], hindrances: [], relax: { code: 'one-person-more' } } }));
