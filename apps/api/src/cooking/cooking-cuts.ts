import { Injectable } from '@nestjs/common';
import type { CookView } from '@stokehold/domain/contract';
import type { Cut } from '@stokehold/domain/food';
import type { YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { CookingStore } from './cooking.store.js';
import { cutFor, cutOf, cutsWith } from './cut-of.js';

/** The cut that a cook's name means in a yard, for whoever plans with it. */
@Injectable()
export class CookingCuts {
  constructor(private readonly store: CookingStore) {}

  async of(em: EntityManager, yardId: YardId): Promise<(cook: Pick<CookView, 'cut'>) => Cut | undefined> {
    const cuts = cutsWith(await this.store.cuts(em, yardId));
    return (cook) => {
      const found = cutFor(cook, cuts);
      return found && cutOf(found);
    };
  }
}
