import { Injectable } from '@nestjs/common';
import { type EpochS, type PitId, type ProbeId, toIso, type YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';

/** A probe that hangs, or once hung, in a pit of the yard. */
export interface Probe {
  readonly id: ProbeId;
  readonly pitId: PitId;
}
export interface Reading {
  readonly probeId: ProbeId;
  readonly deviceTakenAt: EpochS;
  readonly takenAt: EpochS;
  readonly tempC: number;
}
/** Mean of what the probes of one zone showed in one stretch of time. */
export interface ZoneMean {
  readonly pitId: PitId;
  readonly zone: number;
  /** End of the stretch. */
  readonly until: EpochS;
  readonly tempC: number;
}

@Injectable()
export class ReadingsStore {
  /** Those of these probes that the yard knows, removed ones too: what they showed is kept. */
  async probes(em: EntityManager, yardId: YardId, ids: readonly ProbeId[]): Promise<Probe[]> {
    const rows = (await em.query('select id, pit_id from probe where yard_id = $1 and id = any($2) order by id', [yardId, ids])) as {
      id: ProbeId;
      pit_id: PitId;
    }[];
    return rows.map(({ id, pit_id }) => ({ id, pitId: pit_id }));
  }

  /** Keeps what is new; says of which probes. */
  async add(em: EntityManager, readings: readonly Reading[], arrivedAt: EpochS): Promise<ProbeId[]> {
    const rows = (await em.query(
      `insert into reading (probe_id, device_taken_at, taken_at, temp_c, arrived_at)
       select probe_id, device_taken_at, taken_at, temp_c, $5
       from unnest($1::uuid[], $2::timestamptz[], $3::timestamptz[], $4::float8[]) as sent (probe_id, device_taken_at, taken_at, temp_c)
       on conflict do nothing returning probe_id`,
      [
        readings.map(({ probeId }) => probeId),
        readings.map(({ deviceTakenAt }) => toIso(deviceTakenAt)),
        readings.map(({ takenAt }) => toIso(takenAt)),
        readings.map(({ tempC }) => tempC),
        toIso(arrivedAt),
      ],
    )) as { probe_id: ProbeId }[];
    return rows.map(({ probe_id }) => probe_id);
  }

  /**
   * Means per zone and stretch of `stretchS`, stretches counted from 1970. Removed probes are left out, and readings that
   * said they were taken after they arrived. The sums are taken in order of time, so that they come out the same to the last bit.
   */
  async means(em: EntityManager, yardId: YardId, span: { readonly from: EpochS; readonly until: EpochS; readonly stretchS: number }): Promise<ZoneMean[]> {
    const rows = (await em.query(
      `select pit_id, zone_nth, until_s, avg(temp_c order by taken_at, probe_id)::float8 as temp_c
       from (
         select probe.pit_id, probe.zone_nth, probe.id as probe_id, taken_at, temp_c,
           ceil(extract(epoch from taken_at) / $4::float8)::float8 * $4::float8 as until_s
         from probe join reading on reading.probe_id = probe.id
         where probe.yard_id = $1 and not probe.removed and taken_at > $2 and taken_at <= $3
           and taken_at <= arrived_at + interval '1 minute'
       ) as taken
       group by pit_id, zone_nth, until_s order by pit_id, until_s, zone_nth`,
      [yardId, toIso(span.from), toIso(span.until), span.stretchS],
    )) as { pit_id: PitId; zone_nth: number; until_s: number; temp_c: number }[];
    return rows.map((row) => ({ pitId: row.pit_id, zone: row.zone_nth, until: row.until_s as EpochS, tempC: row.temp_c }));
  }
}
