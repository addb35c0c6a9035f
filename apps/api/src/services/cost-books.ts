import { Injectable } from '@nestjs/common';
import type { CrewMember, PayRulesView, ServiceSettings } from '@stokehold/domain/contract';
import type { BurnedWood, Span } from '@stokehold/domain/cost';
import { type Cents, type CookId, type EpochS, fromIso, HOUR_S, later, type LotId, type PitId, type ServiceId, type YardId } from '@stokehold/domain/quantity';
import type { KeptShift } from '@stokehold/domain/shift';
import type { EntityManager } from 'typeorm';
import { FoodStore, type Lay } from '../food/index.js';
import { Clock } from '../platform/index.js';
import { Shifts } from '../shifts/index.js';
import { type Lot, WoodStore } from '../wood/index.js';
import { Yards } from '../yards/index.js';
import { ByDay } from './by-day.js';
import { nightsIn, USUAL_RULES } from './pay-of-night.js';
import { ServicesStore, type WeighedCook } from './services.store.js';

/** What was burned or worked longer before the service than this was for another meal. */
export const NIGHT_BEFORE_S = 20 * HOUR_S;

/** A stay of a cook that is not over lasts to the end of the books. */
export type KeptLay = Omit<Lay, 'until'> & { readonly until: EpochS };

/** Everything that some services cost, read once. */
export interface Books {
  readonly now: EpochS;
  readonly cooks: ReadonlyMap<CookId, WeighedCook>;
  readonly cooksOf: ReadonlyMap<ServiceId, readonly WeighedCook[]>;
  readonly lots: readonly Lot[];
  readonly crew: readonly CrewMember[];
  readonly lays: ByDay<KeptLay>;
  /** What burned, in order of time: one entry a pit, lot and stretch in which the same cooks lay there, at the beginning of the stretch. */
  readonly burned: readonly BurnedWood[];
  readonly burnedAt: readonly EpochS[];
  /** Splits of each lot that were burned before all this. */
  readonly burnedBefore: ReadonlyMap<LotId, number>;
  readonly shifts: ByDay<KeptShift>;
  readonly meat: ReadonlyMap<CookId, Cents>;
  readonly pay: { readonly crew: readonly CrewMember[]; readonly rules: PayRulesView; readonly nights: ByDay<Span> };
}

/** The hours before a service, up to now while it is not ready. */
export function spanOf(service: ServiceSettings, now: EpochS): Span {
  const readyBy = fromIso(service.readyBy);
  return { from: later(readyBy, -NIGHT_BEFORE_S), until: now < readyBy ? now : readyBy };
}

/** Reads the books that the sheets of services are made from. */
@Injectable()
export class CostBooks {
  constructor(
    private readonly clock: Clock,
    private readonly store: ServicesStore,
    private readonly food: FoodStore,
    private readonly wood: WoodStore,
    private readonly shifts: Shifts,
    private readonly yards: Yards,
  ) {}

  /** @param services  one at least */
  async read(em: EntityManager, yardId: YardId, services: readonly ServiceSettings[]): Promise<Books> {
    const now = this.clock.now(yardId);
    const spans = services.map((service) => spanOf(service, now));
    const span: Span = { from: Math.min(...spans.map(({ from }) => from)) as EpochS, until: Math.max(...spans.map(({ until }) => until)) as EpochS };
    const [crew, pits, { timeZone }] = [await this.yards.crew(em, yardId), await this.yards.pits(em, yardId), await this.yards.settings(em, yardId)];
    const rules = (await this.store.payRules(em, yardId)) ?? USUAL_RULES;
    const cooks = await this.store.weighed(em, yardId);
    const lays = (await this.food.lays(em, yardId)).map((lay): KeptLay => ({ ...lay, until: lay.until ?? span.until })).filter(({ from, until }) => from < span.until && until > span.from);
    const burned = await this.wood.burnedBetween(em, yardId, span, marksOf(pits.map(({ id }) => id), lays, spans));
    return {
      now, crew, lots: await this.wood.lots(em, yardId), lays: new ByDay(lays), cooks: new Map(cooks.map((cook) => [cook.id, cook])), cooksOf: byService(cooks),
      burned, burnedAt: burned.map(({ at }) => at), burnedBefore: await this.wood.burnedBefore(em, yardId, span.from),
      shifts: new ByDay(await this.shifts.between(em, yardId, span.from, span.until)), meat: await this.store.meat(em, yardId),
      pay: { crew, rules, nights: new ByDay(nightsIn(span, rules, timeZone)) },
    };
  }
}

/** Of each pit the instants at which somebody else begins to carry its fire, or a service's hours begin or end. */
function marksOf(pitIds: readonly PitId[], lays: readonly KeptLay[], spans: readonly Span[]): ReadonlyMap<PitId, readonly EpochS[]> {
  const ends = spans.flatMap(({ from, until }) => [from, later(until, 1)]);
  const all = new Map(pitIds.map((pitId) => [pitId, new Set<EpochS>(ends)]));
  for (const { pitId, from, until } of lays) all.get(pitId)?.add(from).add(until);
  return new Map([...all].map(([pitId, marks]) => [pitId, [...marks].sort((a, b) => a - b)]));
}

function byService(cooks: readonly WeighedCook[]): ReadonlyMap<ServiceId, readonly WeighedCook[]> {
  const of = new Map<ServiceId, WeighedCook[]>();
  for (const cook of cooks) if (cook.serviceId !== null) of.set(cook.serviceId, [...(of.get(cook.serviceId) ?? []), cook]);
  return of;
}
