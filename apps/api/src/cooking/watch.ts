import { Injectable } from '@nestjs/common';
import { callingLimits, type Carried, type Forecast, learnFrom, ranAsForecast } from '@stokehold/domain/food';
import { type CookId, type EpochS, fromIso, HOUR_S, later, MINUTE_S, type YardId } from '@stokehold/domain/quantity';
import { DataSource } from 'typeorm';
import { FoodStore } from '../food/index.js';
import { Clock, type Deed, Outbox, Workers, WorkQueue } from '../platform/index.js';
import { CookingStore } from './cooking.store.js';
import { type CookOnHand, CooksOnHand } from './cooks-on-hand.js';
import { findingsFor, forecastView } from './outcome.js';

/** What was logged of a cook is held against the limits for so long after its last line, s. */
const JUDGED_FOR_S = 24 * HOUR_S;

/** A forecast of a long cook says the same for so long; when its readings ran otherwise than it said, for so long. */
const HOLDS_S = 30 * MINUTE_S;
const HOLDS_OTHERWISE_S = 10 * MINUTE_S;
const FORGOTTEN_AFTER_S = 2 * HOUR_S;

interface MadeForecast extends Forecast {
  readonly at: EpochS;
  /** What was done to the cook, where it lies, and which lines of its log were put right. */
  readonly basis: string;
}

const basisOf = ({ cook, cut, log }: CookOnHand) =>
  JSON.stringify([cut, cook.weightKg, cook.pieces, cook.lies, log.filter(({ kind, corrects }) => kind !== 'reading' || corrects !== null).length]);

function isFresh(made: MadeForecast | undefined, one: CookOnHand, now: EpochS): boolean {
  if (!made || made.basis !== basisOf(one) || now < made.at) return false;
  const since = one.asked?.readings?.filter(({ at }) => at > made.at) ?? [];
  const asSaid = made.done.ok && ranAsForecast(made.done.value, since, now);
  return now - made.at < (asSaid ? HOLDS_S : HOLDS_OTHERWISE_S);
}

const carriedOf = (made: MadeForecast | undefined): { readonly carried?: Carried } => (made?.carried ? { carried: made.carried } : {});

/**
 * Forecasts the cooks of a yard and holds what was logged against the limits: in a thread, while nobody waits, one look after the
 * other. A look that is asked for while one runs follows it, once. What it remembers of a cook it made better forecasts of; a
 * process that does not remember it begins anew.
 */
@Injectable()
export class Watch {
  private readonly lastAt = new Map<YardId, EpochS>();
  private readonly made = new Map<CookId, MadeForecast>();

  constructor(
    private readonly database: DataSource,
    private readonly clock: Clock,
    private readonly store: CookingStore,
    private readonly hand: CooksOnHand,
    private readonly food: FoodStore,
    private readonly workers: Workers,
    private readonly outbox: Outbox,
    private readonly queue: WorkQueue,
  ) {
    queue.serve('food-look', { do: ({ yardId }) => this.look(yardId), outdatedByNext: false });
  }

  /** Wants a look; it begins when what is being carried now is committed. */
  want(deed: Deed): void {
    this.queue.want(deed, 'food-look');
  }

  /** When food was looked at last, by the yard's clock. */
  lookedAt(yardId: YardId): EpochS | undefined {
    return this.lastAt.get(yardId);
  }

  /** Resolves when no look goes on here. */
  idle(): Promise<void> {
    return this.queue.idle('food-look');
  }

