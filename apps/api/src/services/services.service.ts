import { Injectable } from '@nestjs/common';
import type { CookView, CrewMember, ServiceCost } from '@stokehold/domain/contract';
import { type NightCost, nightCost, type Stay } from '@stokehold/domain/cost';
import { type Cents, cents, type CookId, type EpochS, fromIso, HOUR_S, later, type ServiceId, type YardId } from '@stokehold/domain/quantity';
import { wetMassKg } from '@stokehold/domain/wood';
import { DataSource, type EntityManager } from 'typeorm';
import { Food, FoodStore, type Lay } from '../food/index.js';
import { type Actor, Clock } from '../platform/index.js';
import { Shifts } from '../shifts/index.js';
import { type Lot, WoodStore } from '../wood/index.js';
import { Yards } from '../yards/index.js';

/** What was burned or worked longer before the service than this was for another meal. */
const NIGHT_BEFORE_S = 20 * HOUR_S;
const sumOf = <T>(all: readonly T[], of: (one: T) => number) => all.reduce((sum, one) => sum + of(one), 0);
const sumCents = (all: readonly { costCents: Cents }[]) => cents(sumOf(all, ({ costCents }) => costCents));

/** What a service costs: the wood its cooks' fires burned and the hours that kept them. */
@Injectable()
export class Services {
  constructor(
    private readonly database: DataSource,
    private readonly clock: Clock,
    private readonly food: Food,
    private readonly foodStore: FoodStore,
    private readonly wood: WoodStore,
    private readonly shifts: Shifts,
    private readonly yards: Yards,
  ) {}

  async cost(actor: Actor, serviceId: ServiceId): Promise<ServiceCost> {
    const { yardId } = actor;
    const em = this.database.manager;
    const now = this.clock.now(yardId);
    const service = await this.food.service(em, yardId, serviceId);
    const cooks = await this.foodStore.cooks(em, { yardId });
    const own = cooks.filter((cook) => cook.serviceId === serviceId);
    const readyBy = fromIso(service.readyBy);
    const night = { from: later(readyBy, -NIGHT_BEFORE_S), until: now < readyBy ? now : readyBy };
    const lots = await this.wood.lots(em, yardId);
    const crew = await this.yards.crew(em, yardId);
    return sheetOf({ service, own, lots, crew, night: await this.costOf(em, yardId, { ...night, cooks, lots, crew }) });
  }

  private async costOf(em: EntityManager, yardId: YardId, night: Night): Promise<NightCost> {
    const { from, until, cooks, lots, crew } = night;
    const lays = await this.foodStore.lays(em, yardId);
    const paid = await this.shifts.paid(em, yardId, from, until);
    return nightCost({
      stays: lays.filter((lay) => lay.from < until && (lay.until ?? until) > from).map((lay) => stayOf(lay, cooks, until)),
      burned: (await this.wood.burned(em, yardId)).filter(({ at }) => from <= at && at <= until),
      lots: lots.map((lot) => ({ lotId: lot.id, priceCents: cents(lot.priceCents), boughtPieces: lot.boughtPieces })),
      paid: paid.map(({ personId, paidS }) => ({ personId, workedS: paidS, centsPerHour: crew.find(({ id }) => id === personId)?.rateCentsPerHour ?? 0 })),
    });
  }
}

/** The stretch of time that a service is charged for, and who and what there is to charge. */
interface Night {
  readonly from: EpochS;
  readonly until: EpochS;
  readonly cooks: readonly CookView[];
  readonly lots: readonly Lot[];
  readonly crew: readonly CrewMember[];
}

function stayOf(lay: Lay, cooks: readonly CookView[], until: EpochS): Stay {
  const cook = cooks.find(({ id }) => id === lay.cookId);
  const weightKg = cook ? (cook.weightKg * lay.pieces) / cook.pieces : 0;
  return { cookId: lay.cookId, pitId: lay.pitId, weightKg, from: lay.from, until: lay.until ?? until };
}

function sheetOf(given: {
  service: ServiceCost['service'];
  own: readonly CookView[];
  lots: readonly Lot[];
  crew: readonly CrewMember[];
  night: NightCost;
}): ServiceCost {
  const { service, own, lots, crew } = given;
  const isOwn = ({ cookId }: { cookId: CookId | null }) => own.some(({ id }) => id === cookId);
  const wood = given.night.wood.filter(isOwn);
  const hours = given.night.crew.filter(isOwn);
  const woodCents = sumCents(wood);
  const crewCents = sumCents(hours);
  const totalCents = cents(woodCents + crewCents);
  const servedKg = sumOf(own, ({ yieldKg, weightKg }) => yieldKg ?? weightKg);
  return {
    service,
    cooks: own.map((cook) => ({
      cook,
      woodCents: sumCents(wood.filter(({ cookId }) => cookId === cook.id)),
      crewCents: sumCents(hours.filter(({ cookId }) => cookId === cook.id)),
    })),
    wood: lots.flatMap((lot) => {
      const shares = wood.filter(({ lotId }) => lotId === lot.id);
      const splits = sumOf(shares, ({ pieces }) => pieces);
      return shares.length > 0 ? [{ lot: lot.name, splits, massKg: splits * wetMassKg(lot), costCents: sumCents(shares) }] : [];
    }),
    crew: crew.flatMap(({ id, name }) => {
      const shares = hours.filter(({ personId }) => personId === id);
      return shares.length > 0 ? [{ person: name, workedS: sumOf(shares, ({ workedS }) => workedS), costCents: sumCents(shares) }] : [];
    }),
    woodCents,
    crewCents,
    totalCents,
    perPortionCents: service.portions > 0 ? totalCents / service.portions : null,
    perKgCents: servedKg > 0 ? totalCents / servedKg : null,
  };
}
