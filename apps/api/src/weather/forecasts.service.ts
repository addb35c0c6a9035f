import { Injectable } from '@nestjs/common';
import { Cron } from '@nestjs/schedule';
import type { ForecastView } from '@stokehold/domain/contract';
import { type EpochS, HOUR_S, toIso, type YardId } from '@stokehold/domain/quantity';
import { DataSource, type EntityManager } from 'typeorm';
import { type Actor, Clock, Leading, log, Outbox, Remembered } from '../platform/index.js';
import type { ForecastHour } from './forecast-forms.js';
import { ForecastRow } from './forecast.row.js';
import { fetchForecast, type ForecastTrouble } from './forecast-service.js';

/** A forecast older than this says nothing of now. Source: our own choice. */
const HOLDS_S = 12 * HOUR_S;

/** Where a forecast is of the place in which its yard lies. */
const OF_ITS_PLACE = 'yard.id = forecast.yard_id and yard.latitude_deg = forecast.lat_deg and yard.longitude_deg = forecast.lon_deg';

/** New hours take the place of what was known; without any it stays, and since when none came. */
const KEEP = `
  insert into forecast (yard_id, lat_deg, lon_deg, hours, fetched_at, failing_since, trouble) values ($1, $2, $3, $4::jsonb, $5, $6, $7)
  on conflict (yard_id) do update set
    hours = case when excluded.trouble is null then excluded.hours else forecast.hours end,
    fetched_at = coalesce(excluded.fetched_at, forecast.fetched_at),
    failing_since = case when excluded.trouble is not null then coalesce(forecast.failing_since, excluded.failing_since) end,
    trouble = excluded.trouble`;

interface KeptForecast {
  readonly hours: readonly ForecastHour[];
  readonly fetchedAt: EpochS;
}

/** The hours ahead, from a public service where one is set and the yard has said where it stands; off otherwise. */
@Injectable()
export class Forecasts {
  private address: string | undefined;
  private readonly remembered = new Remembered<KeptForecast | undefined>(['weather-recorded', 'yard-set-up']);

  constructor(
    private readonly database: DataSource,
    private readonly clock: Clock,
    private readonly outbox: Outbox,
    private readonly leading: Leading,
  ) {}

  /** From now on the service at this address is asked: at once by the process that leads, and by one that takes the lead. */
  askAt(address: string): void {
    this.address = address;
    this.leading.whileLeading({ begin: () => void this.everyHour() });
  }

  @Cron('0 7 * * * *', { waitForCompletion: true })
  async everyHour(): Promise<void> {
    await this.ifLeading(() => this.askForAll());
  }

  /** A yard that said where it lies, or lies elsewhere now, does not wait for the hour. */
  @Cron('20 * * * * *', { waitForCompletion: true })
  async everyMinute(): Promise<void> {
    await this.ifLeading(() => this.askForMoved());
  }

  /** Asks for every yard that said where it lies; practice yards have a sky of their own. */
  askForAll(): Promise<void> {
    return this.askWhere('true');
  }

  /** Asks for yards whose forecast is of another place, or that were never asked for. */
  askForMoved(): Promise<void> {
    return this.askWhere(`not exists (select from forecast where ${OF_ITS_PLACE})`);
  }

  private async askWhere(condition: string): Promise<void> {
    if (!this.address) return;
    const yards = (await this.database.query(`select id, latitude_deg, longitude_deg from yard where not practice and latitude_deg is not null and ${condition} order by created_at, id`)) as { id: YardId; latitude_deg: number; longitude_deg: number }[];
    for (const { id, latitude_deg, longitude_deg } of yards) await this.askFor(id, { latDeg: latitude_deg, lonDeg: longitude_deg }, this.address);
  }

  private async ifLeading(ask: () => Promise<void>): Promise<void> {
    if (!this.leading.isMine) return;
    await ask().catch((error: unknown) => log.error({ err: error }, 'forecasts could not be asked for; the next hour does it'));
  }

  /** The hours ahead that still hold. */
  async ahead(em: EntityManager, yardId: YardId, now: EpochS): Promise<KeptForecast | undefined> {
    const kept = await this.remembered.once(em, yardId, async () => {
      const row = await this.ofItsPlace(em, yardId);
      return row?.fetchedAt ? { hours: row.hours, fetchedAt: Math.floor(row.fetchedAt.getTime() / 1000) as EpochS } : undefined;
    });
    return kept && now - kept.fetchedAt <= HOLDS_S ? kept : undefined;
  }

  async view({ yardId }: Actor): Promise<ForecastView> {
    const em = this.database.manager;
    const [row, [yard]] = await Promise.all([this.ofItsPlace(em, yardId), em.query('select latitude_deg is not null as placed from yard where id = $1', [yardId]) as Promise<{ placed: boolean }[]>]);
    const now = this.clock.now(yardId);
    return {
      asked: this.address !== undefined,
      placed: yard?.placed ?? false,
      fetchedAt: row?.fetchedAt ? toIso((row.fetchedAt.getTime() / 1000) as EpochS) : null,
      trouble: row?.failingSince ? { since: toIso((row.failingSince.getTime() / 1000) as EpochS), why: row.trouble as ForecastTrouble } : null,
      hours: (row?.hours ?? []).filter(({ until }) => until > now).slice(0, 24).map(({ from, until, ...hour }) => ({ ...hour, from: toIso(from), until: toIso(until) })),
    };
  }

  /** What was said of the place where the yard lies now; of another place, it says nothing. */
  private ofItsPlace(em: EntityManager, yardId: YardId): Promise<ForecastRow | null> {
    return em.createQueryBuilder(ForecastRow, 'forecast').innerJoin('yard', 'yard', OF_ITS_PLACE).where('forecast.yard_id = :yardId', { yardId }).getOne();
  }

  /** What came is kept; what did not come is said with since when, and what was known of this place before stays with its age. */
  private async askFor(yardId: YardId, at: { readonly latDeg: number; readonly lonDeg: number }, address: string): Promise<void> {
    const forecast = await fetchForecast(address, at);
    await this.outbox.carryOut(yardId, async (deed) => {
      this.remembered.forget(deed.em);
      await deed.em.query('delete from forecast where yard_id = $1 and (lat_deg, lon_deg) <> ($2, $3)', [yardId, at.latDeg, at.lonDeg]);
      const [failingSince, trouble] = 'trouble' in forecast ? [toIso(deed.now), forecast.trouble] : [null, null];
      const [hours, fetchedAt] = 'trouble' in forecast ? ['[]', null] : [JSON.stringify(forecast.hours), toIso(deed.now)];
      await deed.em.query(KEEP, [yardId, at.latDeg, at.lonDeg, hours, fetchedAt, failingSince, trouble]);
      if (!('trouble' in forecast)) deed.tell({ kind: 'weather-recorded' });
    });
    if ('trouble' in forecast) log.warn({ yardId, trouble: forecast.trouble }, 'no forecast came');
    else if (forecast.unreadable > 0) log.warn({ yardId, unreadable: forecast.unreadable }, 'some hours of the forecast could not be read');
  }
}
