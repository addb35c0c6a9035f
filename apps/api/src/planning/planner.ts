import { Injectable } from '@nestjs/common';
import type { PlanView } from '@stokehold/domain/contract';
import { seedFrom } from '@stokehold/domain/quantity';
import { planShown, problemOfNight } from '@stokehold/scheduling/night';
import { type Deed, Ids, log, Workers } from '../platform/index.js';
import { Shifts } from '../shifts/index.js';
import { SearchBudget } from './budget.js';
import { isDecision } from './decisions.js';
import { Improver } from './improver.js';
import { keptPlan, saysTheSame } from './kept-plan.js';
import { NightGathering } from './night-facts.js';
import { unplacedOf } from './plan.view.js';
import { PlanStore } from './plan.store.js';

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
    private readonly budget: SearchBudget,
    private readonly improver: Improver,
  ) {}

  /** A plan at once, repaired from the one that people see; a better one is looked for afterwards. */
  async repair(deed: Deed, because: Because): Promise<void> {
    await this.improver.cancel(deed);
    this.store.lookAgain(deed.em);
    const [shift, current] = await Promise.all([this.shifts.running(deed.em, deed.yardId, deed.now), this.store.current(deed.em, deed.yardId)]);
    if (!shift) return this.rest(deed);
    const same = current?.shiftId === shift.id ? current : undefined;
    const facts = await this.gathering.facts(deed, shift, same?.assignments ?? []);
    const wanted = {
      problem: problemOfNight(facts),
      before: same && planShown(same.assignments, unplacedOf(same)),
      seed: seedFrom('rounds', deed.yardId),
    };
    // What comes by the dozen is searched for only where it is worth it; who comes, goes or decides always is.
    const always = !same || isDecision(because);
    const { atOnce, untilSafe, inPassing } = this.budget;
    const planned = await this.workers.run('planNight', { ...wanted, always, ...(always ? { iterations: atOnce, untilSafe } : { iterations: inPassing }) });
    if (!planned.ok) {
      log.error({ yardId: deed.yardId, faults: planned.faults.slice(0, 20) }, 'a plan failed its check and is not shown; the one before it stays');
      return;
    }
    const making = { problem: wanted.problem, facts, shift, before: same, because: same ? because : { ...because, cause: 'first' as const } };
    const plan = keptPlan({ ...making, planned, improved: false });
    if (same && saysTheSame(same, plan)) return;
    const id = this.ids.next();
    await this.store.replace(deed.em, deed.yardId, id, plan);
    deed.tell({ kind: 'plan-repaired' });
    this.improver.lookFor(deed, { yardId: deed.yardId, planId: id, wanted, making, levels: planned.plan.levels, planHash: planned.search.planHash });
  }

  /** When no shift runs, nobody is told to do anything. */
  private async rest(deed: Deed): Promise<void> {
    if (await this.store.retire(deed.em, deed.yardId)) deed.tell({ kind: 'plan-repaired' });
  }
}
