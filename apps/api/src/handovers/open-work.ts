import { Injectable } from '@nestjs/common';
import type { Handover, PlanView } from '@stokehold/domain/contract';
import { type EpochS, fromIso, HOUR_S, later, type PersonId, toIso } from '@stokehold/domain/quantity';
import { type FireToHand, openChecks, type RunningShift } from '@stokehold/domain/shift';
import { Fires } from '../pits/index.js';
import { Plans } from '../planning/index.js';
import type { Deed } from '../platform/index.js';
import { Shifts, Tasks } from '../shifts/index.js';

/** What people were told for the next hours goes over with the night. */
const PROMISED_S = 2 * HOUR_S;
/** A shift that begins later than this is not the one handed over to. */
const NEXT_WITHIN_S = 24 * HOUR_S;

interface Names {
  readonly pit: (id: string | null) => string | null;
  readonly person: (id: string) => string;
}
interface Handing {
  readonly by: PersonId | null;
  readonly to: PersonId | null;
  readonly names: Names;
}

/** What is still open when a night is handed over: each check with its owner on one side, and what was promised. */
@Injectable()
export class OpenWork {
  constructor(
    private readonly shifts: Shifts,
    private readonly fires: Fires,
    private readonly plans: Plans,
    private readonly tasks: Tasks,
  ) {}

  async now(deed: Pick<Deed, 'em' | 'yardId' | 'now'>, handing: Handing): Promise<Pick<Handover, 'openChecks' | 'promised'>> {
    const { em, yardId, now } = deed;
    const shift = await this.shifts.running(em, yardId, now);
    const plan = await this.plans.view(em, yardId);
    if (!shift) return { openChecks: [], promised: [] };
    return { openChecks: await this.checks(deed, shift, plan, handing), promised: await this.promised(deed, plan, handing.names) };
  }

  private async checks({ em, yardId, now }: Pick<Deed, 'em' | 'yardId' | 'now'>, shift: RunningShift, plan: PlanView | null, { by, to, names }: Handing): Promise<Handover['openChecks']> {
    const dues = await this.fires.dues(em, yardId);
    const burning = dues.filter(({ pitId }) => shift.pits.some((pit) => pit.pitId === pitId));
    const next = (await this.shifts.between(em, yardId, now, later(shift.until, NEXT_WITHIN_S))).find(({ from, id }) => id !== shift.id && from >= shift.until);
    const nextCrew = [...(next?.people ?? [])].filter(({ skills }) => skills.includes('fire')).sort((one, other) => one.startsAt - other.startsAt).map(({ id }) => id);
    const fires = burning.map(({ pitId, dueAt, latestSafeAt }): FireToHand => ({ pitId, dueAt, latestSafeAt, ...plannedFor(plan, pitId) }));
    return openChecks(fires, { until: shift.until, by, to, nextCrew }).map(({ pitId, dueAt, latestSafeAt, side, ownerId }) => ({
      pit: names.pit(pitId) ?? '', dueAt: toIso(dueAt), latestSafeAt: toIso(latestSafeAt), side, owner: ownerId === null ? null : names.person(ownerId),
    }));
  }

  private async promised({ em, yardId, now }: Pick<Deed, 'em' | 'yardId' | 'now'>, plan: PlanView | null, names: Names): Promise<Handover['promised']> {
    const open = await this.tasks.open(em, yardId, now);
    const until = later(now, PROMISED_S);
    return (plan?.assignments ?? []).filter(({ startsAt }) => fromIso(startsAt) < until).flatMap(({ work, people, startsAt }): Handover['promised'] => {
      const told = { people: people.map(names.person), at: startsAt };
      if (work.kind === 'check') return [{ work: 'check' as const, pit: names.pit(work.pitId), ...told }];
      const task = work.kind === 'task' ? open.find(({ id }) => id === work.taskId) : undefined;
      return task ? [{ work: task.kind, pit: names.pit(task.pitId), ...told }] : [];
    });
  }
}

function plannedFor(plan: PlanView | null, pitId: string): Pick<FireToHand, 'planned'> {
  const first = plan?.assignments.find(({ work }) => work.kind === 'check' && work.pitId === pitId);
  const [personId] = first?.people ?? [];
  return first && personId ? { planned: { personId, startsAt: fromIso(first.startsAt) as EpochS } } : {};
}
