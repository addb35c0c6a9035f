import { Injectable } from '@nestjs/common';
import { type EpochS, epochS, type PersonId, type PitId, toIso, type YardId } from '@stokehold/domain/quantity';
import { alarmAfter, type AlarmCondition, type AlarmState, type AlarmStep, type OpenAlarm } from '@stokehold/domain/shift';
import { type EntityManager, Not } from 'typeorm';
import { type Deed, Ids } from '../platform/index.js';
import { AlarmRow } from './alarm.row.js';

/** An alarm as it is kept. */
export interface KeptAlarm extends OpenAlarm {
  readonly raisedAt: EpochS;
  readonly returnedAt: EpochS | undefined;
  readonly acknowledgedBy: PersonId | null;
}

const at = (date: Date | null) => (date ? epochS(date.getTime() / 1000) : undefined);
const alarmOf = (row: AlarmRow): KeptAlarm => ({
  id: row.id,
  kind: row.kind,
  pitId: row.pitId as PitId | null,
  state: row.state,
  raisedAt: epochS(row.raisedAt.getTime() / 1000),
  returnedAt: at(row.returnedAt),
  acknowledgedAt: at(row.acknowledgedAt),
  acknowledgedBy: row.acknowledgedBy as PersonId | null,
});

/** What a step writes beside the new state. */
function marksOf(step: AlarmStep, now: Date, by: PersonId | null): Partial<AlarmRow> {
  switch (step) {
    case 'condition-began':
      return { raisedAt: now, returnedAt: null, acknowledgedAt: null, acknowledgedBy: null };
    case 'condition-ended':
      return { returnedAt: now };
    case 'acknowledged':
      return { acknowledgedAt: now, acknowledgedBy: by };
    case 'reminder-due':
      return { acknowledgedAt: null, acknowledgedBy: null };
  }
}

@Injectable()
export class AlarmStore {
  constructor(private readonly ids: Ids) {}

  /** Those not back to normal, the oldest first. */
  async open(em: EntityManager, yardId: YardId): Promise<KeptAlarm[]> {
    return (await em.find(AlarmRow, { where: { yardId, state: Not<AlarmState>('normal') }, order: { raisedAt: 'ASC', id: 'ASC' } })).map(alarmOf);
  }

  /** One alarm, held until the transaction ends. */
  async hold(em: EntityManager, yardId: YardId, id: string): Promise<KeptAlarm | undefined> {
    const row = await em.findOne(AlarmRow, { where: { id, yardId }, lock: { mode: 'pessimistic_write' } });
    return row ? alarmOf(row) : undefined;
  }

  async raise(deed: Deed, condition: AlarmCondition): Promise<void> {
    const id = this.ids.next();
    const state = alarmAfter('normal', 'condition-began');
    await deed.em.insert(AlarmRow, {
      ...condition, id, yardId: deed.yardId, state, raisedAt: new Date(deed.now * 1000), returnedAt: null, acknowledgedAt: null, acknowledgedBy: null,
    });
    await this.note(deed, { ...condition, id, state: 'normal' }, state);
  }

  /** Takes the step, in the record and in the audit trail; `by` null for the house itself. */
  async step(deed: Deed, alarm: OpenAlarm, step: AlarmStep, by: PersonId | null = null): Promise<void> {
    const state = alarmAfter(alarm.state, step);
    await deed.em.update(AlarmRow, { id: alarm.id }, { state, ...marksOf(step, new Date(deed.now * 1000), by) });
    if (step !== 'acknowledged') await this.note(deed, alarm, state);
  }

  /** What a person does to an alarm stands in the trail as their command; what the house does stands there by this. */
  private async note(deed: Deed, alarm: AlarmCondition & { id: string; state: AlarmState }, after: AlarmState): Promise<void> {
    const { id, kind, pitId, state } = alarm;
    await deed.em.query(`insert into audit_entry (yard_id, at, command, command_key, body) values ($1, $2, 'alarm-step', $3, $4::jsonb)`, [
      deed.yardId, toIso(deed.now), this.ids.next(), JSON.stringify({ alarmId: id, kind, pitId, from: state, to: after }),
    ]);
  }
}
