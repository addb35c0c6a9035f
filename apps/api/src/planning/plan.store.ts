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

function workOf(row: AssignmentSql): Work {
  if (row.kind === 'check') return { kind: 'check', pitId: row.pit_id, nth: row.nth_check };
  return row.kind === 'task' ? { kind: 'task', taskId: row.task_id } : { kind: 'break', breakId: row.break_id };
}

const assignedOf = (row: AssignmentSql): Assigned => ({
  work: workOf(row), personIds: row.people, startsAt: row.starts_s, endsAt: row.ends_s, lateS: row.late_s, pastLatestS: row.past_latest_s,
});

@Injectable()
export class PlanStore {
  async current(em: EntityManager, yardId: YardId): Promise<KeptPlan | undefined> {
    const row = await em.findOneBy(PlanRow, { yardId, isCurrent: true });
    if (!row) return undefined;
    const assignments = (await em.query(
      `select kind, pit_id, nth_check, task_id, break_id, people, extract(epoch from starts_at)::float8 as starts_s,
         extract(epoch from ends_at)::float8 as ends_s, late_s, past_latest_s
       from assignment where plan_id = $1 order by nth`,
      [row.id],
    )) as AssignmentSql[];
    return {
      shiftId: row.shiftId as ShiftId,
      madeAt: Math.floor(row.madeAt.getTime() / 1000) as EpochS,
      because: row.cause,
      unplaced: row.unplaced,
      load: row.load,
      changes: row.changes,
      lateWeightedS: row.lateWeightedS,
      boundWeightedS: row.boundWeightedS,
      evenness: row.evennessFrac,
      assignments: assignments.map(assignedOf),
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
    await this.retire(em, yardId);
    const { because, madeAt, evenness, assignments, unplaced, load, changes, ...rest } = plan;
    await em.query(
      `insert into plan (id, yard_id, shift_id, made_at, is_current, cause, unplaced, load, changes, late_weighted_s, bound_weighted_s, evenness_frac)
       values ($1, $2, $3, $4, true, $5::jsonb, $6::jsonb, $7::jsonb, $8::jsonb, $9, $10, $11)`,
      [
        id, yardId, rest.shiftId, toIso(madeAt), JSON.stringify(because), JSON.stringify(unplaced), JSON.stringify(load), JSON.stringify(changes),
        rest.lateWeightedS, rest.boundWeightedS, evenness,
      ],
    );
    await this.addAssignments(em, id, assignments);
    await em.query('delete from plan where yard_id = $1 and id not in (select id from plan where yard_id = $1 order by is_current desc, made_at desc, id desc limit $2)', [
      yardId, HISTORY + 1,
    ]);
  }

  /** No plan is current any more; says whether one was. */
  async retire(em: EntityManager, yardId: YardId): Promise<boolean> {
    const { affected } = await em.update(PlanRow, { yardId, isCurrent: true }, { isCurrent: false });
    return (affected ?? 0) > 0;
  }

  /** One statement for the whole night: a plan has some hundred assignments and is made some hundred times. */
  private async addAssignments(em: EntityManager, planId: string, assignments: readonly Assigned[]): Promise<void> {
    const rows = assignments.map(({ work, personIds, startsAt, endsAt, lateS, pastLatestS }, nth) => ({
      nth, kind: work.kind, people: personIds, starts_s: startsAt, ends_s: endsAt, late_s: lateS, past_latest_s: pastLatestS,
      ...(work.kind === 'check' && { pit_id: work.pitId, nth_check: work.nth }),
      ...(work.kind === 'task' && { task_id: work.taskId }),
      ...(work.kind === 'break' && { break_id: work.breakId }),
    }));
    await em.query(
      `insert into assignment (plan_id, nth, kind, pit_id, nth_check, task_id, break_id, people, starts_at, ends_at, late_s, past_latest_s)
       select $1, nth, kind, pit_id, nth_check, task_id, break_id, people, to_timestamp(starts_s), to_timestamp(ends_s), late_s, past_latest_s
       from jsonb_to_recordset($2::jsonb) as row (nth integer, kind text, pit_id uuid, nth_check integer, task_id uuid, break_id uuid,
         people uuid[], starts_s float8, ends_s float8, late_s integer, past_latest_s integer)`,
      [planId, JSON.stringify(rows)],
    );
  }
}
