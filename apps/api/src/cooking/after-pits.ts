import { Injectable } from '@nestjs/common';
import type { AfterPitView, RouteInput, Routes } from '@stokehold/domain/contract';
import type { AfterPit } from '@stokehold/domain/food';
import { type EpochS, fromIso, later, toIso } from '@stokehold/domain/quantity';
import { DataSource } from 'typeorm';
import { FoodStore } from '../food/index.js';
import { type Actor, Clock, refused, Workers } from '../platform/index.js';
import { WeatherNow } from '../weather/index.js';
import { CookingStore } from './cooking.store.js';
import { CooksOnHand } from './cooks-on-hand.js';
import { limitsOf } from './cut-of.js';

/** What becomes of a cook after the pit, as it is meant; asked, answered, kept nowhere. */
@Injectable()
export class AfterPits {
  constructor(
    private readonly database: DataSource,
    private readonly clock: Clock,
    private readonly store: CookingStore,
    private readonly hand: CooksOnHand,
    private readonly food: FoodStore,
    private readonly weather: WeatherNow,
    private readonly workers: Workers,
  ) {}

  async of({ yardId }: Actor, { cookId, ...meant }: RouteInput<Routes['afterPit']>): Promise<AfterPitView> {
    const em = this.database.manager;
    const now = this.clock.now(yardId);
    const [cook] = await this.food.cooks(em, { id: cookId, yardId });
    if (!cook) return refused('cook-unknown', 'There is no such cook. Open the night to see what is planned.');
    const lay = await this.store.lastPlaces(em, [cook.id]);
    const [one] = await this.hand.of(em, yardId, now, [cook], new Map(lay.map(({ cookId: id, ...place }) => [id, place])));
    const offAt = cook.offAt === null ? undefined : fromIso(cook.offAt);
    const leavesAt = offAt ?? (cook.forecast?.p50At ? fromIso(cook.forecast.p50At) : undefined);
    if (!one?.asked || leavesAt === undefined) return refused('cook-not-on', 'This cook lay on no pit yet, or its cut is not known. Place it and choose a cut of the list.');
    const { ambientTempC } = await this.weather.at(em, yardId, now);
    const limits = limitsOf(await this.store.limits(em, yardId));
    const answer = await this.workers.run('afterPit', { cook: one.asked, now, ...(offAt !== undefined && { offAt }), limits, outsideC: ambientTempC, ...meant });
    return answer.ok ? shown(answer.value, leavesAt) : refused('cook-not-on', 'This cook cannot be forecast. Correct its weight or its cut.');
  }
}

/** The forecast on the clock. */
function shown({ leavesC, peakC, peakS, hold, cool }: AfterPit, offAt: EpochS): AfterPitView {
  const at = (seconds: number) => toIso(later(offAt, seconds));
  const atOrNull = (seconds: number | undefined) => (seconds === undefined ? null : at(seconds));
  const { advice } = cool;
  return {
    offAt: toIso(offAt), leavesC, peakC, peakAt: at(peakS),
    hold: { limitC: hold.limitC, section: hold.section, coreBelowAt: atOrNull(hold.coreBelowS), outsideBelowAt: atOrNull(hold.outsideBelowS), endsC: hold.endsC },
    cool: { fromAt: at(cool.fromS), section: cool.section, advice: advice.code, byAt: advice.code === 'cut-by' ? at(cool.fromS + advice.byS) : null, thickestM: cool.thickestM ?? null },
  };
}
