import { Injectable } from '@nestjs/common';
import { type EpochS, epochS, MINUTE_S, type PitId, type ProbeId, toIso, type YardId } from '@stokehold/domain/quantity';
import type { Calibration } from '@stokehold/domain/reading';
import type { EntityManager } from 'typeorm';
import { Remembered } from '../platform/index.js';
import type { Reading } from './sent.js';

/** A probe that hangs, or once hung, in a pit of the yard, and in which of how many zones. */
export interface Probe {
  readonly id: ProbeId;
  readonly pitId: PitId;
  readonly zone: number;
  readonly zones: number;
  readonly removed: boolean;
}
/** What one probe showed, before anything judged it. */
export interface RawOfProbe {
  readonly probeId: ProbeId;
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

/** What a probe showed lately, in order of time. */
export interface ProbeLately {
  readonly pitId: PitId;
  readonly probeId: ProbeId;
  readonly zone: number;
  readonly noiseK: number;
  readonly samples: readonly { readonly at: EpochS; readonly tempC: number }[];
}

/** What one probe showed over a stretch of time: the end of each two minutes, their mean, least and most. */
export interface ProbeCourse {
  readonly probeId: ProbeId;
  readonly until: readonly EpochS[];
  readonly meanC: readonly number[];
  readonly leastC: readonly number[];
  readonly mostC: readonly number[];
}

/** What a probe showed before that says nothing of its chamber now. */
const LATELY_S = 30 * MINUTE_S;

@Injectable()
export class ReadingsStore {
  private readonly remembered = new Remembered<ProbeLately[]>(['readings-recorded', 'pit-set-up']);

  /** Those of these probes that the yard knows, by their id or by a gateway's name for them; removed ones too: what they showed is kept. */
  async probes(em: EntityManager, yardId: YardId, sources: readonly string[]): Promise<(Probe & { readonly source: string })[]> {
    return (await em.query(
      `select source, probe.id, pit_id as "pitId", zone_nth as zone, removed, (select count(*)::int from zone where zone.pit_id = probe.pit_id) as zones
       from unnest($2::text[]) as source
         left join probe_source using (source) join probe on probe.id = coalesce(probe_source.probe_id, case when source ~ '^[0-9a-fA-F-]{36}$' then source::uuid end)
       where probe.yard_id = $1 and (probe_source.yard_id is null or probe_source.yard_id = $1) order by probe.id`,
      [yardId, sources],
    )) as (Probe & { readonly source: string })[];
  }

  /** How these probes were corrected, and since when. */
  async calibrations(em: EntityManager, ids: readonly ProbeId[]): Promise<(Calibration & { readonly probeId: ProbeId })[]> {
    const rows = (await em.query('select probe_id, extract(epoch from from_at)::float8 as from_s, against from probe_calibration where probe_id = any($1)', [ids])) as {
      probe_id: ProbeId; from_s: number; against: Calibration['against'];
    }[];
    return rows.map(({ probe_id, from_s, against }) => ({ probeId: probe_id, from: epochS(from_s), against }));
  }

  /** Keeps what is new, and gives that back. Each month of readings has a table of its own, made when its first reading comes. */
  async add(em: EntityManager, readings: readonly Reading[], arrivedAt: EpochS): Promise<Reading[]> {
    if (readings.length === 0) return [];
    const months = [...new Set(readings.map(({ deviceTakenAt }) => `${toIso(deviceTakenAt).slice(0, 7)}-01T00:00:00Z`))];
    await em.query('select keep_reading_month(month) from unnest($1::timestamptz[]) as month', [months]);
    const rows = (await em.query(
      `insert into reading (probe_id, device_taken_at, taken_at, arrived_at, temp_c, shown_c)
       select probe_id, device_taken_at, taken_at, $6, temp_c, shown_c
       from unnest($1::uuid[], $2::timestamptz[], $3::timestamptz[], $4::float8[], $5::real[]) as sent (probe_id, device_taken_at, taken_at, temp_c, shown_c)
       on conflict do nothing returning probe_id, extract(epoch from device_taken_at)::float8 as device_s`,
      [
        readings.map(({ probeId }) => probeId), readings.map(({ deviceTakenAt }) => toIso(deviceTakenAt)), readings.map(({ takenAt }) => toIso(takenAt)),
        readings.map(({ tempC }) => tempC ?? null), readings.map(({ shownC }) => shownC ?? null), toIso(arrivedAt),
      ],
    )) as { probe_id: ProbeId; device_s: number }[];
    const known = new Map(readings.map((reading) => [`${reading.probeId} ${reading.deviceTakenAt}`, reading]));
    return rows.map(({ probe_id, device_s }) => known.get(`${probe_id} ${epochS(device_s)}`)!);
  }

