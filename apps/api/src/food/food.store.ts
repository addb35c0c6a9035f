import { Injectable } from '@nestjs/common';
import type { CookView, ServiceSettings } from '@stokehold/domain/contract';
import type { Lying } from '@stokehold/domain/food';
import { type CookId, type EpochS, fromIso, type PitId, type ServiceId, toIso, type YardId } from '@stokehold/domain/quantity';
import { type EntityManager, In, IsNull } from 'typeorm';
import { Ids, Remembered } from '../platform/index.js';
import { CookRow } from './cook.row.js';
import { PlacementRow } from './placement.row.js';
import { ServiceRow } from './service.row.js';

const isoOf = (at: Date | null) => at && toIso(Math.floor(at.getTime() / 1000) as EpochS);
const dateOf = (iso: string) => new Date(toIso(fromIso(iso)));

/** Pieces of a cook that lay in a pit from one time to another. */
export interface Lay {
  readonly cookId: CookId;
  readonly pitId: PitId;
  readonly pieces: number;
  readonly from: EpochS;
  readonly until: EpochS | null;
}

@Injectable()
export class FoodStore {
  private readonly remembered = new Remembered<ReadonlyMap<PitId, number>>(['cook-changed']);

  constructor(private readonly ids: Ids) {}

  async cooks(em: EntityManager, where: { yardId: YardId } | { id: CookId; yardId: YardId }): Promise<CookView[]> {
    const rows = await em.find(CookRow, { where, order: { id: 'asc' } });
    const lying = await em.find(PlacementRow, {
      where: { cookId: In(rows.map(({ id }) => id)), untilAt: IsNull() },
      order: { cookId: 'asc', pitId: 'asc', zoneNth: 'asc' },
    });
    return rows.map((row) => ({
      id: row.id as CookId,
      cut: row.cut,
      shape: row.shape,
      pieces: row.pieces,
      weightKg: row.weightKg,
      serviceId: row.serviceId as ServiceId | null,
      comesOffAt: isoOf(row.comesOffAt),
      onAt: isoOf(row.onAt),
      offAt: isoOf(row.offAt),
      yieldKg: row.yieldKg,
      mix: row.mix,
      ...(row.forecast && { forecast: row.forecast }),
      lies: lying.filter(({ cookId }) => cookId === row.id).map(({ pitId, zoneNth, pieces }) => ({ pitId: pitId as PitId, zone: zoneNth, pieces })),
    }));
  }

  async saveCook(em: EntityManager, yardId: YardId, cook: Omit<CookView, 'lies'>): Promise<void> {
    const { id, comesOffAt, onAt, offAt, forecast: _forecast, ...plain } = cook;
    this.remembered.forget(em);
    const values = { ...plain, comesOffAt: comesOffAt ? dateOf(comesOffAt) : null, onAt: onAt ? dateOf(onAt) : null, offAt: offAt ? dateOf(offAt) : null };
    const { affected } = await em.update(CookRow, { id, yardId }, values);
    if (!affected) await em.insert(CookRow, { id, yardId, ...values });
  }

  /** From `at` on the cook lies so; where it lay before stays on record. */
  async place(em: EntityManager, cookId: CookId, lies: readonly Lying<PitId>[], at: EpochS): Promise<void> {
    const fromAt = new Date(toIso(at));
    this.remembered.forget(em);
    await em.update(PlacementRow, { cookId, untilAt: IsNull() }, { untilAt: fromAt });
    if (lies.length > 0) {
      await em.insert(PlacementRow, lies.map(({ pitId, zone, pieces }) => ({ id: this.ids.next(), cookId, pitId, zoneNth: zone, pieces, fromAt, untilAt: null })));
    }
  }

  /** Kilograms on each pit now, pieces of a cook taken as equal. */
  massOn(em: EntityManager, yardId: YardId): Promise<ReadonlyMap<PitId, number>> {
    return this.remembered.once(em, yardId, () => this.askMassOn(em, yardId));
  }

  private async askMassOn(em: EntityManager, yardId: YardId): Promise<ReadonlyMap<PitId, number>> {
    const rows = (await em.query(
      `select pit_id, sum(placement.pieces * weight_kg / cook.pieces)::float8 as mass_kg
       from placement join cook on cook.id = cook_id where yard_id = $1 and until_at is null group by pit_id order by pit_id`,
      [yardId],
    )) as { pit_id: PitId; mass_kg: number }[];
    return new Map(rows.map(({ pit_id, mass_kg }) => [pit_id, mass_kg]));
  }

  /** Where the yard's cooks lay, from first to last; the history that shares of a fire are reckoned from. */
  async lays(em: EntityManager, yardId: YardId): Promise<Lay[]> {
    const rows = (await em.query(
      `select cook_id, pit_id, placement.pieces, extract(epoch from from_at)::float8 as from_s, extract(epoch from until_at)::float8 as until_s
       from placement join cook on cook.id = cook_id where yard_id = $1 order by from_at, cook_id, pit_id, zone_nth`,
      [yardId],
    )) as { cook_id: CookId; pit_id: PitId; pieces: number; from_s: number; until_s: number | null }[];
    return rows.map((row) => ({
      cookId: row.cook_id, pitId: row.pit_id, pieces: row.pieces, from: row.from_s as EpochS, until: row.until_s as EpochS | null,
    }));
  }

  async services(em: EntityManager, where: { yardId: YardId } | { id: ServiceId; yardId: YardId }): Promise<ServiceSettings[]> {
    const rows = await em.find(ServiceRow, { where, order: { readyBy: 'asc', name: 'asc' } });
    return rows.map(({ id, name, readyBy, portions }) => ({ id: id as ServiceId, name, readyBy: isoOf(readyBy) ?? '', portions }));
  }

  async saveService(em: EntityManager, yardId: YardId, service: ServiceSettings): Promise<void> {
    const { id, ...plain } = service;
    const values = { ...plain, readyBy: dateOf(service.readyBy) };
    const { affected } = await em.update(ServiceRow, { id, yardId }, values);
    if (!affected) await em.insert(ServiceRow, { id, yardId, ...values });
  }
}
