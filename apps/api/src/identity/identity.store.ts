import { Injectable } from '@nestjs/common';
import type { DeedName, Language, Me, Role, SessionView, SignInChoices } from '@stokehold/domain/contract';
import { type DeviceId, type EpochS, epochS, type PersonId, toIso, type YardId } from '@stokehold/domain/quantity';
import { DataSource, type EntityManager } from 'typeorm';
import { type Actor, recordAlone } from '../platform/index.js';
import type { DeviceRow } from './device.row.js';
import { PinFailureRow } from './pin-failure.row.js';
import type { WrongPins } from './pin-waits.js';
import { SessionRow } from './session.row.js';

export type PersonWithPin = NonNullable<Actor['person']> & { readonly pinHash: string };

export interface Found {
  readonly actor: Actor;
  readonly deviceSeenAt: EpochS | null;
  readonly sessionUsedAt: EpochS | null;
}
interface FoundRow {
  readonly device_id: DeviceId;
  readonly device_name: string;
  readonly kind: DeviceRow['kind'];
  readonly yard_id: YardId;
  readonly last_seen_at: Date | null;
  readonly last_used_at: Date | null;
  readonly person_id: PersonId | null;
  readonly person_name: string;
  readonly role: Role;
  readonly language: Language;
}

const iso = (column: string) => `to_char(${column} at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"')`;
const instantOf = (date: Date | null): EpochS | null => date && epochS(date.getTime() / 1000);

/** Devices, sessions and PINs in the database. Of a person it reads what signing in needs; the crew list belongs to the yard. */
@Injectable()
export class IdentityStore {
  constructor(private readonly database: DataSource) {}

  /** The device of this token that is not revoked and, where the session is good, the person on it, in one question. */
  async find(device: Buffer, session: Buffer | undefined, goodFrom: { began: EpochS; used: EpochS }): Promise<Found | undefined> {
    const [row] = (await this.database.query(
      `select d.id as device_id, d.name as device_name, d.kind, d.yard_id, d.last_seen_at, s.last_used_at,
              c.id as person_id, c.name as person_name, c.role, c.language
       from device d
       left join session s on s.token_hash = $2 and s.device_id = d.id and s.ended_at is null and s.began_at > $3 and s.last_used_at > $4
       left join crew_member c on c.id = s.crew_member_id and c.yard_id = d.yard_id and not c.has_left
       where d.token_hash = $1 and d.revoked_at is null`,
      [device, session ?? null, toIso(goodFrom.began), toIso(goodFrom.used)],
    )) as FoundRow[];
    if (!row) return undefined;
    const person = row.person_id && { person: { id: row.person_id, name: row.person_name, role: row.role, language: row.language } };
    return {
      actor: { yardId: row.yard_id, device: { id: row.device_id, kind: row.kind, name: row.device_name }, ...person },
      deviceSeenAt: instantOf(row.last_seen_at),
      sessionUsedAt: row.person_id ? instantOf(row.last_used_at) : null,
    };
  }

  async gateway(deviceId: DeviceId): Promise<{ readonly actor: Found['actor']; readonly tokenHash: Buffer } | undefined> {
    const [row] = (await this.database.query(`select yard_id, name, kind, token_hash from device where id = $1 and kind = 'gateway' and revoked_at is null`, [deviceId])) as {
      yard_id: YardId; name: string; kind: 'gateway'; token_hash: Buffer;
    }[];
    return row && { actor: { yardId: row.yard_id, device: { id: deviceId, kind: row.kind, name: row.name } }, tokenHash: row.token_hash };
  }

  async touch(deviceId: DeviceId, session: Buffer | undefined, now: EpochS): Promise<void> {
    await this.database.query('update device set last_seen_at = $2 where id = $1', [deviceId, toIso(now)]);
    if (session) await this.database.query('update session set last_used_at = $2 where token_hash = $1', [session, toIso(now)]);
  }

  /** Whether a kitchen has a manager; practice yards do not count. */
  async hasManager(em: EntityManager = this.database.manager): Promise<boolean> {
    const rows = (await em.query(
      `select 1 from crew_member c join yard y on y.id = c.yard_id where c.role = 'manager' and not c.has_left and not y.practice limit 1`,
    )) as unknown[];
    return rows.length > 0;
  }

  async hasAnyPin(): Promise<boolean> {
    return ((await this.database.query('select 1 from crew_member where pin_hash is not null limit 1')) as unknown[]).length > 0;
  }

