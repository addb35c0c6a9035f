import { Injectable } from '@nestjs/common';
import type { EventOf } from '@stokehold/domain/contract';
import { isOverrun, isWorthForDue } from '@stokehold/scheduling/night';
import { Fires } from '../pits/index.js';
import type { Deed } from '../platform/index.js';
import { Shifts, Tasks } from '../shifts/index.js';
import { PlanStore } from './plan.store.js';
import { type Because, Planner } from './planner.js';

const because = (cause: Because['cause'], about: Partial<Because> = {}): Because => ({ cause, pitId: null, personId: null, ...about });

/** Which facts make the plan anew. */
@Injectable()
export class PlanningReactions {
  constructor(
    private readonly planner: Planner,
    private readonly store: PlanStore,
    private readonly shifts: Shifts,
    private readonly tasks: Tasks,
    private readonly fires: Fires,
  ) {}

  /** A check was made: the next one is planned. Otherwise a due time must have moved so far that the plan no longer suits it. */
  async onDueMoved({ pitIds, because: cause }: EventOf<'due-moved'>, deed: Deed): Promise<void> {
    const [pitId] = pitIds;
    if (cause === 'check' || cause === 'task' || (await this.isWorth(pitIds, deed))) {
      await this.planner.repair(deed, because(cause, pitIds.length === 1 && pitId ? { pitId } : {}));
    }
  }

  onShift(_: EventOf<'shift-planned'>, deed: Deed): Promise<void> {
    return this.planner.repair(deed, because('shift'));
  }

  onPresence({ personId }: EventOf<'presence-reported'>, deed: Deed): Promise<void> {
    return this.planner.repair(deed, because('presence', { personId }));
  }

  onBreak({ personId }: EventOf<'break-reported'>, deed: Deed): Promise<void> {
    return this.planner.repair(deed, because('break', { personId }));
  }

  async onTask({ taskId }: EventOf<'task-added' | 'task-finished'>, deed: Deed): Promise<void> {
    const task = await this.tasks.one(deed.em, deed.yardId, taskId);
    await this.planner.repair(deed, because('task', { pitId: task?.pitId ?? null, personId: task?.doneBy ?? null }));
  }

  onPinned({ personId }: EventOf<'work-pinned'>, deed: Deed): Promise<void> {
    return this.planner.repair(deed, because('by-hand', { personId: personId ?? null }));
  }

  /** Somebody's skills, a pit's place or the way to it changed. */
  onSetUp(event: EventOf<'yard-set-up' | 'pit-set-up' | 'crew-set-up'>, deed: Deed): Promise<void> {
    const about = event.kind === 'pit-set-up' ? { pitId: event.pitId } : event.kind === 'crew-set-up' ? { personId: event.personId } : {};
    return this.planner.repair(deed, because(event.kind === 'pit-set-up' ? 'pit' : 'shift', about));
  }

  /** A minute makes a plan only where there is none yet, where its shift is over, or where work ran over its time. */
  async onMinute(_: EventOf<'minute-passed'>, deed: Deed): Promise<void> {
    const plan = await this.store.current(deed.em, deed.yardId);
    if (!plan || plan.until <= deed.now || isOverrun(plan.assignments, deed.now)) await this.planner.repair(deed, because('minute'));
  }

  private async isWorth(pitIds: EventOf<'due-moved'>['pitIds'], deed: Deed): Promise<boolean> {
    const { em, yardId, now } = deed;
    const [plan, shift, dues] = await Promise.all([this.store.current(em, yardId), this.shifts.running(em, yardId, now), this.fires.dues(em, yardId)]);
    if (!plan || plan.shiftId !== shift?.id) return true;
    const fires = dues.filter(({ pitId }) => pitIds.includes(pitId));
    return isWorthForDue({ fires, shown: plan.assignments, now, until: shift.until });
  }
}
