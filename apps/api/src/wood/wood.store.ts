import { Injectable } from '@nestjs/common';
import type { LotId, PersonId, PitId, YardId } from '@stokehold/domain/quantity';
import { type DryBasis, dryBasis, type EpochS, toIso } from '@stokehold/domain/quantity';
import type { Piece } from '@stokehold/domain/wood';
import type { EntityManager } from 'typeorm';
import { Ids } from '../platform/index.js';
import { LotReadingRow } from './lot-reading.row.js';
import { LotRow } from './lot.row.js';
import { type WoodMoveKind, WoodMoveRow } from './wood-move.row.js';

/** A lot with what the ledger says of it. */
export interface Lot extends Piece {
  readonly id: LotId;
  readonly name: string;
  readonly boughtAt: EpochS;
  readonly boughtPieces: number;
  readonly priceCents: number;
  readonly inStack: number;
  readonly onCarts: number;
  readonly burned: number;
}
/** Pieces of one lot on one pit's cart. */
export interface OnCart {
  readonly pitId: PitId;
  readonly lotId: LotId;
  readonly pieces: number;
}
export interface WoodMove {
  readonly lotId: LotId;
  readonly pitId: PitId | null;
  readonly kind: WoodMoveKind;
  readonly stackPieces: number;
  readonly cartPieces: number;
  readonly at: EpochS;
  readonly by: PersonId | null;
  readonly checkId?: string;
  readonly reason?: string;
}

@Injectable()
export class WoodStore {
  constructor(private readonly ids: Ids) {}

  async lots(em: EntityManager, yardId: YardId, only?: LotId): Promise<Lot[]> {
    const rows = (await em.query(
      `select lot.*, extract(epoch from bought_at)::float8 as bought_s,
         coalesce(sum(stack_pieces), 0)::int as in_stack, coalesce(sum(cart_pieces), 0)::int as on_carts,
         coalesce(-sum(cart_pieces + stack_pieces) filter (where kind = 'burned'), 0)::int as burned
       from lot left join wood_move on wood_move.lot_id = lot.id
       where lot.yard_id = $1 and ($2::uuid is null or lot.id = $2)
       group by lot.id order by lot.bought_at, lot.name`,
      [yardId, only ?? null],
    )) as LotSumRow[];
    return rows.map(lotOf);
  }

  /** What lies on the carts; of each cart, the lot pulled last comes first: it lies on top. */
  async carts(em: EntityManager, yardId: YardId, only?: PitId): Promise<OnCart[]> {
    const rows = (await em.query(
      `select pit_id, lot_id, sum(cart_pieces)::int as pieces, max(moved_at) filter (where kind = 'pulled') as pulled_at, lot.name
       from wood_move join lot on lot.id = lot_id
       where wood_move.yard_id = $1 and pit_id is not null and ($2::uuid is null or pit_id = $2)
       group by pit_id, lot_id, lot.name having sum(cart_pieces) > 0
       order by pit_id, pulled_at desc nulls last, lot.name`,
      [yardId, only ?? null],
    )) as { pit_id: PitId; lot_id: LotId; pieces: number }[];
    return rows.map(({ pit_id, lot_id, pieces }) => ({ pitId: pit_id, lotId: lot_id, pieces }));
  }

  /** Holds other moves of these lots back until the transaction ends, so that nothing is taken twice. */
  async holdLots(em: EntityManager, lotIds: readonly LotId[]): Promise<void> {
    await em.query('select id from lot where id = any($1) order by id for update', [lotIds]);
  }

  async addLot(em: EntityManager, yardId: YardId, lot: Omit<Lot, 'inStack' | 'onCarts' | 'burned'>): Promise<void> {
    await em.insert(LotRow, {
      id: lot.id, yardId, name: lot.name, species: lot.species, lengthM: lot.lengthM, thicknessM: lot.thicknessM,
      moistureFrac: lot.moisture, boughtAt: new Date(toIso(lot.boughtAt)), boughtPieces: lot.boughtPieces, priceCents: lot.priceCents,
    });
  }

  async isNameTaken(em: EntityManager, yardId: YardId, name: string): Promise<boolean> {
    return (await em.query('select 1 from lot where yard_id = $1 and lower(name) = lower($2)', [yardId, name])).length > 0;
  }

  async addReading(em: EntityManager, reading: { lotId: LotId; moisture: DryBasis; at: EpochS; by: PersonId | null }): Promise<void> {
    await em.insert(LotReadingRow, {
      id: this.ids.next(), lotId: reading.lotId, moistureFrac: reading.moisture, measuredAt: new Date(toIso(reading.at)), crewMemberId: reading.by,
    });
    await em.query(
      `update lot set moisture_frac = (select moisture_frac from lot_reading where lot_id = $1 order by measured_at desc, id desc limit 1) where id = $1`,
      [reading.lotId],
    );
  }

  async addMove(em: EntityManager, yardId: YardId, move: WoodMove): Promise<void> {
    await em.insert(WoodMoveRow, {
      id: this.ids.next(), yardId, lotId: move.lotId, pitId: move.pitId, kind: move.kind, stackPieces: move.stackPieces,
      cartPieces: move.cartPieces, movedAt: new Date(toIso(move.at)), crewMemberId: move.by, checkId: move.checkId ?? null,
      reason: move.reason ?? null,
    });
  }

  /** Splits burned per pit and lot between two instants, for the cost of what lay on the pit meanwhile. */
  async burned(em: EntityManager, yardId: YardId): Promise<readonly { pitId: PitId; lotId: LotId; pieces: number; at: EpochS }[]> {
    const rows = (await em.query(
      `select pit_id, lot_id, -(cart_pieces + stack_pieces) as pieces, extract(epoch from moved_at)::float8 as at_s
       from wood_move where yard_id = $1 and kind = 'burned' order by moved_at, id`,
      [yardId],
    )) as { pit_id: PitId; lot_id: LotId; pieces: number; at_s: number }[];
    return rows.map((row) => ({ pitId: row.pit_id, lotId: row.lot_id, pieces: row.pieces, at: Math.floor(row.at_s) as EpochS }));
  }
}

interface LotSumRow {
  id: LotId; name: string; species: Piece['species']; length_m: number; thickness_m: number; moisture_frac: number; bought_s: number;
  bought_pieces: number; price_cents: number; in_stack: number; on_carts: number; burned: number;
}
const lotOf = (row: LotSumRow): Lot => ({
  id: row.id, name: row.name, species: row.species, lengthM: row.length_m, thicknessM: row.thickness_m,
  moisture: dryBasis(row.moisture_frac), boughtAt: Math.floor(row.bought_s) as EpochS, boughtPieces: row.bought_pieces,
  priceCents: row.price_cents, inStack: row.in_stack, onCarts: row.on_carts, burned: row.burned,
});
