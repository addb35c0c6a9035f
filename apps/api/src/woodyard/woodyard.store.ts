import { Injectable } from '@nestjs/common';
import type { SaveClimate } from '@stokehold/domain/contract';
import type { ShiftId, YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { Remembered } from '../platform/index.js';
import { WoodPullRow } from './wood-pull.row.js';
import { YardClimateRow } from './yard-climate.row.js';

@Injectable()
export class WoodyardStore {
  /** A change of the climate is told as a change of the yard. */
  private readonly remembered = new Remembered<SaveClimate['months'] | undefined>(['yard-set-up']);

  /** Twelve months, January first; nothing where nobody has said. */
  climate(em: EntityManager, yardId: YardId): Promise<SaveClimate['months'] | undefined> {
    return this.remembered.once(em, yardId, async () => {
      const rows = await em.find(YardClimateRow, { where: { yardId }, order: { month: 'asc' } });
      return rows.length === 12 ? rows.map(({ tempC, humidityFrac }) => ({ tempC, humidityFrac })) : undefined;
    });
  }

  async saveClimate(em: EntityManager, yardId: YardId, months: SaveClimate['months']): Promise<void> {
    this.remembered.forget(em);
    await em.delete(YardClimateRow, { yardId });
    await em.insert(YardClimateRow, months.map((month, i) => ({ yardId, month: i + 1, ...month })));
  }

  async currentPull(em: EntityManager, yardId: YardId): Promise<WoodPullRow | undefined> {
    return (await em.findOneBy(WoodPullRow, { yardId, isCurrent: true })) ?? undefined;
  }

  /** What was planned before the night of a shift went its own way. */
  async firstPull(em: EntityManager, shiftId: ShiftId): Promise<WoodPullRow | undefined> {
    const [first] = await em.find(WoodPullRow, { where: { shiftId }, order: { madeAt: 'asc', id: 'asc' }, take: 1 });
    return first;
  }

  async replacePull(em: EntityManager, pull: WoodPullRow): Promise<void> {
    await em.update(WoodPullRow, { yardId: pull.yardId, isCurrent: true }, { isCurrent: false });
    await em.insert(WoodPullRow, pull as never);
  }
}
