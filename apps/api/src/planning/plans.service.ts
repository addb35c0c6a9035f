import { Injectable } from '@nestjs/common';
import type { PlanView } from '@stokehold/domain/contract';
import { type EpochS, type PersonId, type YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { Clock } from '../platform/index.js';
import { planView } from './plan.view.js';
import { type Assigned, type KeptPlan, PlanStore } from './plan.store.js';

/** The rounds as they are planned now. */
@Injectable()
export class Plans {
  constructor(
    private readonly store: PlanStore,
    private readonly clock: Clock,
  ) {}

  /** The current plan, or null when no shift runs. */
  async view(em: EntityManager, yardId: YardId): Promise<PlanView | null> {
    const plan = await this.current(em, yardId);
    return plan ? planView(plan) : null;
  }

  /** What one person does next and after it, in order of time. */
  async assignmentsOf(em: EntityManager, yardId: YardId, personId: PersonId): Promise<readonly Assigned[]> {
    const plan = await this.current(em, yardId);
    return (plan?.assignments ?? []).filter(({ personIds }) => personIds.includes(personId));
  }

  /** When the plan wants each break to begin; for Shifts.view. */
  async breakTimes(em: EntityManager, yardId: YardId): Promise<ReadonlyMap<string, EpochS>> {
    const plan = await this.current(em, yardId);
    return new Map((plan?.assignments ?? []).flatMap(({ work, startsAt }) => (work.kind === 'break' ? [[work.breakId, startsAt] as const] : [])));
  }

  private async current(em: EntityManager, yardId: YardId): Promise<KeptPlan | undefined> {
    const plan = await this.store.current(em, yardId);
    return plan && plan.until > this.clock.now(yardId) ? plan : undefined;
  }
}
