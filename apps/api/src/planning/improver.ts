import { type BeforeApplicationShutdown, Injectable } from '@nestjs/common';
import { type EpochS, later, type YardId } from '@stokehold/domain/quantity';
import { FROZEN_AHEAD_S, type NightWanted } from '@stokehold/scheduling/night';
import { isBetter, type Levels, workKey } from '@stokehold/scheduling/rounds';
import { type Deed, Deeds, Ids, log, Outbox, Workers } from '../platform/index.js';
import { SearchBudget } from './budget.js';
import { keptPlan, type Making } from './kept-plan.js';
import { type Assigned, PlanStore } from './plan.store.js';

/** A plan that was kept, and from what it was found: what a longer search begins with. */
interface Kept {
  readonly yardId: YardId;
  readonly planId: string;
  readonly wanted: Pick<NightWanted, 'problem' | 'before' | 'seed'>;
  readonly making: Omit<Making, 'planned' | 'improved'>;
  readonly levels: Levels;
  readonly planHash: number;
}
interface Search {
  readonly cancel: SharedArrayBuffer;
  readonly done: Promise<void>;
  /** While what was found takes its place. */
  taking?: Promise<void>;
}

/**
 * Looks for a better plan while nobody waits. The plan that people see stays until a better one has passed the checker; a newer
 * fact ends the search. What is found takes the place of the plan it was searched from and of no other.
 */
@Injectable()
export class Improver implements BeforeApplicationShutdown {
  private readonly waiting = new Map<YardId, Kept>();
  private readonly searches = new Map<YardId, Search>();

  constructor(
    private readonly workers: Workers,
    private readonly budget: SearchBudget,
    private readonly store: PlanStore,
    private readonly deeds: Deeds,
    private readonly outbox: Outbox,
    private readonly ids: Ids,
  ) {
    outbox.listen(async (yardId, _, event) => {
      if (event.kind === 'plan-repaired') this.begin(yardId);
    });
  }

  /** A plan to better; the search begins when the screens have been told of it. */
  lookFor(kept: Kept): void {
    if (this.budget.afterwards > 0) this.waiting.set(kept.yardId, kept);
  }

  private begin(yardId: YardId): void {
    const kept = this.waiting.get(yardId);
    if (!kept) return;
    this.waiting.delete(yardId);
    const cancel = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
    const done = this.search(kept, cancel)
      .catch((error: unknown) => log.error({ err: error, yardId: kept.yardId }, 'the search for a better plan broke; the plan stays'))
      .finally(() => {
        if (this.searches.get(kept.yardId)?.cancel === cancel) this.searches.delete(kept.yardId);
      });
    this.searches.set(kept.yardId, { cancel, done });
  }

  /** Ends the search of a yard; what it found so far is not used, unless it is taking its place just now: that is waited for. */
  async cancel(yardId: YardId): Promise<void> {
    this.waiting.delete(yardId);
    const search = this.searches.get(yardId);
    if (!search) return;
    Atomics.store(new Int32Array(search.cancel), 0, 1);
    await search.taking;
  }

  /** Resolves when no search goes on in this yard. */
  async idle(yardId: YardId): Promise<void> {
    await this.searches.get(yardId)?.done;
  }

  async beforeApplicationShutdown(): Promise<void> {
    for (const yardId of this.searches.keys()) await this.cancel(yardId);
    await Promise.all([...this.searches.values()].map(({ done }) => done));
  }

  private async search(kept: Kept, cancel: SharedArrayBuffer): Promise<void> {
    const { yardId, wanted, levels, planHash } = kept;
    const cancelled = () => Atomics.load(new Int32Array(cancel), 0) === 1;
    const iterations = this.budget.afterwards;
    const planned = cancelled() ? undefined : await this.workers.runPatiently('planNight', { ...wanted, iterations, always: true, cancel });
    if (!planned || cancelled()) return;
    if (!planned.ok) {
      log.error({ yardId, faults: planned.faults.slice(0, 20) }, 'a better plan failed its check; the one before it stays');
      return;
    }
    if (planned.search.iterations < iterations && planned.search.iterations > 0) log.warn({ yardId, made: planned.search.iterations, of: iterations }, 'the guard cut a search off');
    if (planned.search.planHash === planHash || !isBetter(planned.plan.levels, levels, wanted.problem)) return;
    const taking = this.deeds.run(yardId, (deed) => this.take(deed, kept, planned));
    const search = this.searches.get(yardId);
    if (search?.cancel === cancel) search.taking = taking.catch(() => undefined);
    await taking;
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
