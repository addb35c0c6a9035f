import { Injectable } from '@nestjs/common';
import type { Done, PayRulesView, PriceCook, RouteInput, Routes, SavePayRules, ServiceCost, ServiceCosts } from '@stokehold/domain/contract';
import { type EpochS, fromIso, later, type ServiceId } from '@stokehold/domain/quantity';
import { DataSource } from 'typeorm';
import { Food, FoodStore } from '../food/index.js';
import { type Actor, Clock, Commands, refused } from '../platform/index.js';
import { BesidePlan } from './beside-plan.service.js';
import { CostBooks, NIGHT_BEFORE_S } from './cost-books.js';
import { nightOf, ownOf } from './night-sheet.js';
import { USUAL_RULES } from './pay-of-night.js';
import { lineOf, sheetOf } from './service-sheet.js';
import { ServicesStore } from './services.store.js';

/** What services cost: the wood their cooks' fires burned, the hours that kept them, and the meat. */
@Injectable()
export class Services {
  constructor(
    private readonly database: DataSource,
    private readonly clock: Clock,
    private readonly commands: Commands,
    private readonly store: ServicesStore,
    private readonly books: CostBooks,
    private readonly food: Food,
    private readonly foodStore: FoodStore,
    private readonly beside: BesidePlan,
  ) {}

  async cost({ yardId }: Pick<Actor, 'yardId'>, serviceId: ServiceId): Promise<ServiceCost> {
    const em = this.database.manager;
    const service = await this.food.service(em, yardId, serviceId);
    const books = await this.books.read(em, yardId, [service]);
    const night = nightOf(service, books);
    const own = (await this.foodStore.cooks(em, { yardId })).filter((cook) => cook.serviceId === serviceId);
    const sheet = sheetOf({ ...books, service, own, night: night.sheet, unpricedSplits: await this.store.unpriced(em, yardId, night.span.from, night.span.until), against: null });
    return { ...sheet, against: await this.beside.of(em, yardId, { sheet, night, books }) };
  }

  /** What the services since a time cost, each by itself; the books are read once. */
  async costs({ yardId }: Pick<Actor, 'yardId'>, since: EpochS): Promise<ServiceCosts> {
    const em = this.database.manager;
    const now = this.clock.now(yardId);
    const services = (await this.foodStore.services(em, { yardId })).filter(({ readyBy }) => fromIso(readyBy) >= since && later(fromIso(readyBy), -NIGHT_BEFORE_S) < now);
    if (services.length === 0) return [];
    const books = await this.books.read(em, yardId, services);
    return services.map((service) => lineOf(service, ownOf(service, books), nightOf(service, books).sheet));
  }

  priceCook(actor: Actor, command: PriceCook & RouteInput<Routes['priceCook']>): Promise<Done> {
    return this.commands.run(actor, 'price-cook', command, async (deed) => {
      const [cook] = await this.foodStore.cooks(deed.em, { id: command.cookId, yardId: deed.yardId });
      if (!cook) refused('cook-unknown', 'There is no such cook in this yard. Open the service to see what is cooked for it.');
      await this.store.priceCook(deed.em, command.cookId, command.meatCents);
      deed.tell({ kind: 'cook-changed', cookId: command.cookId });
      return { done: true };
    });
  }

  async payRules({ yardId }: Actor): Promise<PayRulesView> {
    return (await this.store.payRules(this.database.manager, yardId)) ?? USUAL_RULES;
  }

  savePayRules(actor: Actor, command: SavePayRules): Promise<Done> {
    return this.commands.run(actor, 'save-pay-rules', command, async (deed) => {
      await this.store.savePayRules(deed.em, deed.yardId, command.rules);
      return { done: true };
    });
  }
}
