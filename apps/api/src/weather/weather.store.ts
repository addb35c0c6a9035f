import { Injectable } from '@nestjs/common';
import type { WindTold } from '@stokehold/domain/chamber';
import type { WeatherView } from '@stokehold/domain/contract';
import { type EpochS, epochS, toIso, type YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { Ids, Remembered } from '../platform/index.js';
import { WeatherRow } from './weather.row.js';

export type Seen = Omit<WeatherView, 'seenAt' | 'source'> & { readonly seenAt: EpochS };

@Injectable()
export class WeatherStore {
  private readonly remembered = new Remembered<WeatherView | undefined>(['weather-recorded']);

  private readonly winded = new Remembered<WindTold[]>(['weather-recorded']);

  constructor(private readonly ids: Ids) {}

  async add(em: EntityManager, yardId: YardId, { seenAt, ...weather }: Seen): Promise<void> {
    this.remembered.forget(em);
    this.winded.forget(em);
    await em.insert(WeatherRow, { ...weather, id: this.ids.next(), yardId, seenAt: new Date(seenAt * 1000) });
  }

  /** How the wind stood since a time, oldest first. */
  winds(em: EntityManager, yardId: YardId, span: { readonly since: EpochS; readonly now: EpochS }): Promise<WindTold[]> {
    return this.winded.once(em, yardId, () => this.askWinds(em, yardId, span));
  }

  /** The same of any time, not remembered. */
  askWinds(em: EntityManager, yardId: YardId, { since, now }: { readonly since: EpochS; readonly now: EpochS }): Promise<WindTold[]> {
    return em.query(
      `select wind_m_per_s as "windMPerS", gust_m_per_s as "gustMPerS", from_deg as "fromDeg", extract(epoch from seen_at)::float8 as "seenAt"
       from weather where yard_id = $1 and seen_at > $2 and seen_at <= $3 order by seen_at, id`,
      [yardId, toIso(since), toIso(now)],
    );
  }

  /** What was seen last, up to `now`. */
  last(em: EntityManager, yardId: YardId, now: EpochS): Promise<WeatherView | undefined> {
    return this.remembered.once(em, yardId, async () => {
      const [seen] = (await em.query(
        `select wind_m_per_s as "windMPerS", gust_m_per_s as "gustMPerS", from_deg as "fromDeg", ambient_temp_c as "ambientTempC", rain_frac as "rainFrac",
           extract(epoch from seen_at)::float8 as "seenAt" from weather where yard_id = $1 and seen_at <= $2 order by seen_at desc, id desc limit 1`,
        [yardId, toIso(now)],
      )) as Seen[];
      return seen && { ...seen, seenAt: toIso(epochS(seen.seenAt)), source: 'seen' as const };
    });
  }
}
