import { Injectable } from '@nestjs/common';
import type { AddTask, Done, RouteInput, Routes, TaskView } from '@stokehold/domain/contract';
import { type EpochS, fromIso, HOUR_S, later, type PitId, type ShiftId, type TaskId, toIso, type YardId } from '@stokehold/domain/quantity';
import { deviceTime, type KeptShift, lightTask } from '@stokehold/domain/shift';
import type { EntityManager } from 'typeorm';
import { type Actor, Commands, type Deed, Ids, refused } from '../platform/index.js';
import { Yards } from '../yards/index.js';
import { ShiftStore } from './shift.store.js';
import { type Task, TaskStore } from './task.store.js';

/** How long a task stays on the screens after it was done. */
const SHOWN_AFTER_DONE_S = 2 * HOUR_S;

const taskView = ({ shiftId: _shiftId, ...task }: Task): TaskView => ({
  ...task,
  earliestAt: toIso(task.earliestAt),
  dueAt: toIso(task.dueAt),
  latestAt: toIso(task.latestAt),
  doneAt: task.doneAt === null ? null : toIso(task.doneAt),
});

/** Work as the wood pull wants it: splits brought to a cart, or cut to lie across. */
export interface PulledTask {
  readonly kind: 'haul' | 'trim';
  readonly pitId: PitId;
  readonly earliestAt: EpochS;
  readonly dueAt: EpochS;
  readonly latestAt: EpochS;
  readonly lengthS: number;
  readonly note: string;
}

/** The work of the night beside checks and breaks. */
@Injectable()
export class Tasks {
  constructor(
    private readonly commands: Commands,
    private readonly store: TaskStore,
    private readonly shifts: ShiftStore,
    private readonly yards: Yards,
    private readonly ids: Ids,
  ) {}

  add(actor: Actor, command: AddTask): Promise<Done> {
    return this.commands.run(actor, 'add-task', command, async (deed) => {
      const { key: _key, note, ...wanted } = command;
      const times = { earliestAt: fromIso(command.earliestAt), dueAt: fromIso(command.dueAt), latestAt: fromIso(command.latestAt) };
      if (times.dueAt < times.earliestAt || times.latestAt < times.dueAt) refused('times-out-of-order', 'A task begins at its earliest, is due, and has its latest start, in this order.');
      const pits = command.pitId ? await this.yards.pits(deed.em, deed.yardId) : [];
      if (command.pitId && !pits.some(({ id }) => id === command.pitId)) refused('pit-unknown', 'This pit does not stand in this yard. Choose one from the yard plan.');
      const known = await this.store.one(deed.em, command.id);
      if (known) this.requireOpen(known, deed);
      const shift = (await this.shifts.between(deed.em, deed.yardId, times.dueAt, times.dueAt)).find(({ from, until }) => from <= times.dueAt && times.dueAt < until);
      await this.store.save(deed.em, deed.yardId, { ...wanted, ...times, shiftId: shift?.id ?? null, note: note ?? null, doneAt: null, doneBy: null });
      deed.tell({ kind: 'task-added', taskId: command.id });
      return { done: true };
    });
  }

  finish(actor: Actor, command: RouteInput<Routes['finishTask']>): Promise<Done> {
    return this.commands.run(actor, 'finish-task', command, async (deed) => {
      const { taskId, doneAt, sentAt } = command;
      const known = (await this.store.one(deed.em, taskId)) ?? refused('task-unknown', 'There is no such task. Open the night to see what is to do.');
      this.requireOpen(known, deed);
      const done = deviceTime({ deviceAt: fromIso(doneAt), ...(sentAt && { sentAt: fromIso(sentAt) }), arrivedAt: deed.now, aheadS: deed.aheadS });
      const at = done.at < deed.now ? done.at : deed.now;
      await this.store.save(deed.em, deed.yardId, { ...known.task, doneAt: at, doneBy: actor.person?.id ?? null });
      deed.tell({ kind: 'task-finished', taskId });
      return { done: true };
    });
  }

