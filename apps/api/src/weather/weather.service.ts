import { Injectable } from '@nestjs/common';
import { believedWind, type GustOnPit, gustsAhead, SEEN_WIND_HOLDS_S, type WindTold } from '@stokehold/domain/chamber';
import type { Done, RecordWeather, WeatherView } from '@stokehold/domain/contract';
import { type EpochS, fromIso, HOUR_S, later, type PitId, toIso, type YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { type Actor, Commands } from '../platform/index.js';
import { Forecasts } from './forecasts.service.js';
import { WeatherStore } from './weather.store.js';

/** What is reckoned with until somebody has said how the wind stands. Source: our own choice, a mild calm night. */
const NOTHING_KNOWN: WeatherView = { windMPerS: 0, gustMPerS: 0, fromDeg: 0, ambientTempC: 15, rainFrac: 0, seenAt: null, source: 'supposed' };
/** What was seen further back says nothing of this night's wind. */
const A_NIGHT_S = 12 * HOUR_S;

/** The weather at the yard as it was seen last. */
@Injectable()
export class WeatherNow {
  constructor(
    private readonly commands: Commands,
    private readonly store: WeatherStore,
    private readonly forecasts: Forecasts,
  ) {}

  /**
   * What somebody saw lately; else what a forecast says of now; else what was seen last, however long ago. With its age, or `seenAt`
   * null when nothing is known.
   */
  async at(em: EntityManager, yardId: YardId, now: EpochS): Promise<WeatherView> {
    const seen = await this.store.last(em, yardId, now);
    if (seen?.seenAt && now - fromIso(seen.seenAt) <= SEEN_WIND_HOLDS_S) return seen;
    const forecast = await this.forecasts.ahead(em, yardId, now);
    const hour = forecast?.hours.find(({ from, until }) => from <= now && until > now);
    if (!forecast || !hour) return seen ?? NOTHING_KNOWN;
    const { windMPerS, gustMPerS, ambientTempC, fromDeg } = hour;
    // A chance of rain is no rain.
    return { windMPerS, gustMPerS, ambientTempC, fromDeg: fromDeg ?? 0, rainFrac: seen?.rainFrac ?? 0, seenAt: toIso(forecast.fetchedAt), source: 'forecast' };
  }

  /** Pits of these onto which strong gusts are forecast within a time. */
  async gustsAhead(em: EntityManager, yardId: YardId, asked: { readonly now: EpochS; readonly withinS: number; readonly pits: readonly { readonly id: PitId; readonly fireEndHeadingDeg: number }[] }): Promise<GustOnPit[]> {
    const [seen, forecast] = await Promise.all([this.store.last(em, yardId, asked.now), this.forecasts.ahead(em, yardId, asked.now)]);
    const isFresh = seen?.seenAt && asked.now - fromIso(seen.seenAt) <= SEEN_WIND_HOLDS_S;
    const hours = (forecast?.hours ?? []).map((hour) => ({ ...hour, fromDeg: hour.fromDeg ?? undefined }));
    return gustsAhead({ ...asked, hours, seenGustMPerS: isFresh ? seen.gustMPerS : 0 });
  }

  /** What fires are reckoned with: as seen last, but a burst of wind blows over; a forecast as it is. */
  async believed(em: EntityManager, yardId: YardId, now: EpochS): Promise<WeatherView> {
    const since = later(now, -A_NIGHT_S);
    const [seen, winds] = await Promise.all([this.at(em, yardId, now), this.store.winds(em, yardId, { since, now })]);
    if (seen.source === 'forecast') return seen;
    return { ...seen, ...believedWind(winds.filter(({ seenAt }) => seenAt > since), now) };
  }

  /** What was told of the wind that holds in a stretch of time, oldest first. */
  toldIn(em: EntityManager, yardId: YardId, { from, until }: { readonly from: EpochS; readonly until: EpochS }): Promise<WindTold[]> {
    return this.store.askWinds(em, yardId, { since: later(from, -SEEN_WIND_HOLDS_S), now: until });
  }

  record(actor: Actor, command: RecordWeather): Promise<Done> {
    return this.commands.run(actor, 'record-weather', command, async (deed) => {
      const { key: _key, seenAt, ...weather } = command;
      // By a phone whose clock is fast it is seen when it arrives: nobody saw it later.
      const seen = Math.min(fromIso(seenAt), deed.now) as EpochS;
      await this.store.add(deed.em, deed.yardId, { ...weather, seenAt: seen });
      deed.tell({ kind: 'weather-recorded' });
      return { done: true };
    });
  }
}
