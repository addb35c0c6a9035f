import { Injectable } from '@nestjs/common';
import type { PlanView, Work } from '@stokehold/domain/contract';
import { type EpochS, type PersonId, type PitId, type ShiftId, type TaskId, toIso, type YardId } from '@stokehold/domain/quantity';
import { type EntityManager } from 'typeorm';
import { PlanRow } from './plan.row.js';

/** An assignment as it is kept. */
export interface Assigned {
  readonly work: Work;
  readonly personIds: readonly PersonId[];
  readonly startsAt: EpochS;
  readonly endsAt: EpochS;
  readonly lateS: number;
  readonly pastLatestS: number;
}

/** A plan that passed its checker, as it is kept and shown. */
export interface KeptPlan extends Pick<PlanView, 'because' | 'unplaced' | 'load' | 'changes' | 'lateWeightedS' | 'boundWeightedS' | 'evenness'> {
  readonly shiftId: ShiftId;
  readonly madeAt: EpochS;
  readonly assignments: readonly Assigned[];
}

/** What a minute has to know of the current plan: whose shift it is, until when, and when its first work should be over. */
export interface Pulse {
  readonly shiftId: ShiftId;
  readonly until: EpochS;
  readonly firstEnd: EpochS | null;
}

/** Plans beyond the current one that are kept to look back at. */
const HISTORY = 11;

interface AssignmentSql {
  readonly kind: Work['kind'];
  readonly pit_id: PitId;
  readonly nth_check: number;
  readonly task_id: TaskId;
  readonly break_id: string;
  readonly people: PersonId[];
  readonly starts_s: EpochS;
  readonly ends_s: EpochS;
  readonly late_s: number;
  readonly past_latest_s: number;
}
interface PlanSql {
  readonly shift_id: ShiftId;
  readonly until_s: EpochS;
  readonly made_s: EpochS;
  readonly cause: PlanView['because'];
  readonly unplaced: PlanView['unplaced'];
  readonly load: PlanView['load'];
  readonly changes: PlanView['changes'];
  readonly late_weighted_s: number;
  readonly bound_weighted_s: number;
  readonly evenness_frac: number | null;
  readonly assignments: readonly AssignmentSql[];
}

// A plan has some hundred assignments and is made some hundred times a night: one question reads it, one statement writes it.
const CURRENT = `
select shift_id, extract(epoch from shift.ends_at)::float8 as until_s, extract(epoch from made_at)::float8 as made_s, cause, unplaced, load, changes,
  late_weighted_s, bound_weighted_s, evenness_frac,
  (select coalesce(json_agg(json_build_object('kind', kind, 'pit_id', pit_id, 'nth_check', nth_check, 'task_id', task_id, 'break_id', break_id,
      'people', people, 'starts_s', extract(epoch from a.starts_at)::bigint, 'ends_s', extract(epoch from a.ends_at)::bigint, 'late_s', late_s,
      'past_latest_s', past_latest_s) order by nth), '[]')
    from assignment a where plan_id = plan.id) as assignments
from plan join shift on shift.id = shift_id where plan.yard_id = $1 and is_current`;
const INSERT = `
with made as (
  insert into plan (id, yard_id, shift_id, made_at, is_current, cause, unplaced, load, changes, late_weighted_s, bound_weighted_s, evenness_frac)
  values ($1, $2, $3, $4, true, $5::jsonb, $6::jsonb, $7::jsonb, $8::jsonb, $9, $10, $11) returning id
)
insert into assignment (plan_id, nth, kind, pit_id, nth_check, task_id, break_id, people, starts_at, ends_at, late_s, past_latest_s)
select made.id, nth, kind, pit_id, nth_check, task_id, break_id, people, to_timestamp(starts_s), to_timestamp(ends_s), late_s, past_latest_s
from made, jsonb_to_recordset($12::jsonb) as row (nth integer, kind text, pit_id uuid, nth_check integer, task_id uuid, break_id uuid,
  people uuid[], starts_s float8, ends_s float8, late_s integer, past_latest_s integer)`;

