import type { RunningShift } from '@stokehold/domain/shift';
import { changesBetween, evennessOf, type NightFacts, type PlannedNight, shownOf } from '@stokehold/scheduling/night';
import { type RoundProblem, type Work, workKey } from '@stokehold/scheduling/rounds';
import { decisionsAfter } from './decisions.js';
import type { KeptPlan } from './plan.store.js';
import { changeView, loadView, unplacedView } from './plan.view.js';

/** A plan that was found, and all that it was found from. */
export interface Making {
  readonly planned: PlannedNight & { readonly ok: true };
  readonly problem: RoundProblem;
  readonly facts: NightFacts;
  readonly shift: RunningShift;
  readonly before: KeptPlan | undefined;
  readonly because: KeptPlan['because'];
  readonly improved: boolean;
}

/** What was done needs nobody any more: its going is no change that people must hear of. */
function isDone(work: Work, { looks, tasks, shift, now }: NightFacts): boolean {
  if (work.kind === 'check') return looks.filter(({ pitId }) => pitId === work.pitId).length >= work.nth;
  if (work.kind === 'task') return !tasks.some(({ id, doneAt }) => id === work.taskId && doneAt === null);
  return shift.people.some(({ breaks }) => breaks.some(({ id, beganAt }) => id === work.breakId && beganAt !== undefined && beganAt <= now));
}

export function keptPlan({ planned: { plan, load, changes: told, search }, problem, facts, shift, before, because, improved }: Making): KeptPlan {
  const pins = new Set(problem.pins.map(({ work }) => workKey(work)));
  const shown = shownOf(plan);
  const changes = before ? changesBetween(before.assignments, shown, { now: facts.now, isDone: (work) => isDone(work, facts), told }) : [];
  return {
    shiftId: shift.id,
    madeAt: facts.now,
    because,
    assignments: shown.map(({ lateS = 0, pastLatestS = 0, earlyS = 0, ...one }) => ({ ...one, lateS, pastLatestS, earlyS, pinned: pins.has(workKey(one.work)) })),
    unplaced: plan.unplaced.map(unplacedView),
    load: load.map(loadView),
    changes: changes.map(changeView),
    decisions: before ? decisionsAfter(before, facts.now) : [],
    lateWeightedS: plan.levels.lateWeightedS,
    boundWeightedS: plan.bound.lateWeightedS,
    evenness: evennessOf(problem, plan, facts.carried) ?? null,
    search: { ...search, improved },
  };
}

/** Nobody has to look at a plan in which nothing changed. */
export const saysTheSame = (one: KeptPlan, other: KeptPlan): boolean => {
  const words = ({ assignments, unplaced }: KeptPlan) => JSON.stringify([assignments.map((a) => [workKey(a.work), a.personIds, a.startsAt, a.endsAt, a.lateS, a.pastLatestS, a.pinned]), unplaced]);
  return words(one) === words(other);
};