  /** What those of these probes that changed by `changedK` or more showed in the last `backS`, in order of time. Most of the time that is none. */
  async changing(em: EntityManager, ids: readonly ProbeId[], span: { readonly now: EpochS; readonly backS: number; readonly changedK: number }): Promise<RawOfProbe[]> {
    const rows = (await em.query(
      `with lately as materialized (
         select probe_id, taken_at, temp_c from reading
         where probe_id = any($1) and taken_at > $2::timestamptz - make_interval(secs => $3) and taken_at <= $2 and device_taken_at > $2::timestamptz - interval '1 day' and temp_c is not null
       ) select probe_id, extract(epoch from taken_at)::float8 as taken_s, temp_c from lately
       where probe_id in (select probe_id from lately group by probe_id having max(temp_c) - min(temp_c) >= $4) order by taken_at, probe_id`,
      [ids, toIso(span.now), span.backS, span.changedK],
    )) as { probe_id: ProbeId; taken_s: number; temp_c: number }[];
    return rows.map(({ probe_id, taken_s, temp_c }) => ({ probeId: probe_id, takenAt: epochS(taken_s), tempC: temp_c }));
  }

  /**
   * Means per zone and stretch of `stretchS`, stretches counted from 1970. Removed probes are left out, bad readings, suspect ones
   * where there are good ones beside them, and those that said they were taken after they arrived. The sums are taken in order of
   * time, so that they come out the same to the last bit.
   */
  async means(em: EntityManager, yardId: YardId, span: { readonly from: EpochS; readonly until: EpochS; readonly stretchS: number }): Promise<ZoneMean[]> {
    const rows = (await em.query(
      `select pit_id, zone_nth, until_s, 
         coalesce(avg(temp_c order by taken_at, probe_id) filter (where quality = 0), avg(temp_c order by taken_at, probe_id))::float8 as temp_c
       from (
         select probe.pit_id, probe.zone_nth, probe.id as probe_id, taken_at, temp_c, quality,
           ceil(extract(epoch from taken_at) / $4::float8)::float8 * $4::float8 as until_s
         from probe join reading on reading.probe_id = probe.id
         where probe.yard_id = $1 and not probe.removed and taken_at > $2 and taken_at <= $3
           and device_taken_at > $2::timestamptz - interval '1 day' and device_taken_at <= $3::timestamptz + interval '1 day' and quality < 2 and temp_c is not null
           and taken_at <= arrived_at + interval '1 minute'
       ) as taken
       group by pit_id, zone_nth, until_s order by pit_id, until_s, zone_nth`,
      [yardId, toIso(span.from), toIso(span.until), span.stretchS],
    )) as { pit_id: PitId; zone_nth: number; until_s: number; temp_c: number }[];
    return rows.map((row) => ({ pitId: row.pit_id, zone: row.zone_nth, until: row.until_s as EpochS, tempC: row.temp_c }));
  }

  /** Readings of a pit's probes that said they were taken after they arrived, in order of time. */
  async fromTheFuture(em: EntityManager, pitId: PitId, span: { readonly from: EpochS; readonly until: EpochS }): Promise<{ readonly at: EpochS; readonly zone: number }[]> {
    const rows = (await em.query(
      `select extract(epoch from arrived_at)::float8 as at_s, zone_nth from probe join reading on reading.probe_id = probe.id
       where probe.pit_id = $1 and taken_at > arrived_at + interval '1 minute' and arrived_at >= $2 and arrived_at <= $3
         and device_taken_at > $2 order by arrived_at limit 1000`,
      [pitId, toIso(span.from), toIso(span.until)],
    )) as { at_s: number; zone_nth: number }[];
    return rows.map(({ at_s, zone_nth }) => ({ at: epochS(at_s), zone: zone_nth }));
  }

