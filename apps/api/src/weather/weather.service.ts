import { Injectable } from '@nestjs/common';
import type { Done, RecordWeather, WeatherView } from '@stokehold/domain/contract';
import { type EpochS, fromIso, type YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { type Actor, Commands } from '../platform/index.js';
import { WeatherStore } from './weather.store.js';

/** What is reckoned with until somebody has said how the wind stands. Source: our own choice, a mild calm night. */
const NOTHING_KNOWN: WeatherView = { windMPerS: 0, gustMPerS: 0, fromDeg: 0, ambientTempC: 15, rainFrac: 0, seenAt: null };

/** The weather at the yard as it was seen last. */
@Injectable()
export class WeatherNow {
  constructor(
    private readonly commands: Commands,
    private readonly store: WeatherStore,
  ) {}

  /** With its age, or `seenAt` null when nothing was recorded yet. */
  async at(em: EntityManager, yardId: YardId, now: EpochS): Promise<WeatherView> {
    return (await this.store.last(em, yardId, now)) ?? NOTHING_KNOWN;
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
