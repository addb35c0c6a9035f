import { Injectable } from '@nestjs/common';
import type { TaskKind } from '@stokehold/domain/contract';
import { type EpochS, HOUR_S, later, type PersonId, type PitId, type ShiftId, type TaskId, toIso, type YardId } from '@stokehold/domain/quantity';
import { Between, type EntityManager } from 'typeorm';
import { Remembered } from '../platform/index.js';
import { TaskRow } from './task.row.js';

/** A task outside any shift that nobody did leaves the screens this long after its latest time. */
const FORGOTTEN_AFTER_S = 12 * HOUR_S;

const dateOf = (at: EpochS) => new Date(toIso(at));
const secondsOf = (at: Date) => Math.floor(at.getTime() / 1000) as EpochS;

/** A piece of work of the night that is no check and no break. */
export interface Task {
  readonly id: TaskId;
  readonly shiftId: ShiftId | null;
  readonly kind: TaskKind;
  readonly pitId: PitId | null;
  readonly earliestAt: EpochS;
  readonly dueAt: EpochS;
  readonly latestAt: EpochS;
  readonly lengthS: number;
  readonly people: 1 | 2;
  readonly note: string | null;
  readonly doneAt: EpochS | null;
  readonly doneBy: PersonId | null;
}

const taskOf = (row: TaskRow): Task => ({
  id: row.id as TaskId,
  shiftId: row.shiftId as ShiftId | null,
  kind: row.kind,
  pitId: row.pitId as PitId | null,
  earliestAt: secondsOf(row.earliestAt),
  dueAt: secondsOf(row.dueAt),
  latestAt: secondsOf(row.latestAt),
  lengthS: row.lengthS,
  people: row.people,
  note: row.note,
  doneAt: row.doneAt && secondsOf(row.doneAt),
  doneBy: row.doneBy as PersonId | null,
});

@Injectable()
export class TaskStore {
  private readonly remembered = new Remembered<Task[]>();

  async one(em: EntityManager, id: TaskId): Promise<{ readonly yardId: YardId; readonly task: Task } | undefined> {
    const row = await em.findOneBy(TaskRow, { id });
    return row ? { yardId: row.yardId as YardId, task: taskOf(row) } : undefined;
  }

  /** Tasks not done and those done since; none of a shift that is over. By due time, then id. */
  shown(em: EntityManager, yardId: YardId, now: EpochS, doneSince: EpochS): Promise<Task[]> {
    return this.remembered.once(em, `${yardId} ${now} ${doneSince}`, () => this.askShown(em, yardId, now, doneSince));
  }

  private async askShown(em: EntityManager, yardId: YardId, now: EpochS, doneSince: EpochS): Promise<Task[]> {
    const rows = await em
      .createQueryBuilder(TaskRow, 'task')
      .where('task.yardId = :yardId', { yardId })
      .andWhere('(task.doneAt is null or task.doneAt > :doneSince)', { doneSince: toIso(doneSince) })
      .andWhere('not exists (select 1 from shift where shift.id = task.shift_id and shift.ends_at <= :now)', { now: toIso(now) })
      .andWhere('(task.shiftId is not null or task.latestAt > :forgotten)', { forgotten: toIso(later(now, -FORGOTTEN_AFTER_S)) })
      .orderBy('task.dueAt')
      .addOrderBy('task.id')
      .getMany();
    return rows.map(taskOf);
  }

  /** Tasks that somebody did between two instants, in order of time. */
  async doneBetween(em: EntityManager, yardId: YardId, from: EpochS, until: EpochS): Promise<Task[]> {
    const rows = await em.find(TaskRow, { where: { yardId, doneAt: Between(dateOf(from), dateOf(until)) }, order: { doneAt: 'asc', id: 'asc' } });
    return rows.map(taskOf);
  }

  /** The tasks of lighting that a shift made. */
  async lights(em: EntityManager, shiftId: ShiftId): Promise<Task[]> {
    return (await em.find(TaskRow, { where: { shiftId, kind: 'light' }, order: { id: 'asc' } })).map(taskOf);
  }

  async save(em: EntityManager, yardId: YardId, task: Task): Promise<void> {
    const { earliestAt, dueAt, latestAt, doneAt, ...rest } = task;
    this.remembered.forget(em);
    await em.upsert(
      TaskRow,
      { ...rest, yardId, earliestAt: dateOf(earliestAt), dueAt: dateOf(dueAt), latestAt: dateOf(latestAt), doneAt: doneAt === null ? null : dateOf(doneAt) },
      ['id'],
    );
  }

  async remove(em: EntityManager, id: TaskId): Promise<void> {
    this.remembered.forget(em);
    await em.delete(TaskRow, { id });
  }
}