  /** What the believed readings of each probe of the yard showed in the last half hour, `most` of them, in order of time, with the noise of its signal. */
  async lastOfEach(em: EntityManager, yardId: YardId, now: EpochS, most: number): Promise<ProbeLately[]> {
    const probes = await this.remembered.once(em, `${yardId} ${most}`, () => this.askLastOfEach(em, yardId, now, most));
    return probes.flatMap(({ samples, ...probe }) => {
      const lately = samples.filter(({ at }) => at <= now && at > now - LATELY_S).slice(-most);
      return lately.length > 0 ? [{ ...probe, samples: lately }] : [];
    });
  }

  /** With those that a clock a little ahead says are of the minute to come: their time comes while this is remembered. */
  private async askLastOfEach(em: EntityManager, yardId: YardId, now: EpochS, most: number): Promise<ProbeLately[]> {
    const rows = (await em.query(
      `select pit_id, probe.id, zone_nth as zone, (signal->>'noiseK')::float8 as noise_k, last.taken_s, last.temp_c
       from probe join probe_signal on probe_id = probe.id cross join lateral (
         select extract(epoch from taken_at)::float8 as taken_s, temp_c from (
           select taken_at, temp_c, row_number() over (partition by taken_at <= $2 order by taken_at desc) as nth from reading
           where reading.probe_id = probe.id and taken_at > $2::timestamptz - make_interval(secs => $4) and device_taken_at > $2::timestamptz - interval '1 day'
             and taken_at <= arrived_at + interval '1 minute' and quality = 0 and temp_c is not null
         ) as taken where nth <= $3 or taken_at > $2
       ) as last where yard_id = $1 and not removed order by probe.id, last.taken_s`,
      [yardId, toIso(now), most, LATELY_S],
    )) as { pit_id: PitId; id: ProbeId; zone: number; noise_k: number; taken_s: number; temp_c: number }[];
    return [...new Set(rows.map(({ id }) => id))].map((probeId) => {
      const own = rows.filter(({ id }) => id === probeId);
      return { pitId: own[0]!.pit_id, probeId, zone: own[0]!.zone, noiseK: own[0]!.noise_k, samples: own.map(({ taken_s, temp_c }) => ({ at: epochS(taken_s), tempC: temp_c })) };
    });
  }

  /** Means of two minutes of every probe of the yard, as they are kept for good; what is too new to be among them is not there yet. */
  async courses(em: EntityManager, yardId: YardId, { from, until }: { readonly from: EpochS; readonly until: EpochS }): Promise<ProbeCourse[]> {
    const rows = (await em.query(
      `select probe_id as "probeId", json_agg(extract(epoch from until_at)::float8 order by until_at) as "untilS", json_agg(mean_c order by until_at) as "meanC",
         json_agg(least_c order by until_at) as "leastC", json_agg(most_c order by until_at) as "mostC"
       from reading_thin join probe on probe.id = probe_id where yard_id = $1 and until_at > $2 and until_at <= $3 group by probe_id order by probe_id`,
      [yardId, toIso(from), toIso(until)],
    )) as (Omit<ProbeCourse, 'until'> & { untilS: number[] })[];
    return rows.map(({ untilS, ...probe }) => ({ ...probe, until: untilS.map(epochS) }));
  }

  async doubted(em: EntityManager, probeId: ProbeId, { from, until }: { readonly from: EpochS; readonly until: EpochS }): Promise<{ readonly suspectAt: EpochS | undefined; readonly badAt: EpochS | undefined }> {
    const [found] = (await em.query(
      `select extract(epoch from min(taken_at))::float8 as suspect_s, extract(epoch from min(taken_at) filter (where quality = 2))::float8 as bad_s
       from reading where probe_id = $1 and taken_at >= $2 and taken_at < $3 and quality > 0`,
      [probeId, toIso(from), toIso(until)],
    )) as [{ suspect_s: number | null; bad_s: number | null }];
    const at = (s: number | null) => (s === null ? undefined : epochS(s));
    return { suspectAt: at(found.suspect_s), badAt: at(found.bad_s) };
  }
}
