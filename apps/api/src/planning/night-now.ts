import { Injectable } from '@nestjs/common';
import type { Work } from '@stokehold/domain/contract';
import { type EpochS, seedFrom, type YardId } from '@stokehold/domain/quantity';
import type { RunningShift } from '@stokehold/domain/shift';
import { type NightFacts, planShown, problemOfNight } from '@stokehold/scheduling/night';
import { type RoundPlan, type RoundProblem, workKey } from '@stokehold/scheduling/rounds';
import type { EntityManager } from 'typeorm';
import { refused } from '../platform/index.js';
import { Shifts } from '../shifts/index.js';
import { NightGathering } from './night-facts.js';
import { type CurrentPlan, PlanStore } from './plan.store.js';
import { unplacedOf } from './plan.view.js';

/** The running night as a problem, with the plan that people see. */
export interface NightNow {
  readonly shift: RunningShift;
  readonly current: CurrentPlan;
  readonly facts: NightFacts;
  readonly problem: RoundProblem;
  readonly plan: RoundPlan;
  readonly seed: number;
}
interface Moment {
  readonly em: EntityManager;
  readonly yardId: YardId;
  readonly now: EpochS;
}

/** Reads the running night for those who ask about it or decide something in it. */
@Injectable()
export class Nights {
  constructor(
    private readonly shifts: Shifts,
    private readonly store: PlanStore,
    private readonly gathering: NightGathering,
  ) {}

  /** Refuses when no shift runs. */
  async now({ em, yardId, now }: Moment): Promise<NightNow> {
    const shift = await this.shifts.running(em, yardId, now);
    const current = shift && (await this.store.current(em, yardId));
    if (!shift || current?.shiftId !== shift.id) return refused('no-plan', 'No shift runs now, so there is no plan. Plan a shift, or wait until three hours before it begins.');
    const facts = await this.gathering.facts({ em, yardId, now }, shift, current.assignments);
    return { shift, current, facts, problem: problemOfNight(facts), plan: planShown(current.assignments, unplacedOf(current)), seed: seedFrom('rounds', yardId) };
  }
}

/** Refuses work that is on the night no more, or never was. */
export function requireWork({ plan }: Pick<NightNow, 'plan'>, work: Work): void {
  const key = workKey(work);
  const known = [...plan.assignments, ...plan.unplaced].some((one) => workKey(one.work) === key);
  if (!known) refused('work-unknown', 'This work is not on the night any more. Look at the plan again and choose from what is on it.');
}