  async yard(yardId: YardId): Promise<Me['yard']> {
    const [yard] = (await this.database.query('select id, name, language, practice from yard where id = $1', [yardId])) as [Me['yard']];
    return yard;
  }

  /** Those with a PIN who have not left, by name. */
  people(yardId: YardId): Promise<SignInChoices['people']> {
    return this.database.query(
      `select id, name, language, case when by_password then 'password' else 'pin' end as by from crew_member where yard_id = $1 and not has_left and pin_hash is not null order by lower(name), id`,
      [yardId],
    ) as Promise<SignInChoices['people']>;
  }

  async personWithPin(em: EntityManager, yardId: YardId, id: PersonId): Promise<PersonWithPin | undefined> {
    const [row] = (await em.query(
      'select id, name, role, language, pin_hash as "pinHash" from crew_member where id = $1 and yard_id = $2 and not has_left and pin_hash is not null',
      [id, yardId],
    )) as PersonWithPin[];
    return row;
  }

  /** The wrong PINs of this person on this device, held until the transaction ends: two tries at once are counted one after the other. */
  async holdWrongPins(em: EntityManager, personId: PersonId, deviceId: DeviceId): Promise<WrongPins & { everywhere: number }> {
    await em.query('insert into pin_failure values ($1, $2, 0, null) on conflict do nothing', [personId, deviceId]);
    const [row] = (await em.query('select in_a_row, wait_until from pin_failure where crew_member_id = $1 and device_id = $2 for update', [
      personId,
      deviceId,
    ])) as [{ in_a_row: number; wait_until: Date | null }];
    const [sum] = (await em.query('select sum(in_a_row)::int as everywhere from pin_failure where crew_member_id = $1', [personId])) as [
      { everywhere: number },
    ];
    return { inARow: row.in_a_row, waitUntil: instantOf(row.wait_until), everywhere: sum.everywhere };
  }

  async keepWrongPins(em: EntityManager, personId: PersonId, deviceId: DeviceId, wrong: WrongPins): Promise<void> {
    const waitUntil = wrong.waitUntil === null ? null : new Date(wrong.waitUntil * 1000);
    await em.update(PinFailureRow, { crewMemberId: personId, deviceId }, { inARow: wrong.inARow, waitUntil });
  }

  async beginSession(em: EntityManager, session: { tokenHash: Buffer; deviceId: DeviceId; personId: PersonId; now: EpochS }): Promise<void> {
    await this.endSessions(em, { deviceId: session.deviceId }, session.now);
    const at = new Date(session.now * 1000);
    await em.insert(SessionRow, {
      tokenHash: session.tokenHash, deviceId: session.deviceId, crewMemberId: session.personId, beganAt: at, lastUsedAt: at, endedAt: null,
    });
  }

  /** Sessions that still hold, the last begun first; of one person where one is named. */
  sessions(yardId: YardId, goodFrom: { began: EpochS; used: EpochS }, personId: PersonId | undefined): Promise<SessionView[]> {
    return this.database.query(
      `select d.id as "deviceId", d.name as device, c.id as "personId", c.name as person, ${iso('s.began_at')} as "beganAt", ${iso('s.last_used_at')} as "lastUsedAt"
       from session s join device d on d.id = s.device_id and d.revoked_at is null join crew_member c on c.id = s.crew_member_id and not c.has_left
       where d.yard_id = $1 and s.ended_at is null and s.began_at > $2 and s.last_used_at > $3 and ($4::uuid is null or c.id = $4) order by s.began_at desc, d.id`,
      [yardId, toIso(goodFrom.began), toIso(goodFrom.used), personId ?? null],
    );
  }

  async endSessions(em: EntityManager, of: { deviceId: DeviceId } | { personId: PersonId }, now: EpochS): Promise<void> {
    const [column, id] = 'deviceId' in of ? ['device_id', of.deviceId] : ['crew_member_id', of.personId];
    await em.query(`update session set ended_at = $2 where ${column} = $1 and ended_at is null`, [id, toIso(now)]);
  }

  /** Signing in and out has no command key of its own; the record holds it all the same. */
  async note(em: EntityManager, entry: { actor: Actor; personId: PersonId | null; command: DeedName; id: string; now: EpochS }): Promise<void> {
    const { actor, personId, command, id: key, now } = entry;
    await recordAlone(em, actor.yardId, { at: toIso(now), personId, deviceId: actor.device.id, command, key, body: {} });
  }
}
