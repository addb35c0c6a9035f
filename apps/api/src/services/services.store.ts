import { Injectable } from '@nestjs/common';
import type { PayRulesView } from '@stokehold/domain/contract';
import { type Cents, cents, type CookId, type EpochS, type ServiceId, toIso, type YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { CookPriceRow } from './cook-price.row.js';
import { PayRulesRow } from './pay-rules.row.js';

/** A cook as far as a cost is reckoned from it. */
export interface WeighedCook {
  readonly id: CookId;
  readonly serviceId: ServiceId | null;
  readonly pieces: number;
  readonly weightKg: number;
  /** What came off; null while it is not weighed. */
  readonly yieldKg: number | null;
}

@Injectable()
export class ServicesStore {
  /** The yard's cooks, in order of id. */
  weighed(em: EntityManager, yardId: YardId): Promise<WeighedCook[]> {
    return em.query('select id, service_id as "serviceId", pieces, weight_kg as "weightKg", yield_kg as "yieldKg" from cook where yard_id = $1 order by id', [yardId]);
  }

  async payRules(em: EntityManager, yardId: YardId): Promise<PayRulesView | undefined> {
    const row = await em.findOneBy(PayRulesRow, { yardId });
    if (!row) return undefined;
    const { yardId: _yardId, ...rules } = row;
    return rules;
  }

  async savePayRules(em: EntityManager, yardId: YardId, rules: PayRulesView): Promise<void> {
    await em.upsert(PayRulesRow, { yardId, ...rules }, ['yardId']);
  }

  async meat(em: EntityManager, yardId: YardId): Promise<ReadonlyMap<CookId, Cents>> {
    const rows = (await em.query('select cook_id, meat_cents from cook_price join cook on cook.id = cook_id where yard_id = $1', [yardId])) as { cook_id: CookId; meat_cents: number }[];
    return new Map(rows.map(({ cook_id, meat_cents }) => [cook_id, cents(meat_cents)]));
  }

  async priceCook(em: EntityManager, cookId: CookId, meatCents: Cents): Promise<void> {
    await em.upsert(CookPriceRow, { cookId, meatCents }, ['cookId']);
  }

  /** Splits that checks put on and no cart held, between two instants: put on less taken from lots. */
  async unpriced(em: EntityManager, yardId: YardId, from: EpochS, until: EpochS): Promise<number> {
    const [row] = (await em.query(
      `select greatest(0, (select coalesce(sum(splits), 0) from fire_check where yard_id = $1 and size <> 'offcut' and seen_at between $2 and $3)
         - (select coalesce(-sum(cart_pieces + stack_pieces), 0) from wood_move where yard_id = $1 and kind = 'burned' and check_id is not null and moved_at between $2 and $3))::int as splits`,
      [yardId, toIso(from), toIso(until)],
    )) as [{ splits: number }];
    return row.splits;
  }
}
