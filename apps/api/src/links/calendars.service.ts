import { Injectable } from '@nestjs/common';
import type { CalendarAddress, RouteInput, Routes } from '@stokehold/domain/contract';
import { epochS, type EpochS, type PersonId, toIso, type YardId } from '@stokehold/domain/quantity';
import ical from 'ical-generator';
import { createHash, randomBytes } from 'node:crypto';
import { DataSource } from 'typeorm';
import { type Actor, Commands, refused } from '../platform/index.js';
import { CalendarAddressRow } from './link.rows.js';

/** Shifts of the last month and all to come. */
const BACK = "interval '31 days'";

interface ShiftOfPerson {
  readonly id: string;
  readonly fromS: number;
  readonly untilS: number;
  readonly pits: number;
  readonly breaks: readonly { readonly earliest: string; readonly lengthS: number }[];
}
const hashOf = (token: string) => createHash('sha256').update(token).digest();
const words = {
  en: { shift: (yard: string) => `Shift, ${yard}`, pits: (count: number) => `${count} fires`, rest: (minutes: number) => `Break of ${minutes} min` },
  es: { shift: (yard: string) => `Turno, ${yard}`, pits: (count: number) => `${count} fuegos`, rest: (minutes: number) => `Descanso de ${minutes} min` },
} as const;

/** A person's shifts as a calendar that other programs read, under a secret address of its own. */
@Injectable()
export class Calendars {
  constructor(
    private readonly commands: Commands,
    private readonly database: DataSource,
  ) {}

  /** A new address for whoever asks; the old one is no more. */
  makeAddress(actor: Actor, command: RouteInput<Routes['makeCalendarAddress']>): Promise<CalendarAddress> {
    return this.commands.run(actor, 'make-calendar-address', command, async (deed) => {
      const crewMemberId = actor.person?.id ?? refused('not-signed-in', 'Nobody is signed in on this device. Sign in and send it again.');
      const token = randomBytes(32).toString('base64url');
      await deed.em.upsert(CalendarAddressRow, { crewMemberId, yardId: deed.yardId, tokenHash: hashOf(token) }, ['crewMemberId']);
      return { path: `/api/calendars/${token}.ics` };
    });
  }

  /** iCalendar, RFC 5545; undefined for an address that nobody has. */
  async calendar(token: string): Promise<string | undefined> {
    const [owner] = (await this.database.query(
      `select crew_member.id, crew_member.language, yard.id as "yardId", yard.name as yard from calendar_address
       join crew_member on crew_member.id = crew_member_id join yard on yard.id = calendar_address.yard_id where token_hash = $1 and not has_left`,
      [hashOf(token)],
    )) as { id: PersonId; language: 'en' | 'es'; yardId: YardId; yard: string }[];
    if (!owner) return undefined;
    const say = words[owner.language];
    const calendar = ical({ name: say.shift(owner.yard), prodId: { company: 'Stokehold', product: 'Shifts' } });
    for (const shift of await this.shiftsOf(owner.id)) {
      const rests = shift.breaks.map(({ lengthS }) => say.rest(Math.round(lengthS / 60)));
      calendar.createEvent({
        id: `${shift.id}@stokehold`, stamp: atOf(shift.fromS), start: atOf(shift.fromS), end: atOf(shift.untilS), summary: say.shift(owner.yard), description: [say.pits(shift.pits), ...rests].join('\n'),
      });
    }
    return calendar.toString();
  }

  private async shiftsOf(personId: PersonId): Promise<ShiftOfPerson[]> {
    return (await this.database.query(
      `select shift.id, extract(epoch from person.starts_at)::float8 as "fromS", extract(epoch from person.ends_at)::float8 as "untilS",
         (select count(*)::int from shift_pit where shift_pit.shift_id = shift.id) as pits,
         (select coalesce(json_agg(json_build_object('earliest', earliest_at, 'lengthS', length_s) order by earliest_at), '[]') from crew_break
          where crew_break.shift_id = shift.id and crew_break.crew_member_id = $1) as breaks
       from shift_person as person join shift on shift.id = shift_id where person.crew_member_id = $1 and person.ends_at > now() - ${BACK} order by person.starts_at`,
      [personId],
    )) as ShiftOfPerson[];
  }
}

const atOf = (s: number): string => toIso(epochS(s) as EpochS);
