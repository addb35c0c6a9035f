import { Injectable } from '@nestjs/common';
import type { WeatherView } from '@stokehold/domain/contract';
import { type EpochS, epochS, toIso, type YardId } from '@stokehold/domain/quantity';
import { type EntityManager, LessThanOrEqual } from 'typeorm';
import { Ids } from '../platform/index.js';
import { WeatherRow } from './weather.row.js';

export type Seen = Omit<WeatherView, 'seenAt'> & { readonly seenAt: EpochS };

@Injectable()
export class WeatherStore {
  constructor(private readonly ids: Ids) {}

  async add(em: EntityManager, yardId: YardId, { seenAt, ...weather }: Seen): Promise<void> {
    await em.insert(WeatherRow, { ...weather, id: this.ids.next(), yardId, seenAt: new Date(seenAt * 1000) });
  }

  /** What was seen last, up to `now`. */
  async last(em: EntityManager, yardId: YardId, now: EpochS): Promise<WeatherView | undefined> {
    const row = await em.findOne(WeatherRow, {
      where: { yardId, seenAt: LessThanOrEqual(new Date(now * 1000)) },
      order: { seenAt: 'DESC', id: 'DESC' },
    });
    if (!row) return undefined;
    const { id: _id, yardId: _yardId, seenAt, ...weather } = row;
    return { ...weather, seenAt: toIso(epochS(seenAt.getTime() / 1000)) };
  }
}
