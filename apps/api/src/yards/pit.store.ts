import { Injectable } from '@nestjs/common';
import type { PitSettings } from '@stokehold/domain/contract';
import { type EpochS, later, type PitId, type ProbeId, toIso, type YardId } from '@stokehold/domain/quantity';
import { LEAD_S } from '@stokehold/domain/shift';
import { type EntityManager, In } from 'typeorm';
import { Remembered } from '../platform/index.js';
import { PitRow } from './pit.row.js';
import { ProbeRow } from './probe.row.js';
import { ZoneRow } from './zone.row.js';

/** Pits with their zones from the fire end and their probes, in one question: the house asks it every minute. */
const PITS = `
  select id, name, x_m as "xM", y_m as "yM", fire_end as "fireEnd", fire_end_heading_deg as "fireEndHeadingDeg",
    chamber_length_m as "chamberLengthM", chamber_diameter_m as "chamberDiameterM", firebox_length_m as "fireboxLengthM",
    firebox_diameter_m as "fireboxDiameterM", steel_thickness_m as "steelThicknessM", stack_height_m as "stackHeightM",
    stack_diameter_m as "stackDiameterM", retired, json_build_object('lowC', band_low_c, 'highC', band_high_c) as band,
    (select json_agg(json_build_object('lengthM', length_m) order by nth) from zone where pit_id = pit.id) as zones,
    (select coalesce(json_agg(json_build_object('id', probe.id, 'name', probe.name, 'zone', zone_nth) order by zone_nth, probe.name, probe.id), '[]')
     from probe where pit_id = pit.id and not removed) as probes
  from pit`;

/** Pits with their zones and probes. */
@Injectable()
export class PitStore {
  private readonly remembered = new Remembered<PitSettings[]>(['pit-set-up']);

  /** By name. */
  async pits(em: EntityManager, of: { readonly yardId?: YardId; readonly id?: PitId }): Promise<PitSettings[]> {
    return this.remembered.once(em, `${of.yardId} ${of.id}`, () =>
      em.query(`${PITS} where ($1::uuid is null or yard_id = $1) and ($2::uuid is null or id = $2) order by lower(name), id`, [of.yardId ?? null, of.id ?? null]),
    );
  }

  async yardOf(em: EntityManager, id: PitId): Promise<YardId | undefined> {
    return (await em.findOne(PitRow, { where: { id }, select: { id: true, yardId: true } }))?.yardId as YardId | undefined;
  }

  /** Those of these probes that stand in another pit or yard. */
  async probesElsewhere(em: EntityManager, pitId: PitId, probes: readonly ProbeId[]): Promise<string[]> {
    const rows = await em.find(ProbeRow, { where: { id: In([...probes]) }, order: { name: 'ASC' } });
    return rows.filter((row) => row.pitId !== pitId).map(({ name }) => name);
  }

  async save(em: EntityManager, yardId: YardId, pit: PitSettings): Promise<void> {
    const { zones, probes, band, ...settings } = pit;
    this.remembered.forget(em);
    await em.createQueryBuilder().insert().into(PitRow).values({ ...settings, yardId, bandLowC: band.lowC, bandHighC: band.highC }).orUpdate(allButId(em, PitRow), ['id']).execute();
    await em.delete(ZoneRow, { pitId: pit.id });
    await em.insert(ZoneRow, zones.map(({ lengthM }, nth) => ({ pitId: pit.id, nth, lengthM })));
    await em.update(ProbeRow, { pitId: pit.id }, { removed: true });
    if (probes.length === 0) return;
    const rows = probes.map(({ id, name, zone }) => ({ id, yardId, pitId: pit.id, name, zoneNth: zone, removed: false }));
    await em.createQueryBuilder().insert().into(ProbeRow).values(rows).orUpdate(allButId(em, ProbeRow), ['id']).execute();
  }

  /** Asked of the tables themselves: the modules that own shifts and cooks stand on this one. */
  async isBurning(em: EntityManager, id: PitId, now: EpochS): Promise<boolean> {
    const rows = (await em.query(
      `select 1 from shift_pit join shift on shift.id = shift_id where pit_id = $1 and starts_at <= $2 and ends_at > $3 limit 1`,
      [id, toIso(later(now, LEAD_S)), toIso(now)],
    )) as unknown[];
    return rows.length > 0;
  }

  /** How many zones, counted from the fire end, hold something now. */
  async zonesInUse(em: EntityManager, id: PitId): Promise<number> {
    const [row] = (await em.query(
      `select coalesce(max(zone_nth) + 1, 0)::int as zones from placement join cook on cook.id = cook_id
       where pit_id = $1 and until_at is null and off_at is null`,
      [id],
    )) as [{ zones: number }];
    return row.zones;
  }
}

/**
 * What is set anew of a row that is there. With the id among it the row would be locked against whatever refers to it: a reading holds
 * its probe and then wants the yard, while this holds the yard and would want the probe.
 */
const allButId = (em: EntityManager, row: typeof PitRow | typeof ProbeRow): string[] =>
  em.connection.getMetadata(row).columns.map(({ databaseName }) => databaseName).filter((name) => name !== 'id');
