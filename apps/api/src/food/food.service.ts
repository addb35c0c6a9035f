import { Injectable } from '@nestjs/common';
import type { CookView, Done, PitSettings, PlaceCook, RouteInput, Routes, SaveCook, SaveService, ServiceSettings } from '@stokehold/domain/contract';
import { loadFrac, placementOf } from '@stokehold/domain/food';
import { type CookId, type EpochS, fromIso, HOUR_S, later, type PitId, type ServiceId, toIso, type YardId } from '@stokehold/domain/quantity';
import { possibleMix } from '@stokehold/domain/wood';
import type { EntityManager } from 'typeorm';
import { type Actor, Commands, type Deed, refused } from '../platform/index.js';
import { Yards } from '../yards/index.js';
import { FoodStore } from './food.store.js';

/** How long a cook stays on the screens after it came off. */
const SHOWN_AFTER_OFF_S = 12 * HOUR_S;
/** How long a service stays on the screens after it began. */
const SHOWN_AFTER_SERVICE_S = 6 * HOUR_S;

/** Cooks, where they lie, and the services they are for. */
@Injectable()
export class Food {
  constructor(
    private readonly commands: Commands,
    private readonly store: FoodStore,
    private readonly yards: Yards,
  ) {}

  saveCook(actor: Actor, command: SaveCook): Promise<Done> {
    return this.commands.run(actor, 'save-cook', command, async (deed) => {
      const { cook } = command;
      if (cook.serviceId) await this.service(deed.em, deed.yardId, cook.serviceId);
      if (!possibleMix(cook.mix).ok) refused('mix-impossible', 'No fire can be fed so. Name each wood once, no least above its most, and leasts of 100 % together at most.');
      const [before] = await this.store.cooks(deed.em, { id: cook.id, yardId: deed.yardId });
      if (before?.offAt) refused('cook-is-off', `${before.cut} came off already; its record stays as it is.`);
      const placed = before?.lies.reduce((sum, { pieces }) => sum + pieces, 0) ?? 0;
      if (placed > cook.pieces) {
        refused('pieces-more-than-cook', `${placed} pieces of this cook lie on the pits. Take some off the pits first.`, { placed, pieces: cook.pieces });
      }
      await this.store.saveCook(deed.em, deed.yardId, { ...cook, onAt: before?.onAt ?? null, offAt: null, yieldKg: null });
      deed.tell({ kind: 'cook-changed', cookId: cook.id });
      return { done: true };
    });
  }

  place(actor: Actor, command: PlaceCook): Promise<Done> {
    return this.commands.run(actor, 'place-cook', command, async (deed) => {
      const cook = await this.cookOnHand(deed, command.cookId);
      const pits = await this.yards.pits(deed.em, deed.yardId);
      if (command.lies.some(({ pitId }) => !pits.some(({ id }) => id === pitId))) refused('pit-unknown', 'One of these pits does not stand in this yard.');
      const placement = placementOf(command.lies, cook, (pitId) => pits.find(({ id }) => id === pitId)?.zones.length);
      if (!placement.ok) {
        const { refusal } = placement;
        return refusal.code === 'zone-unknown'
          ? refused('zone-unknown', `This pit has ${refusal.zones} zones, counted from the fire end.`, { zones: refusal.zones })
          : refused('pieces-more-than-cook', `This cook has ${refusal.pieces} pieces; ${refusal.placed} were placed.`, { placed: refusal.placed, pieces: refusal.pieces });
      }
      await this.store.place(deed.em, cook.id, placement.value, deed.now);
      const { lies: _lies, ...plain } = cook;
      if (placement.value.length > 0 && !cook.onAt) await this.store.saveCook(deed.em, deed.yardId, { ...plain, onAt: toIso(deed.now) });
      deed.tell({ kind: 'cook-changed', cookId: cook.id });
      return { done: true };
    });
  }

  takeOff(actor: Actor, command: RouteInput<Routes['takeOff']>): Promise<Done> {
    return this.commands.run(actor, 'take-off', command, async (deed) => {
      const { lies: _lies, ...plain } = await this.cookOnHand(deed, command.cookId);
      const offAt = Math.min(fromIso(command.offAt), deed.now) as EpochS;
      await this.store.place(deed.em, command.cookId, [], offAt);
      await this.store.saveCook(deed.em, deed.yardId, { ...plain, offAt: toIso(offAt), yieldKg: command.yieldKg ?? null });
      deed.tell({ kind: 'cook-changed', cookId: command.cookId });
      return { done: true };
    });
  }

  saveService(actor: Actor, command: SaveService): Promise<Done> {
    return this.commands.run(actor, 'save-service', command, async (deed) => {
      const { service } = command;
      if (fromIso(service.readyBy) < deed.now) refused('service-in-the-past', 'This service lies in the past. Give a ready-by time that is still to come.');
      await this.store.saveService(deed.em, deed.yardId, service);
      deed.tell({ kind: 'service-changed', serviceId: service.id });
      return { done: true };
    });
  }

  /** What the screens show: cooks to come, on the pits, or off since a few hours. */
  async cooks(em: EntityManager, yardId: YardId, now: EpochS): Promise<CookView[]> {
    const all = await this.store.cooks(em, { yardId });
    return all.filter(({ offAt }) => !offAt || later(fromIso(offAt), SHOWN_AFTER_OFF_S) > now);
  }

  async services(em: EntityManager, yardId: YardId, now: EpochS): Promise<ServiceSettings[]> {
    const all = await this.store.services(em, { yardId });
    return all.filter(({ readyBy }) => later(fromIso(readyBy), SHOWN_AFTER_SERVICE_S) > now);
  }

  async service(em: EntityManager, yardId: YardId, id: ServiceId): Promise<ServiceSettings> {
    const [service] = await this.store.services(em, { id, yardId });
    return service ?? refused('service-unknown', 'There is no such service. Open the night to see what is planned.');
  }

  /** How full each pit is, as its fire feels it; a pit that is not there is empty. Whoever has the yard's pits at hand gives them. */
  async loads(em: EntityManager, yardId: YardId, known?: readonly PitSettings[]): Promise<ReadonlyMap<PitId, number>> {
    const masses = await this.store.massOn(em, yardId);
    const pits = known ?? (await this.yards.pits(em, yardId));
    return new Map(pits.map((pit) => [pit.id, loadFrac({ massKg: masses.get(pit.id) ?? 0, lengthM: pit.chamberLengthM, diameterM: pit.chamberDiameterM })]));
  }

  private async cookOnHand(deed: Deed, id: CookId): Promise<CookView> {
    const [cook] = await this.store.cooks(deed.em, { id, yardId: deed.yardId });
    if (!cook) return refused('cook-unknown', 'There is no such cook. Open the night to see what is planned.');
    return cook.offAt ? refused('cook-is-off', `${cook.cut} came off already.`) : cook;
  }
}
