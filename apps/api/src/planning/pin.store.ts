import { Injectable } from '@nestjs/common';
import { type EpochS, epochS, type PersonId, type PitId, type ShiftId, type TaskId, toIso } from '@stokehold/domain/quantity';
import type { Pin, Work } from '@stokehold/scheduling/rounds';
import { type EntityManager, IsNull } from 'typeorm';
import { PinRow } from './pin.row.js';

const columnsOf = (work: Work) => ({
  kind: work.kind,
  pitId: work.kind === 'check' ? work.pitId : null,
  nthCheck: work.kind === 'check' ? work.nth : null,
  taskId: work.kind === 'task' ? work.taskId : null,
  breakId: work.kind === 'break' ? work.breakId : null,
});

function workOf(row: PinRow): Work {
  if (row.kind === 'check') return { kind: 'check', pitId: row.pitId as PitId, nth: row.nthCheck ?? 1 };
  return row.kind === 'task' ? { kind: 'task', taskId: row.taskId as TaskId } : { kind: 'break', breakId: row.breakId ?? '' };
}

@Injectable()
export class PinStore {
  /** What was decided about the work of a shift, in the order in which it was. */
  async of(em: EntityManager, shiftId: ShiftId): Promise<Pin[]> {
    const rows = await em.find(PinRow, { where: { shiftId }, order: { madeAt: 'asc', id: 'asc' } });
    return rows.map((row) => ({
      work: workOf(row),
      ...(row.people && { personIds: row.people as PersonId[] }),
      ...(row.startsAt && { startsAt: epochS(row.startsAt.getTime() / 1000) }),
    }));
  }

  /** Keeps a decision in place of the one before it about the same work. */
  async keep(em: EntityManager, shiftId: ShiftId, pin: Pin, made: { readonly id: string; readonly at: EpochS; readonly by: PersonId | null }): Promise<void> {
    await this.drop(em, shiftId, pin.work);
    await em.insert(PinRow, {
      id: made.id, shiftId, ...columnsOf(pin.work), people: pin.personIds ? [...pin.personIds] : null, startsAt: pin.startsAt === undefined ? null : new Date(toIso(pin.startsAt)),
      madeAt: new Date(toIso(made.at)), madeBy: made.by,
    });
  }

  async drop(em: EntityManager, shiftId: ShiftId, work: Work): Promise<void> {
    const where = Object.fromEntries(Object.entries(columnsOf(work)).map(([name, value]) => [name, value ?? IsNull()]));
    await em.delete(PinRow, { shiftId, ...where });
  }
}
