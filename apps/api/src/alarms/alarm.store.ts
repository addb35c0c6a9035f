import { Injectable } from '@nestjs/common';
import { type AlarmCondition, type AlarmState, type AlarmStep, type Began, CALLS_OVER_S, type Called, NORMAL, type OpenAlarm, standingAfter } from '@stokehold/domain/alarm';
import { type EpochS, epochS, later, type PersonId, type PitId, toIso, type YardId } from '@stokehold/domain/quantity';
import { type EntityManager, Not } from 'typeorm';
import { type Deed, Ids, Remembered } from '../platform/index.js';
import { AlarmCallRow } from './alarm-call.row.js';
import { AlarmRow } from './alarm.row.js';
import { alarmOf, type KeptAlarm } from './kept-alarm.js';

/** What a step writes beside the new standing. */
function marksOf(step: AlarmStep, now: Date, by: PersonId | null): Partial<AlarmRow> {
  switch (step.kind) {
    case 'condition-began':
      return { raisedAt: now, returnedAt: null, acknowledgedAt: null, acknowledgedBy: null };
    case 'condition-ended':
      return { returnedAt: now };
    case 'acknowledged':
      return { acknowledgedAt: now, acknowledgedBy: by };
    case 'reminder-due':
    case 'shelf-ended':
    case 'suppression-ended':
      return { acknowledgedAt: null, acknowledgedBy: null };
    case 'shelved':
    case 'suppressed':
      return {};
  }
}

@Injectable()
export class AlarmStore {
  private readonly remembered = new Remembered<KeptAlarm[]>(['alarm-changed']);

  constructor(private readonly ids: Ids) {}

  /** Those not back to normal, the oldest first. */
  async open(em: EntityManager, yardId: YardId): Promise<KeptAlarm[]> {
    return this.remembered.once(em, yardId, async () =>
      (await em.find(AlarmRow, { where: { yardId, state: Not<AlarmState>('normal') }, order: { raisedAt: 'ASC', id: 'ASC' } })).map(alarmOf),
    );
  }

  /** One alarm, held until the transaction ends. */
  async hold(em: EntityManager, yardId: YardId, id: string): Promise<KeptAlarm | undefined> {
    const row = await em.findOne(AlarmRow, { where: { id, yardId }, lock: { mode: 'pessimistic_write' } });
    return row ? alarmOf(row) : undefined;
  }

  async raise(deed: Deed, { condition, suppressedBy }: Began): Promise<void> {
    const id = this.ids.next();
    const { state } = standingAfter(NORMAL, { kind: 'condition-began' });
    this.remembered.forget(deed.em);
    const { kind, pitId, cookId, limit, probeId, deviceId } = condition;
    await deed.em.insert(AlarmRow, {
      kind, pitId, cookId: cookId ?? null, limitName: limit ?? null, probeId: probeId ?? null, deviceId: deviceId ?? null, id, yardId: deed.yardId, state, suppressedBy,
      raisedAt: new Date(deed.now * 1000), returnedAt: null, acknowledgedAt: null, acknowledgedBy: null, told: [],
    });
    this.note(deed, { ...condition, id }, { from: 'normal', to: state, step: 'condition-began', ...(suppressedBy && { suppressedBy }) });
  }

  /** Takes the step, in the record and in the audit trail; `by` null for the house itself. Gives the alarm as it stands after. */
  async step(deed: Deed, alarm: KeptAlarm, step: AlarmStep, by: PersonId | null = null): Promise<KeptAlarm> {
    const { state, shelf, suppressedBy } = standingAfter(alarm, step);
    const change: Partial<AlarmRow> = {
      state, suppressedBy, shelvedUntil: shelf && new Date(shelf.until * 1000), shelvedBy: shelf && shelf.by, shelfWay: shelf && shelf.way, ...marksOf(step, new Date(deed.now * 1000), by),
    };
    this.remembered.forget(deed.em);
    await deed.em.update(AlarmRow, { id: alarm.id }, change);
    if (by === null) this.note(deed, alarm, { from: alarm.state, to: state, step: step.kind });
    return { ...alarm, state, shelf, suppressedBy };
  }

  /** Keeps whom an alarm calls, and under which it stands. */
  async keepCalling(deed: Deed, id: string, calling: Partial<Pick<AlarmRow, 'underId' | 'calledAt' | 'toldTier' | 'told'>>): Promise<void> {
    this.remembered.forget(deed.em);
    await deed.em.update(AlarmRow, { id }, calling);
  }

  async addCall(deed: Deed, alarmId: string, people: readonly PersonId[]): Promise<void> {
    await deed.em.insert(AlarmCallRow, { id: this.ids.next(), yardId: deed.yardId, alarmId, at: new Date(deed.now * 1000), people: [...people] });
  }

  /** How often each person was called in the last ten minutes. */
  async callsOf(em: EntityManager, yardId: YardId, now: EpochS): Promise<ReadonlyMap<PersonId, number>> {
    const rows = (await em.query(
      'select person, count(*)::int as calls from alarm_call, unnest(people) as person where yard_id = $1 and at > $2 and at <= $3 group by person',
      [yardId, toIso(later(now, -CALLS_OVER_S)), toIso(now)],
    )) as { person: PersonId; calls: number }[];
    return new Map(rows.map(({ person, calls }) => [person, calls]));
  }

  /** Every call of a stretch of time, in order. */
  async called(em: EntityManager, yardId: YardId, from: EpochS, until: EpochS): Promise<Called[]> {
    const rows = (await em.query(
      `select alarm_id, extract(epoch from call.at)::float8 as at_s, kind, pit_id, people, extract(epoch from returned_at)::float8 as until_s
       from alarm_call as call join alarm on alarm.id = alarm_id where call.yard_id = $1 and call.at between $2 and $3 order by call.at, call.id`,
      [yardId, toIso(from), toIso(until)],
    )) as { alarm_id: string; at_s: number; kind: Called['kind']; pit_id: PitId | null; people: PersonId[]; until_s: number | null }[];
    return rows.map((row) => ({
      alarmId: row.alarm_id, at: epochS(row.at_s), kind: row.kind, pitId: row.pit_id, people: row.people, ...(row.until_s !== null && { until: epochS(row.until_s) }),
    }));
  }

  /** What a person does to an alarm stands in the record as their command; what the house does stands there by this. */
  private note(deed: Deed, alarm: AlarmCondition & Pick<OpenAlarm, 'id'>, went: object): void {
    const { id, kind, pitId, cookId, limit, probeId, deviceId } = alarm;
    deed.record({ personId: null, deviceId: null, command: 'alarm-step', key: this.ids.next(), body: { alarmId: id, kind, pitId, cookId, limit, probeId, deviceId, ...went } });
  }
}
