import { Injectable } from '@nestjs/common';
import { type EpochS, later, type YardId } from '@stokehold/domain/quantity';
import { FROZEN_AHEAD_S, type NightWanted } from '@stokehold/scheduling/night';
import { isBetter, type Levels, workKey } from '@stokehold/scheduling/rounds';
import { type Deed, Deeds, Ids, log, Outbox, type TakenWork, Workers, WorkQueue } from '../platform/index.js';
import { SearchBudget } from './budget.js';
import { keptPlan, type Making } from './kept-plan.js';
import { type Assigned, PlanStore } from './plan.store.js';

/** A plan that was kept, and from what it was found: what a longer search begins with; plain data. */
interface Kept {
  readonly yardId: YardId;
  readonly planId: string;
  readonly wanted: Pick<NightWanted, 'problem' | 'before' | 'seed'>;
  readonly making: Omit<Making, 'planned' | 'improved'>;
  readonly levels: Levels;
  readonly planHash: number;
}

/**
 * Looks for a better plan while nobody waits. The plan that people see stays until a better one has passed the checker; a newer
 * fact ends the search. What is found takes the place of the plan it was searched from and of no other.
 */
@Injectable()
export class Improver {
  /** Found plans that take their place just now. */
  private readonly taking = new Map<YardId, Promise<void>>();

  constructor(
    private readonly workers: Workers,
    private readonly budget: SearchBudget,
    private readonly store: PlanStore,
    private readonly deeds: Deeds,
    private readonly outbox: Outbox,
    private readonly ids: Ids,
    private readonly queue: WorkQueue,
  ) {
    queue.serve('better-plan', { do: (work) => this.search(work), outdatedByNext: true });
  }

  /** A plan to better, once it has been kept. */
  lookFor(deed: Deed, kept: Kept): void {
    if (this.budget.afterwards > 0) this.queue.want(deed, 'better-plan', kept);
  }

  /** Ends the search of a yard; what it found so far is not used, unless it is taking its place just now: that is waited for. */
  async cancel(deed: Deed): Promise<void> {
    if (this.budget.afterwards > 0) this.queue.withdraw(deed, 'better-plan');
    await this.taking.get(deed.yardId);
  }

  /** Resolves when no search goes on here. */
  idle(): Promise<void> {
    return this.queue.idle('better-plan');
  }

  private async search({ given, ended }: TakenWork): Promise<void> {
    const kept = given as Kept;
    const { yardId, wanted, levels, planHash } = kept;
    const cancel = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
    ended.addEventListener('abort', () => Atomics.store(new Int32Array(cancel), 0, 1));
    const iterations = this.budget.afterwards;
    const planned = ended.aborted ? undefined : await this.workers.runPatiently('planNight', { ...wanted, iterations, always: true, cancel });
    if (!planned || ended.aborted) return;
    if (!planned.ok) {
      log.error({ yardId, faults: planned.faults.slice(0, 20) }, 'a better plan failed its check; the one before it stays');
      return;
    }
    if (planned.search.iterations < iterations && planned.search.iterations > 0) log.warn({ yardId, made: planned.search.iterations, of: iterations }, 'the guard cut a search off');
    if (planned.search.planHash === planHash || !isBetter(planned.plan.levels, levels, wanted.problem)) return;
    const taking = this.deeds.run(yardId, (deed) => this.take(deed, kept, planned));
    this.taking.set(yardId, taking.catch(() => undefined));
    await taking.finally(() => this.taking.delete(yardId));
    this.outbox.poke(yardId);
  }

  /** The better plan in place of the one it was searched from, unless work that is about to begin would change under somebody's feet. */
  private async take(deed: Deed, kept: Kept, planned: Making['planned']): Promise<void> {
    const current = await this.store.current(deed.em, deed.yardId);
    if (current?.id !== kept.planId) return;
    const plan = keptPlan({ ...kept.making, planned, improved: true });
    if (!sameBefore(current.assignments, plan.assignments, later(deed.now, FROZEN_AHEAD_S))) return;
    await this.store.replace(deed.em, deed.yardId, this.ids.next(), plan);
    deed.tell({ kind: 'plan-repaired' });
  }
}

function sameBefore(one: readonly Assigned[], other: readonly Assigned[], until: EpochS): boolean {
  const near = (assignments: readonly Assigned[]) =>
    assignments.filter(({ startsAt }) => startsAt <= until).map(({ work, personIds, startsAt }) => `${workKey(work)} ${startsAt} ${[...personIds].sort().join()}`).sort().join('\n');
  return near(one) === near(other);
}
