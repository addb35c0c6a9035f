import { Injectable } from '@nestjs/common';
import type { SentReading } from '@stokehold/domain/contract';
import { type DeviceId, epochS, type EpochS, type ProbeId, toIso, type YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { ProbeSourceRow } from './probe.rows.js';
import type { AsideBecause } from './reading-aside.row.js';
import type { Timed } from './sent.js';

/** Readings that are kept and used for nothing yet, by the name that the gateway gives their probe. */
export interface AsideSource {
  readonly source: string;
  readonly why: AsideBecause;
  readonly deviceId: DeviceId | null;
  readonly readings: number;
  readonly firstAt: EpochS;
  readonly lastAt: EpochS;
  readonly last: SentReading;
}

@Injectable()
export class AsideStore {
  async add(em: EntityManager, yardId: YardId, deviceId: DeviceId, readings: readonly (Timed & { readonly why: AsideBecause })[], arrivedAt: EpochS): Promise<void> {
    if (readings.length === 0) return;
    await em.query(
      `insert into reading_aside (yard_id, source, device_taken_at, why, device_id, taken_at, arrived_at, body)
       select $1, source, device_taken_at, why, $2, taken_at, $3, body
       from unnest($4::text[], $5::timestamptz[], $6::text[], $7::timestamptz[], $8::jsonb[]) as sent (source, device_taken_at, why, taken_at, body) on conflict do nothing`,
      [
        yardId, deviceId, toIso(arrivedAt), readings.map(({ source }) => source), readings.map(({ deviceTakenAt }) => toIso(deviceTakenAt)),
        readings.map(({ why }) => why), readings.map(({ takenAt }) => toIso(takenAt)), readings.map(({ sent }) => JSON.stringify(sent)),
      ],
    );
  }

  /** What is kept aside by name and why, the latest first. */
  async sources(em: EntityManager, yardId: YardId): Promise<AsideSource[]> {
    const rows = (await em.query(
      `select source, why, (array_agg(device_id order by taken_at desc))[1] as "deviceId", count(*)::int as readings, extract(epoch from min(taken_at))::float8 as first_s,
         extract(epoch from max(taken_at))::float8 as last_s, (array_agg(body order by taken_at desc))[1] as last
       from reading_aside where yard_id = $1 group by source, why order by max(arrived_at) desc, source, why`,
      [yardId],
    )) as (Omit<AsideSource, 'firstAt' | 'lastAt'> & { first_s: number; last_s: number })[];
    return rows.map(({ first_s, last_s, ...source }) => ({ ...source, firstAt: epochS(first_s), lastAt: epochS(last_s) }));
  }

  /** Takes the readings of a name from those kept aside. */
  async take(em: EntityManager, yardId: YardId, source: string): Promise<Timed[]> {
    const [rows] = (await em.query(
      `delete from reading_aside where yard_id = $1 and source = $2 and why = 'probe-unknown'
       returning extract(epoch from device_taken_at)::float8 as device_s, extract(epoch from taken_at)::float8 as taken_s, body`,
      [yardId, source],
    )) as [{ device_s: number; taken_s: number; body: SentReading }[], number];
    return rows.map(({ device_s, taken_s, body }) => ({ sent: body, source, deviceTakenAt: epochS(device_s), takenAt: epochS(taken_s) }));
  }

  /** The probe that has a gateway's name; undefined where none has. */
  async probeOf(em: EntityManager, yardId: YardId, source: string): Promise<ProbeId | undefined> {
    return (await em.findOne(ProbeSourceRow, { where: { yardId, source } }))?.probeId as ProbeId | undefined;
  }

  async name(em: EntityManager, yardId: YardId, source: string, probeId: ProbeId): Promise<void> {
    await em.upsert(ProbeSourceRow, { yardId, source, probeId }, ['yardId', 'source']);
  }
}