  /** A light task for each pit of the shift that is still to be lit, at its light-up time; a task that is done stays. */
  async lightUp(deed: Deed, shift: KeptShift): Promise<void> {
    const lights = await this.store.lights(deed.em, shift.id);
    for (const { pitId, lightAt } of shift.pits) {
      const times = lightTask(lightAt, shift.from);
      const before = lights.find((task) => task.pitId === pitId);
      if (!times || before?.doneAt) continue;
      const id = before?.id ?? this.ids.next<TaskId>();
      await this.store.save(deed.em, deed.yardId, {
        ...times, id, shiftId: shift.id, kind: 'light', pitId, people: 1, note: before?.note ?? null, doneAt: null, doneBy: null,
      });
    }
    const burns = ({ pitId }: Task) => shift.pits.some((pit) => pit.pitId === pitId && lightTask(pit.lightAt, shift.from) !== undefined);
    for (const task of lights.filter((one) => !one.doneAt && !burns(one))) await this.store.remove(deed.em, task.id);
  }

  /** Work of a wood pull in place of that of the pull before that nobody has done; work for pits that stay as they were is left. */
  async replacePulled(deed: Deed, shiftId: ShiftId, before: readonly string[], pulled: readonly PulledTask[], staying: ReadonlySet<PitId>): Promise<{ readonly left: readonly TaskId[]; readonly added: readonly TaskId[] }> {
    const left: TaskId[] = [];
    for (const id of before as readonly TaskId[]) {
      const known = (await this.store.one(deed.em, id))?.task;
      if (!known || known.doneAt !== null) continue;
      if (known.pitId !== null && staying.has(known.pitId)) left.push(id);
      else await this.store.remove(deed.em, id);
    }
    const added = pulled.map((task) => ({ ...task, id: this.ids.next<TaskId>() }));
    for (const { id, kind, pitId, earliestAt, dueAt, latestAt, lengthS, note } of added) {
      await this.store.save(deed.em, deed.yardId, { id, shiftId, kind, pitId, earliestAt, dueAt, latestAt, lengthS, people: 1, note, doneAt: null, doneBy: null });
    }
    const told = added[0]?.id ?? before[0];
    if (told !== undefined) deed.tell({ kind: 'task-added', taskId: told as TaskId });
    return { left, added: added.map(({ id }) => id) };
  }

  /** What is still to do, by due time. */
  async open(em: EntityManager, yardId: YardId, now: EpochS): Promise<Task[]> {
    return this.store.shown(em, yardId, now, now);
  }

  /** What is still to do, and what was done since. */
  ofNight(em: EntityManager, yardId: YardId, now: EpochS, since: EpochS): Promise<Task[]> {
    return this.store.shown(em, yardId, now, since);
  }

  doneBetween(em: EntityManager, yardId: YardId, from: EpochS, until: EpochS): Promise<Task[]> {
    return this.store.doneBetween(em, yardId, from, until);
  }

  /** What is still to do, and what was done in the last two hours. */
  async view(em: EntityManager, yardId: YardId, now: EpochS): Promise<TaskView[]> {
    return (await this.store.shown(em, yardId, now, later(now, -SHOWN_AFTER_DONE_S))).map(taskView);
  }

  /** The task, of this yard, done or not. */
  async one(em: EntityManager, yardId: YardId, id: TaskId): Promise<Task | undefined> {
    const known = await this.store.one(em, id);
    return known?.yardId === yardId ? known.task : undefined;
  }

  private requireOpen({ yardId, task }: { readonly yardId: YardId; readonly task: Task }, deed: Deed): void {
    if (yardId !== deed.yardId) refused('task-unknown', 'There is no such task in this yard.');
    if (task.doneAt !== null) refused('task-done-already', 'This task is done already.', { doneAt: toIso(task.doneAt) });
  }
}