function workOf(row: AssignmentSql): Work {
  if (row.kind === 'check') return { kind: 'check', pitId: row.pit_id, nth: row.nth_check };
  return row.kind === 'task' ? { kind: 'task', taskId: row.task_id } : { kind: 'break', breakId: row.break_id };
}

const assignedOf = (row: AssignmentSql): Assigned => ({
  work: workOf(row), personIds: row.people, startsAt: row.starts_s, endsAt: row.ends_s, lateS: row.late_s, pastLatestS: row.past_latest_s,
});

const rowOf = ({ work, personIds, startsAt, endsAt, lateS, pastLatestS }: Assigned, nth: number): Partial<AssignmentSql> & { readonly nth: number } => ({
  nth, kind: work.kind, people: [...personIds], starts_s: startsAt, ends_s: endsAt, late_s: lateS, past_latest_s: pastLatestS,
  ...(work.kind === 'check' && { pit_id: work.pitId, nth_check: work.nth }),
  ...(work.kind === 'task' && { task_id: work.taskId as TaskId }),
  ...(work.kind === 'break' && { break_id: work.breakId }),
});

@Injectable()
export class PlanStore {
  /** The plan that people see, of a running shift or of one that is over. */
  async current(em: EntityManager, yardId: YardId): Promise<(KeptPlan & { readonly until: EpochS }) | undefined> {
    const [row] = (await em.query(CURRENT, [yardId])) as PlanSql[];
    return row && {
      shiftId: row.shift_id,
      until: row.until_s,
      madeAt: row.made_s,
      because: row.cause,
      unplaced: row.unplaced,
      load: row.load,
      changes: row.changes,
      lateWeightedS: row.late_weighted_s,
      boundWeightedS: row.bound_weighted_s,
      evenness: row.evenness_frac,
      assignments: row.assignments.map(assignedOf),
    };
  }

  async pulse(em: EntityManager, yardId: YardId): Promise<Pulse | undefined> {
    const [row] = (await em.query(
      `select shift_id, extract(epoch from shift.ends_at)::float8 as until_s,
         (select extract(epoch from min(ends_at))::float8 from assignment where plan_id = plan.id) as first_end_s
       from plan join shift on shift.id = shift_id where plan.yard_id = $1 and is_current`,
      [yardId],
    )) as { shift_id: ShiftId; until_s: EpochS; first_end_s: EpochS | null }[];
    return row && { shiftId: row.shift_id, until: row.until_s, firstEnd: row.first_end_s };
  }

  /** The plan from now on; the one before it becomes history, and old history goes. */
  async replace(em: EntityManager, yardId: YardId, id: string, plan: KeptPlan): Promise<void> {
    await em.query(
      `with forgotten as (delete from plan where yard_id = $1 and not is_current
         and id not in (select id from plan where yard_id = $1 order by made_at desc, id desc limit $2))
       update plan set is_current = false where yard_id = $1 and is_current`,
      [yardId, HISTORY],
    );
    const { shiftId, madeAt, because, unplaced, load, changes, lateWeightedS, boundWeightedS, evenness, assignments } = plan;
    await em.query(INSERT, [
      id, yardId, shiftId, toIso(madeAt), JSON.stringify(because), JSON.stringify(unplaced), JSON.stringify(load), JSON.stringify(changes),
      lateWeightedS, boundWeightedS, evenness, JSON.stringify(assignments.map(rowOf)),
    ]);
  }

  /** No plan is current any more; says whether one was. */
  async retire(em: EntityManager, yardId: YardId): Promise<boolean> {
    const { affected } = await em.update(PlanRow, { yardId, isCurrent: true }, { isCurrent: false });
    return (affected ?? 0) > 0;
  }
}
