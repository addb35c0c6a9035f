import { Injectable } from '@nestjs/common';
import type { PlanView, Work } from '@stokehold/domain/contract';
import type { RunningShift } from '@stokehold/domain/shift';
import { changesBetween, type NightFacts, type PlannedNight, problemOfNight } from '@stokehold/scheduling/night';
import { workKey } from '@stokehold/scheduling/rounds';
import { type Deed, Ids, log, Workers } from '../platform/index.js';
import { Shifts } from '../shifts/index.js';
import { NightGathering } from './night-facts.js';
import { changeView, evennessOf, loadView, unplacedView } from './plan.view.js';
import { type KeptPlan, PlanStore } from './plan.store.js';

export type Because = PlanView['because'];

/** Makes the rounds of the running night anew and keeps them when the checker finds nothing wrong with them. */
@Injectable()
export class Planner {
  constructor(
    private readonly shifts: Shifts,
    private readonly gathering: NightGathering,
    private readonly store: PlanStore,
    private readonly workers: Workers,
    private readonly ids: Ids,
  ) {}

  async repair(deed: Deed, because: Because): Promise<void> {
    const shift = await this.shifts.running(deed.em, deed.yardId, deed.now);
    if (!shift) return this.rest(deed);
    const before = await this.store.current(deed.em, deed.yardId);
    const same = before?.shiftId === shift.id ? before : undefined;
    const facts = await this.gathering.facts(deed, shift, same?.assignments ?? []);
    const problem = problemOfNight(facts);
    const planned = await this.workers.run('planNight', { problem });
    if (!planned.ok) {
      log.error({ yardId: deed.yardId, faults: planned.faults.slice(0, 20) }, 'a plan failed its check and is not shown; the one before it stays');
      return;
    }
    const plan = keptPlan({ planned, facts, shift, before: same, because: same ? because : { ...because, cause: 'first' } });
    if (same && saysTheSame(same, plan)) return;
    await this.store.replace(deed.em, deed.yardId, this.ids.next(), plan);
    deed.tell({ kind: 'plan-repaired' });
  }

  /** When no shift runs, nobody is told to do anything. */
  private async rest(deed: Deed): Promise<void> {
    if (await this.store.retire(deed.em, deed.yardId)) deed.tell({ kind: 'plan-repaired' });
  }
}

/** What was done needs nobody any more: its going is no change that people must hear of. */
function isDone(work: Work, { looks, tasks, shift, now }: NightFacts): boolean {
  if (work.kind === 'check') return looks.filter(({ pitId }) => pitId === work.pitId).length >= work.nth;
  if (work.kind === 'task') return !tasks.some(({ id, doneAt }) => id === work.taskId && doneAt === null);
  return shift.people.some(({ breaks }) => breaks.some(({ id, beganAt }) => id === work.breakId && beganAt !== undefined && beganAt <= now));
}

interface Making {
  readonly planned: PlannedNight & { readonly ok: true };
  readonly facts: NightFacts;
  readonly shift: RunningShift;
  readonly before: KeptPlan | undefined;
  readonly because: Because;
}

function keptPlan({ planned: { plan, load }, facts, shift, before, because }: Making): KeptPlan {
  const assignments = plan.assignments.map(({ work, personIds, startsAt, endsAt, lateS, pastLatestS }) => ({ work, personIds, startsAt, endsAt, lateS, pastLatestS }));
  const changes = before ? changesBetween(before.assignments, assignments, facts.now, (work) => isDone(work, facts)) : [];
  return {
    shiftId: shift.id,
    madeAt: facts.now,
    because,
    assignments,
    unplaced: plan.unplaced.map(unplacedView),
    load: load.map(loadView),
    changes: changes.map(changeView),
    lateWeightedS: plan.levels.lateWeightedS,
    boundWeightedS: plan.bound.lateWeightedS,
    evenness: shift.people.length > 0 ? evennessOf(plan.levels) : null,
  };
}

/** Nobody has to look at a plan in which nothing changed. */
const saysTheSame = (one: KeptPlan, other: KeptPlan): boolean => {
  const words = ({ assignments, unplaced }: KeptPlan) => JSON.stringify([assignments.map((a) => [workKey(a.work), a.personIds, a.startsAt, a.endsAt, a.lateS, a.pastLatestS]), unplaced]);
  return words(one) === words(other);
};
