import { Injectable } from '@nestjs/common';
import type { CookView, RecordsView } from '@stokehold/domain/contract';
import { type CookId, type EpochS, fromIso, type YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { FoodStore } from '../food/index.js';
import { type ChamberSeen, Fires } from '../pits/index.js';
import { CookingStore, type LayAt } from './cooking.store.js';
import { cutFor, cutsWith } from './cut-of.js';
import { findingsFor, findingShown } from './outcome.js';

/** Whole cooks held against the published limits of their yard, by their records alone: no forecast has a part in it. */
@Injectable()
export class HeldAgainst {
  constructor(
    private readonly food: FoodStore,
    private readonly store: CookingStore,
    private readonly fires: Fires,
  ) {}

  async of(em: EntityManager, yardId: YardId, now: EpochS, cookIds: readonly string[]): Promise<RecordsView['held']> {
    const cooks = (await this.food.cooks(em, { yardId })).filter(({ id }) => cookIds.includes(id));
    const ids = cooks.map(({ id }) => id);
    const [cuts, limits, log, places] = [cutsWith(await this.store.cuts(em, yardId)), await this.store.limits(em, yardId), await this.store.log(em, ids), await this.store.lastPlaces(em, ids)];
    const held: RecordsView['held'] = [];
    for (const cook of cooks) {
      const place = places.find(({ cookId }) => cookId === cook.id);
      const hand = { cook, cut: cutFor(cook, cuts), log: logOf(log, cook.id), place, asked: undefined, pitAir: await this.airOf(em, cook, place, now) };
      held.push({ cookId: cook.id, cut: cook.cut, pieces: cook.pieces, onAt: cook.onAt, offAt: cook.offAt, findings: findingsFor(hand, limits, undefined, now).map(findingShown) });
    }
    return held;
  }

  /** What the pit of a cook was while the cook was on it. */
  private async airOf(em: EntityManager, { onAt, offAt }: CookView, place: LayAt | undefined, now: EpochS): Promise<readonly ChamberSeen[]> {
    if (!place || onAt === null) return [];
    return this.fires.course(em, [place.pitId], fromIso(onAt), offAt === null ? now : fromIso(offAt));
  }
}

const logOf = <T extends { readonly cookId: CookId }>(log: readonly T[], id: CookId): readonly T[] => log.filter(({ cookId }) => cookId === id);
