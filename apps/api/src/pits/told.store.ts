import { Injectable } from '@nestjs/common';
import type { AdviceView, FireView, LearnedView } from '@stokehold/domain/contract';
import { type Band, learnedForTonight, type PitLearned } from '@stokehold/domain/fire';
import { type EpochS, epochS, HOUR_S, later, type PersonId, type PitId, type ShiftId, toIso } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import type { UnusedReading } from './fire-estimate.row.js';
import { lastOfEachNight } from './last-of-each-night.js';

/** A pit changes over the seasons: nights further back say nothing of the next. */
export const REMEMBERS_S = 60 * 24 * HOUR_S;

/** A night in which this pit burned. */
export interface PitNight {
  readonly shiftId: ShiftId;
  readonly startsAt: EpochS;
  readonly lightAt: EpochS;
  readonly endsAt: EpochS;
  readonly band: Band;
}
/** What was forecast right after a check. */
export interface Told {
  readonly checkId: string;
  readonly lookedAt: EpochS;
  readonly advised: AdviceView['action'] | null;
  readonly fan: FireView['forecast'];
}
export interface LinePoint {
  readonly at: EpochS;
  readonly tempC: number;
  readonly measured: boolean;
  readonly unused: readonly UnusedReading[];
}
export interface SetBack {
  readonly id: string;
  readonly at: EpochS;
  readonly by: PersonId | null;
  readonly reason: string;
}

const secondsOf = (rows: unknown) => (rows as { at_s: number }[]).map(({ at_s }) => epochS(at_s));

/** What was told of one fire and what came of it: read when somebody looks at its page, never by the minute. */
@Injectable()
export class ToldStore {
  /** The nights of a pit that have begun to burn, the last one first. */
  async nights(em: EntityManager, pitId: PitId, now: EpochS, most: number): Promise<PitNight[]> {
    const rows = (await em.query(
      `select shift.id, extract(epoch from starts_at)::float8 as starts_s, extract(epoch from light_at)::float8 as light_s,
         extract(epoch from ends_at)::float8 as ends_s, band_low_c, band_high_c
       from shift_pit join shift on shift.id = shift_id where pit_id = $1 and light_at <= $2 order by light_at desc limit $3`,
      [pitId, toIso(now), most],
    )) as { id: ShiftId; starts_s: number; light_s: number; ends_s: number; band_low_c: number; band_high_c: number }[];
    return rows.map((row) => ({
      shiftId: row.id, startsAt: epochS(row.starts_s), lightAt: epochS(row.light_s), endsAt: epochS(row.ends_s), band: { lowC: row.band_low_c, highC: row.band_high_c },
    }));
  }

  async line(em: EntityManager, pitId: PitId, from: EpochS, until: EpochS): Promise<LinePoint[]> {
    const rows = (await em.query(
      `select extract(epoch from at)::float8 as at_s, temp_c, measured, unused from fire_estimate where pit_id = $1 and at >= $2 and at <= $3 order by at`,
      [pitId, toIso(from), toIso(until)],
    )) as { at_s: number; temp_c: number; measured: boolean; unused: UnusedReading[] | null }[];
    return rows.map(({ at_s, temp_c, measured, unused }) => ({ at: epochS(at_s), tempC: temp_c, measured, unused: unused ?? [] }));
  }

  async told(em: EntityManager, pitId: PitId, from: EpochS, until: EpochS): Promise<Told[]> {
    const rows = (await em.query(
      `select check_id, extract(epoch from looked_at)::float8 as at_s, advised, fan
       from fire_told where pit_id = $1 and looked_at >= $2 and looked_at <= $3 order by looked_at, check_id`,
      [pitId, toIso(from), toIso(until)],
    )) as { check_id: string; at_s: number; advised: Told['advised']; fan: Told['fan'] }[];
    return rows.map(({ check_id, at_s, advised, fan }) => ({ checkId: check_id, lookedAt: epochS(at_s), advised, fan }));
  }

  /** When somebody changed something at this fire: raked, laid wood on, or left the air another way than it was. */
  async touches(em: EntityManager, pitId: PitId, from: EpochS, until: EpochS): Promise<EpochS[]> {
    return secondsOf(
      await em.query(
        `select extract(epoch from seen_at)::float8 as at_s from (
           select seen_at, splits, raked, lag(air, 1, air) over (order by seen_at, id) <> air as air_moved
           from (select *, concat_ws(' ', door, damper, screen) as air from fire_check where pit_id = $1 and seen_at >= $2 and seen_at <= $3) as left_so
         ) as looked where splits > 0 or raked or air_moved order by seen_at`,
        [pitId, toIso(from), toIso(until)],
      ),
    );
  }

  /** What had been learned of a pit at each of its checks since a time. */
  async course(em: EntityManager, pitId: PitId, since: EpochS): Promise<(LearnedView & { readonly at: EpochS })[]> {
    const rows = (await em.query(
      `select extract(epoch from looked_at)::float8 as at_s, learned from fire_told where pit_id = $1 and looked_at >= $2 order by looked_at, check_id`,
      [pitId, toIso(since)],
    )) as { at_s: number; learned: LearnedView }[];
    return rows.map(({ at_s, learned }) => ({ ...learned, at: epochS(at_s) }));
  }

  /** What each of these pits has shown over its nights since it was set back, as its next fire begins with it; a pit that taught nothing is absent. */
  async learnedForTonight(em: EntityManager, pitIds: readonly PitId[], now: EpochS): Promise<ReadonlyMap<PitId, PitLearned>> {
    const rows = (await em.query(
      `select pit_id, extract(epoch from looked_at)::float8 as at_s, learned from fire_told
       where pit_id = any($1) and looked_at > $2
         and looked_at > coalesce((select max(at) from learned_set_back as back where back.pit_id = fire_told.pit_id), '-infinity')
       order by pit_id, looked_at, check_id`,
      [pitIds, toIso(later(now, -REMEMBERS_S))],
    )) as { pit_id: PitId; at_s: number; learned: LearnedView }[];
    return new Map(
      pitIds.flatMap((pitId) => {
        const points = rows.filter((row) => row.pit_id === pitId).map(({ at_s, learned }) => ({ ...learned, at: epochS(at_s) }));
        const learned = learnedForTonight(lastOfEachNight(points));
        return learned ? [[pitId, learned] as const] : [];
      }),
    );
  }

  async setBacks(em: EntityManager, pitId: PitId, since: EpochS): Promise<SetBack[]> {
    const rows = (await em.query(
      `select id, extract(epoch from at)::float8 as at_s, crew_member_id, reason from learned_set_back where pit_id = $1 and at >= $2 order by at, id`,
      [pitId, toIso(since)],
    )) as { id: string; at_s: number; crew_member_id: PersonId | null; reason: string }[];
    return rows.map(({ id, at_s, crew_member_id, reason }) => ({ id, at: epochS(at_s), by: crew_member_id, reason }));
  }
}
