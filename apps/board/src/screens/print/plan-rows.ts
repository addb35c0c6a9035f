import type { Assignment, PersonOnShift, ShiftView, TaskView, YardState } from '@stokehold/domain/contract';

const HOUR_MS = 3_600_000;

/** One fire over the night: for each hour the looks that fall into it, in their order. */
export interface FireRow {
  readonly pitId: string;
  readonly name: string;
  readonly lightAt: string;
  readonly band: { readonly lowC: number; readonly highC: number };
  readonly hours: readonly (readonly { readonly at: string; readonly people: readonly string[] }[])[];
}

/** The beginning of each hour of a shift that is still to come, ms; hours of real time, so that a night of 11 or 13 has as many. */
export function hoursAhead({ startsAt, endsAt }: Pick<ShiftView, 'startsAt' | 'endsAt'>, nowMs: number): readonly number[] {
  const first = Math.floor(Math.max(Date.parse(startsAt), nowMs) / HOUR_MS) * HOUR_MS;
  return Array.from({ length: Math.max(0, Math.ceil((Date.parse(endsAt) - first) / HOUR_MS)) }, (_, nth) => first + nth * HOUR_MS);
}

/** Tonight's fires with the looks of the plan, hour by hour; in the order in which they are lit, then by name. */
export function fireRows(state: Pick<YardState, 'pits' | 'plan'>, hours: readonly number[]): readonly FireRow[] {
  const looks = (state.plan?.assignments ?? []).flatMap(({ work, people, startsAt }) => (work.kind === 'check' ? [{ pitId: work.pitId, at: startsAt, people }] : []));
  return state.pits
    .flatMap(({ pit, tonight }) => (tonight ? [{ pit, tonight }] : []))
    .sort((a, b) => Date.parse(a.tonight.lightAt) - Date.parse(b.tonight.lightAt) || (a.pit.name < b.pit.name ? -1 : 1))
    .map(({ pit, tonight }) => ({
      pitId: pit.id,
      name: pit.name,
      lightAt: tonight.lightAt,
      band: tonight.band,
      hours: hours.map((from) =>
        looks
          .filter(({ pitId, at }) => pitId === pit.id && Date.parse(at) >= from && Date.parse(at) < from + HOUR_MS)
          .sort((a, b) => Date.parse(a.at) - Date.parse(b.at)),
      ),
    }));
}

export interface TaskRow {
  readonly task: TaskView;
  readonly at: string;
  readonly people: readonly string[];
}

/** What else is to be done, as the plan has it; a task without a place in the plan stands at its due time, with nobody. */
export function taskRows({ tasks, plan }: Pick<YardState, 'tasks' | 'plan'>): readonly TaskRow[] {
  const planned = new Map<string, Assignment>((plan?.assignments ?? []).flatMap((one) => (one.work.kind === 'task' ? [[one.work.taskId, one] as const] : [])));
  return tasks
    .filter(({ doneAt }) => doneAt === null)
    .map((task) => ({ task, at: planned.get(task.id)?.startsAt ?? task.dueAt, people: planned.get(task.id)?.people ?? [] }))
    .sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
}

/** When a person's breaks begin that have not begun yet. */
export const breaksAhead = ({ breaks }: Pick<PersonOnShift, 'breaks'>): readonly string[] =>
  breaks.filter(({ beganAt }) => beganAt === null).map(({ plannedAt, earliestAt }) => plannedAt ?? earliestAt).sort();
