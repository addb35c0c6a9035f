import { Injectable } from '@nestjs/common';
import type { PlanView, Work } from '@stokehold/domain/contract';
import { type EpochS, type PersonId, type PitId, type ShiftId, type TaskId, toIso, type YardId } from '@stokehold/domain/quantity';
import { type EntityManager } from 'typeorm';
import { holdYard, Remembered } from '../platform/index.js';
import { type KeptSearch, PlanRow } from './plan.row.js';

/** An assignment as it is kept. */
export interface Assigned {
  readonly work: Work;
  readonly personIds: readonly PersonId[];
  readonly startsAt: EpochS;
  readonly endsAt: EpochS;
  readonly lateS: number;
  readonly pastLatestS: number;
  readonly earlyS: number;
  readonly dueAt?: EpochS;
  readonly pinned: boolean;
}

/** A plan that passed its checker, as it is kept and shown. */
export interface KeptPlan extends Pick<PlanView, 'because' | 'unplaced' | 'load' | 'changes' | 'decisions' | 'lateWeightedS' | 'boundWeightedS' | 'evenness'> {
  readonly shiftId: ShiftId;
  readonly madeAt: EpochS;
  readonly assignments: readonly Assigned[];
  readonly search: KeptSearch;
}

/** The plan that people see. */
export interface CurrentPlan extends KeptPlan {
  readonly id: string;
  readonly until: EpochS;
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
  readonly early_s: number;
  readonly due_s: EpochS | null;
  readonly pinned: boolean;
}
interface PlanSql {
  readonly search: KeptSearch;
  readonly shift_id: ShiftId;
  readonly made_s: EpochS;
  readonly cause: PlanView['because'];
  readonly unplaced: PlanView['unplaced'];
  readonly load: PlanView['load'];
  readonly changes: PlanView['changes'];
  readonly decisions: PlanView['decisions'];
  readonly late_weighted_s: number;
  readonly bound_weighted_s: number;
  readonly evenness_frac: number | null;
  readonly assignments: readonly AssignmentSql[];
}

// A plan has some hundred assignments and is made some hundred times a night: one question reads it, one statement writes it.
const CONTENT = `
select search, shift_id, extract(epoch from made_at)::float8 as made_s, cause, unplaced, load, changes, decisions,
  late_weighted_s, bound_weighted_s, evenness_frac,
  (select coalesce(json_agg(json_build_object('kind', kind, 'pit_id', pit_id, 'nth_check', nth_check, 'task_id', task_id, 'break_id', break_id,
      'people', people, 'starts_s', extract(epoch from a.starts_at)::bigint, 'ends_s', extract(epoch from a.ends_at)::bigint, 'late_s', late_s,
      'past_latest_s', past_latest_s, 'early_s', early_s, 'due_s', extract(epoch from due_at)::bigint, 'pinned', pinned) order by nth), '[]')
    from assignment a where plan_id = plan.id) as assignments
from plan where id = $1`;
const INSERT = `
with made as (
  insert into plan (id, yard_id, shift_id, made_at, is_current, cause, unplaced, load, changes, late_weighted_s, bound_weighted_s, evenness_frac, search, decisions)
  values ($1, $2, $3, $4, true, $5::jsonb, $6::jsonb, $7::jsonb, $8::jsonb, $9, $10, $11, $13::jsonb, $14::jsonb) returning id
)
insert into assignment (plan_id, nth, kind, pit_id, nth_check, task_id, break_id, people, starts_at, ends_at, late_s, past_latest_s,
  early_s, due_at, pinned)
select made.id, nth, kind, pit_id, nth_check, task_id, break_id, people, to_timestamp(starts_s), to_timestamp(ends_s), late_s, past_latest_s,
  early_s, to_timestamp(due_s), pinned
from made, jsonb_to_recordset($12::jsonb) as row (nth integer, kind text, pit_id uuid, nth_check integer, task_id uuid, break_id uuid,
  people uuid[], starts_s float8, ends_s float8, late_s integer, past_latest_s integer,
  early_s integer, due_s float8, pinned boolean)`;

function workOf(row: AssignmentSql): Work {
  if (row.kind === 'check') return { kind: 'check', pitId: row.pit_id, nth: row.nth_check };
  return row.kind === 'task' ? { kind: 'task', taskId: row.task_id } : { kind: 'break', breakId: row.break_id };
}

