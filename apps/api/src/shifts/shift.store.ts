import { Injectable } from '@nestjs/common';
import { type EpochS, HOUR_S, type ShiftId, toIso, type YardId } from '@stokehold/domain/quantity';
import { type Break, type KeptPerson, type KeptShift, LEAD_S, type RunningShift } from '@stokehold/domain/shift';
import { type EntityManager, In, Not } from 'typeorm';
import { holdYard, Remembered } from '../platform/index.js';
import { AbsenceRow } from './absence.row.js';
import { CrewBreakRow } from './crew-break.row.js';
import { ShiftPersonRow } from './shift-person.row.js';
import { ShiftPitRow } from './shift-pit.row.js';
import { ShiftRow } from './shift.row.js';

const dateOf = (at: EpochS) => new Date(toIso(at));
const dateOrNull = (at: EpochS | undefined) => (at === undefined ? null : dateOf(at));

/** One question for a whole shift with the names and skills of its people: it is asked at every event. Times as whole seconds. */
const SHIFTS = `
select shift.id, extract(epoch from starts_at)::float8 as "from", extract(epoch from ends_at)::float8 as until,
  (select coalesce(json_agg(json_build_object('pitId', pit_id, 'band', json_build_object('lowC', band_low_c, 'highC', band_high_c),
      'lightAt', extract(epoch from light_at)::bigint) order by light_at, pit_id), '[]')
    from shift_pit where shift_id = shift.id) as pits,
  (select coalesce(json_agg(json_strip_nulls(json_build_object('id', p.crew_member_id, 'startsAt', extract(epoch from p.starts_at)::bigint,
      'endsAt', extract(epoch from p.ends_at)::bigint, 'presence', presence, 'presenceFrom', extract(epoch from presence_from)::bigint,
      'presenceUntil', extract(epoch from presence_until)::bigint,
      'name', member.name, 'skills', (select coalesce(json_agg(skill order by skill), '[]') from skill where skill.crew_member_id = p.crew_member_id),
      'wasAway', (select coalesce(json_agg(json_build_object('from', extract(epoch from from_at)::bigint,
          'until', extract(epoch from until_at)::bigint) order by from_at), '[]')
        from absence where shift_id = shift.id and crew_member_id = p.crew_member_id),
      'breaks', (select coalesce(json_agg(json_build_object('id', id, 'lengthS', length_s, 'earliestAt', extract(epoch from earliest_at)::bigint,
          'latestAt', extract(epoch from latest_at)::bigint, 'beganAt', extract(epoch from began_at)::bigint,
          'endedAt', extract(epoch from ended_at)::bigint) order by earliest_at, id), '[]')
        from crew_break where shift_id = shift.id and crew_member_id = p.crew_member_id)))
      order by member.name, p.crew_member_id), '[]')
    from shift_person p join crew_member member on member.id = p.crew_member_id where shift_id = shift.id) as people
from shift`;

@Injectable()
export class ShiftStore {
  private readonly remembered = new Remembered<RunningShift[]>(['shift-planned', 'presence-reported', 'break-reported', 'crew-set-up']);

  /** The yard's shifts that meet a stretch of time, with the hours that reach past them; from first to last. */
  async between(em: EntityManager, yardId: YardId, from: EpochS, until: EpochS): Promise<RunningShift[]> {
    // Asked every minute, by whole hours: within the hour the answer is the same.
    const hours = { from: Math.floor((from - LEAD_S) / HOUR_S) * HOUR_S, until: Math.ceil((until + LEAD_S) / HOUR_S) * HOUR_S };
    const near = await this.remembered.once(em, `${yardId} ${hours.from} ${hours.until}`, () =>
      em.query(`${SHIFTS} where yard_id = $1 and ends_at > to_timestamp($2) and starts_at <= to_timestamp($3) order by starts_at`, [yardId, hours.from, hours.until]),
    );
    return near.filter((shift) => shift.until > from - LEAD_S && shift.from <= until + LEAD_S);
  }

  /** The shift with this id, whose ever it is. */
  async one(em: EntityManager, id: ShiftId): Promise<{ readonly yardId: YardId; readonly shift: RunningShift } | undefined> {
    const row = await em.findOneBy(ShiftRow, { id });
    if (!row) return undefined;
    const [shift] = (await em.query(`${SHIFTS} where id = $1`, [id])) as [RunningShift];
    return { yardId: row.yardId as YardId, shift };
  }

  /** Changes to the shifts of one yard are made one after the other, so that no two overlap and none is lost. */
  async hold(em: EntityManager, yardId: YardId): Promise<void> {
    await holdYard(em, yardId);
    this.remembered.forget(em);
  }

  /** Whether one of these breaks belongs to another shift. */
  async isBreakTaken(em: EntityManager, shift: KeptShift): Promise<boolean> {
    const ids = shift.people.flatMap(({ breaks }) => breaks.map(({ id }) => id));
    return (await em.countBy(CrewBreakRow, { id: In(ids), shiftId: Not(shift.id) })) > 0;
  }

  /** The shift as it is from now on; rows that stay keep what refers to them. */
  async save(em: EntityManager, yardId: YardId, shift: KeptShift): Promise<void> {
    const { id: shiftId, people, pits } = shift;
    this.remembered.forget(em);
    await em.upsert(ShiftRow, { id: shiftId, yardId, startsAt: dateOf(shift.from), endsAt: dateOf(shift.until) }, ['id']);
    await em.delete(ShiftPersonRow, { shiftId, crewMemberId: Not(In(people.map(({ id }) => id))) });
    await em.delete(ShiftPitRow, { shiftId, pitId: Not(In(pits.map(({ pitId }) => pitId))) });
    await em.delete(CrewBreakRow, { shiftId, id: Not(In(people.flatMap(({ breaks }) => breaks.map(({ id }) => id)))) });
    for (const person of people) await this.savePerson(em, shiftId, person);
    for (const { pitId, band, lightAt } of pits) {
      await em.upsert(ShiftPitRow, { shiftId, pitId, bandLowC: band.lowC, bandHighC: band.highC, lightAt: dateOf(lightAt) }, ['shiftId', 'pitId']);
    }
  }

  /** Somebody's hours, absences and breaks. */
  async savePerson(em: EntityManager, shiftId: ShiftId, person: KeptPerson): Promise<void> {
    const key = { shiftId, crewMemberId: person.id };
    this.remembered.forget(em);
    const { presence, presenceFrom, presenceUntil } = person;
    const values = {
      ...key, presence, startsAt: dateOf(person.startsAt), endsAt: dateOf(person.endsAt), presenceFrom: dateOrNull(presenceFrom), presenceUntil: dateOrNull(presenceUntil),
    };
    await em.upsert(ShiftPersonRow, values, ['shiftId', 'crewMemberId']);
    await em.delete(AbsenceRow, key);
    if (person.wasAway.length > 0) await em.insert(AbsenceRow, person.wasAway.map(({ from, until }) => ({ ...key, fromAt: dateOf(from), untilAt: dateOf(until) })));
    for (const rest of person.breaks) await this.saveBreak(em, key, rest);
  }

  private async saveBreak(em: EntityManager, key: { shiftId: string; crewMemberId: string }, rest: Break): Promise<void> {
    const { id, lengthS, earliestAt, latestAt, beganAt, endedAt } = rest;
    await em.upsert(
      CrewBreakRow,
      { id, ...key, lengthS, earliestAt: dateOf(earliestAt), latestAt: dateOf(latestAt), beganAt: dateOrNull(beganAt), endedAt: dateOrNull(endedAt) },
      ['id'],
    );
  }
}
