import { Injectable } from '@nestjs/common';
import { Cron } from '@nestjs/schedule';
import type { Done, ForecastView, RouteInput, Routes } from '@stokehold/domain/contract';
import { type EpochS, HOUR_S, toIso, type YardId } from '@stokehold/domain/quantity';
import { DataSource, type EntityManager } from 'typeorm';
import { type Actor, Clock, Commands, Leading, log, Outbox, Remembered } from '../platform/index.js';
import type { ForecastHour } from './forecast-forms.js';
import { ForecastRow } from './forecast.row.js';
import { fetchForecast, type ForecastTrouble } from './forecast-service.js';

/** A forecast older than this says nothing of now. Source: our own choice. */
const HOLDS_S = 12 * HOUR_S;

interface KeptForecast {
  readonly hours: readonly ForecastHour[];
  readonly fetchedAt: EpochS;
}

/** The hours ahead, from a public service where one is set and the yard has said where it stands; off otherwise. */
@Injectable()
export class Forecasts {
  private address: string | undefined;
  private readonly remembered = new Remembered<KeptForecast | undefined>(['weather-recorded']);

  constructor(
    private readonly database: DataSource,
    private readonly clock: Clock,
    private readonly commands: Commands,
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
    if (!this.leading.isMine) return;
    await this.askForAll().catch((error: unknown) => log.error({ err: error }, 'forecasts could not be asked for; the next hour does it'));
  }

  /** Asks for every yard that said where it stands; practice yards have a sky of their own. */
  async askForAll(): Promise<void> {
    if (!this.address) return;
    const yards = (await this.database.query('select yard_id, lat_deg, lon_deg from forecast join yard on yard.id = yard_id where not practice')) as { yard_id: YardId; lat_deg: number; lon_deg: number }[];
    for (const { yard_id, lat_deg, lon_deg } of yards) await this.askFor(yard_id, { latDeg: lat_deg, lonDeg: lon_deg }, this.address);
  }

  /** The hours ahead that still hold. */
  async ahead(em: EntityManager, yardId: YardId, now: EpochS): Promise<KeptForecast | undefined> {
    const kept = await this.remembered.once(em, yardId, async () => {
      const row = await em.findOne(ForecastRow, { where: { yardId } });
      return row?.fetchedAt ? { hours: row.hours, fetchedAt: Math.floor(row.fetchedAt.getTime() / 1000) as EpochS } : undefined;
    });
    return kept && now - kept.fetchedAt <= HOLDS_S ? kept : undefined;
  }

  async view({ yardId }: Actor): Promise<ForecastView> {
    const row = await this.database.manager.findOne(ForecastRow, { where: { yardId } });
    const now = this.clock.now(yardId);
    return {
      asked: this.address !== undefined,
      place: row && { latDeg: row.latDeg, lonDeg: row.lonDeg },
      fetchedAt: row?.fetchedAt ? toIso((row.fetchedAt.getTime() / 1000) as EpochS) : null,
      trouble: row?.failingSince ? { since: toIso((row.failingSince.getTime() / 1000) as EpochS), why: row.trouble as ForecastTrouble } : null,
      hours: (row?.hours ?? []).filter(({ until }) => until > now).slice(0, 24).map(({ from, until, ...hour }) => ({ ...hour, from: toIso(from), until: toIso(until) })),
    };
  }

  /** Where the yard stands; what was forecast for another place is let go, and the service is asked at once. */
  async savePlace(actor: Actor, command: RouteInput<Routes['saveForecastPlace']>): Promise<Done> {
    const { latDeg, lonDeg } = command;
    const done = await this.commands.run<Done>(actor, 'save-forecast-place', command, async (deed) => {
      this.remembered.forget(deed.em);
      await deed.em.upsert(ForecastRow, { yardId: deed.yardId, latDeg, lonDeg, hours: [], fetchedAt: null, failingSince: null, trouble: null }, ['yardId']);
      deed.tell({ kind: 'weather-recorded' });
      return { done: true };
    });
    if (this.address) void this.askFor(actor.yardId, command, this.address).catch((error: unknown) => log.error({ err: error }, 'the first forecast could not be asked for'));
    return done;
  }

  /** What came is kept; what did not come is said with since when, and what was known before stays with its age. */
  private async askFor(yardId: YardId, at: { readonly latDeg: number; readonly lonDeg: number }, address: string): Promise<void> {
    const forecast = await fetchForecast(address, at);
    await this.outbox.carryOut(yardId, async (deed) => {
      if ('trouble' in forecast) {
        await deed.em.query('update forecast set failing_since = coalesce(failing_since, $2), trouble = $3 where yard_id = $1', [yardId, toIso(deed.now), forecast.trouble]);
        return;
      }
      this.remembered.forget(deed.em);
      await deed.em.query('update forecast set hours = $2::jsonb, fetched_at = $3, failing_since = null, trouble = null where yard_id = $1', [yardId, JSON.stringify(forecast.hours), toIso(deed.now)]);
      deed.tell({ kind: 'weather-recorded' });
    });
    if ('trouble' in forecast) log.warn({ yardId, trouble: forecast.trouble }, 'no forecast came');
    else if (forecast.unreadable > 0) log.warn({ yardId, unreadable: forecast.unreadable }, 'some hours of the forecast could not be read');
  }
}