const assignedOf = (row: AssignmentSql): Assigned => ({
  work: workOf(row), personIds: row.people, startsAt: row.starts_s, endsAt: row.ends_s, lateS: row.late_s, pastLatestS: row.past_latest_s,
  earlyS: row.early_s, pinned: row.pinned, ...(row.due_s !== null && { dueAt: row.due_s }),
});

const rowOf = ({ work, personIds, startsAt, endsAt, lateS, pastLatestS, earlyS, dueAt, pinned }: Assigned, nth: number): Partial<AssignmentSql> & { readonly nth: number } => ({
  nth, kind: work.kind, people: [...personIds], starts_s: startsAt, ends_s: endsAt, late_s: lateS, past_latest_s: pastLatestS,
  early_s: earlyS, due_s: dueAt ?? null, pinned,
  ...(work.kind === 'check' && { pit_id: work.pitId, nth_check: work.nth }),
  ...(work.kind === 'task' && { task_id: work.taskId as TaskId }),
  ...(work.kind === 'break' && { break_id: work.breakId }),
});

@Injectable()
export class PlanStore {
  private readonly remembered = new Remembered<Pick<CurrentPlan, 'id' | 'until'>[]>(['plan-repaired', 'shift-planned']);
  /** What a plan says never changes, only which one is current does: the one that was read or made last is not read again. */
  private readonly known = new Map<YardId, { readonly id: string; readonly plan: KeptPlan }>();

  /** The plan that people see, of a running shift or of one that is over. */
  async current(em: EntityManager, yardId: YardId): Promise<CurrentPlan | undefined> {
    const [current] = await this.remembered.once(em, yardId, () => em.query(
      `select plan.id, extract(epoch from shift.ends_at)::float8 as until from plan join shift on shift.id = shift_id where plan.yard_id = $1 and is_current`,
      [yardId],
    ));
    return current && { ...current, ...(await this.content(em, yardId, current.id)) };
  }

  /** The next question is asked anew: another deed may have put a plan in its place meanwhile. */
  lookAgain(em: EntityManager): void {
    this.remembered.forget(em);
  }

  private async content(em: EntityManager, yardId: YardId, id: string): Promise<KeptPlan> {
    const known = this.known.get(yardId);
    if (known?.id === id) return known.plan;
    const [row] = (await em.query(CONTENT, [id])) as [PlanSql];
    const plan = {
      shiftId: row.shift_id,
      search: row.search,
      madeAt: row.made_s,
      because: row.cause,
      unplaced: row.unplaced,
      load: row.load,
      changes: row.changes,
      decisions: row.decisions,
      lateWeightedS: row.late_weighted_s,
      boundWeightedS: row.bound_weighted_s,
      evenness: row.evenness_frac,
      assignments: row.assignments.map(assignedOf),
    };
    this.known.set(yardId, { id, plan });
    return plan;
  }

  /** The plan from now on; the one before it becomes history, and old history goes. */
  async replace(em: EntityManager, yardId: YardId, id: string, plan: KeptPlan): Promise<void> {
    const held = holdYard(em, yardId);
    const past = em.query(
      `with forgotten as (delete from plan where yard_id = $1 and not is_current
         and id not in (select id from plan where yard_id = $1 order by made_at desc, id desc limit $2))
       update plan set is_current = false where yard_id = $1 and is_current`,
      [yardId, HISTORY],
    );
    const { shiftId, madeAt, because, unplaced, load, changes, decisions, lateWeightedS, boundWeightedS, evenness, assignments, search } = plan;
    const made = em.query(INSERT, [
      id, yardId, shiftId, toIso(madeAt), JSON.stringify(because), JSON.stringify(unplaced), JSON.stringify(load), JSON.stringify(changes),
      lateWeightedS, boundWeightedS, evenness, JSON.stringify(assignments.map(rowOf)), JSON.stringify(search), JSON.stringify(decisions),
    ]);
    await Promise.all([held, past, made]);
    this.remembered.forget(em);
    this.known.set(yardId, { id, plan });
  }

  /** No plan is current any more; says whether one was. */
  async retire(em: EntityManager, yardId: YardId): Promise<boolean> {
    await holdYard(em, yardId);
    const { affected } = await em.update(PlanRow, { yardId, isCurrent: true }, { isCurrent: false });
    this.remembered.forget(em);
    return (affected ?? 0) > 0;
  }
}