  private async look(yardId: YardId): Promise<void> {
    const em = this.database.manager;
    const now = this.clock.now(yardId);
    this.lastAt.set(yardId, now);
    const cooks = await this.hand.all(em, yardId, now, JUDGED_FOR_S);
    const hands = await this.hand.of(em, yardId, now, cooks);
    const onPits = hands.filter(({ asked, cook }) => asked !== undefined && cook.offAt === null);
    const done = await this.forecast(onPits, now);
    const limits = await this.store.limits(em, yardId);
    const short = new Map(onPits.map((one, nth) => [one.cook.id, done[nth]!]));
    const forecasts = onPits.map(({ cook }) => ({ cookId: cook.id, forecast: forecastView(short.get(cook.id)!, now) }));
    const calling = hands.flatMap((one) => {
      const forecast = short.get(one.cook.id);
      return callingLimits(findingsFor(one, limits, forecast?.ok ? forecast.value : undefined, now)).map((limit) => ({ cookId: one.cook.id, limit, pitId: one.cook.lies[0]?.pitId ?? null }));
    });
    const lessons = await this.lessons(yardId, now);
    await this.outbox.carryOut(yardId, async (deed) => {
      await this.store.saveForecasts(deed.em, forecasts);
      for (const { kind, ref, effects } of lessons.learned) await this.store.saveLearned(deed.em, yardId, kind, ref, effects);
      await this.store.markTaught(deed.em, lessons.taught);
      if (hands.length > 0) deed.tell({ kind: 'food-judged', limits: calling });
    });
  }

  /** Each cook's forecast: the one made lately where nothing speaks for another; a new one goes on from where the last one stood. */
  private async forecast(hands: readonly CookOnHand[], now: EpochS): Promise<Forecast['done'][]> {
    const stale = hands.filter((one) => !isFresh(this.made.get(one.cook.id), one, now));
    const cooks = stale.flatMap(({ cook: { id }, asked }) => (asked ? [{ cook: asked, ...carriedOf(this.made.get(id)) }] : []));
    const made = cooks.length === 0 ? [] : await this.workers.runPatiently('forecastCooks', { cooks, now });
    stale.forEach((one, nth) => this.made.set(one.cook.id, { at: now, basis: basisOf(one), ...made[nth]! }));
    for (const id of this.made.keys()) if (!hands.some(({ cook }) => cook.id === id) && now - this.made.get(id)!.at > FORGOTTEN_AFTER_S) this.made.delete(id);
    return hands.map(({ cook }) => this.made.get(cook.id)!.done);
  }

  /** What the cooks that came off since the last look teach of their cut and their pit. */
  private async lessons(yardId: YardId, now: EpochS) {
    const em = this.database.manager;
    const untaught = await this.store.untaught(em, yardId, later(now, -JUDGED_FOR_S));
    if (untaught.length === 0) return { taught: [], learned: [] };
    const ids = untaught.map(({ cookId }) => cookId);
    const cooks = (await this.food.cooks(em, { yardId })).filter(({ id }) => ids.includes(id));
    const hands = await this.hand.of(em, yardId, now, cooks, new Map(untaught.map(({ cookId, ...place }) => [cookId, place])));
    const finished = hands.filter((one): one is CookOnHand & { asked: NonNullable<CookOnHand['asked']> } => one.asked !== undefined && one.cook.offAt !== null);
    const lessons = finished.length === 0 ? [] : await this.workers.runPatiently('lessonsOf', { finished: finished.map(({ asked, cook }) => ({ cook: asked, offAt: fromIso(cook.offAt!) })) });
    const known = await this.store.learned(em, yardId);
    const learned = new Map<string, { kind: 'cut' | 'pit'; ref: string; effects: ReturnType<typeof known> }>();
    finished.forEach(({ cut, place }, nth) => {
      const lesson = lessons[nth]!;
      if (!lesson.ok || !cut || !place || Object.keys(lesson.value).length === 0) return;
      const of = (kind: 'cut' | 'pit', ref: string) => learned.get(`${kind}/${ref}`)?.effects ?? known(kind, ref);
      const after = learnFrom({ cut: of('cut', cut.code), pit: of('pit', place.pitId) }, lesson.value);
      learned.set(`cut/${cut.code}`, { kind: 'cut', ref: cut.code, effects: after.cut });
      learned.set(`pit/${place.pitId}`, { kind: 'pit', ref: place.pitId, effects: after.pit });
    });
    return { taught: ids, learned: [...learned.values()] };
  }
}
