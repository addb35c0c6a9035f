import { Injectable } from '@nestjs/common';
import type { DeviceId, LotId, PersonId, PitId, YardId } from '@stokehold/domain/quantity';
import { type DryBasis, dryBasis, type EpochS, toIso } from '@stokehold/domain/quantity';
import type { BurnedWood } from '@stokehold/domain/cost';
import type { Piece } from '@stokehold/domain/wood';
import type { EntityManager } from 'typeorm';
import { type Deed, Ids, Remembered } from '../platform/index.js';
import { LotReadingRow } from './lot-reading.row.js';
import { LotRow } from './lot.row.js';
import type { WoodMoveKind } from './wood-move.row.js';
import { BURNED, BURNED_BEFORE, CARTS, HOLD_CART, HOLD_LOTS, LOTS, MOVE } from './wood.statements.js';

/** A lot with what the ledger says of it. */
export interface Lot extends Piece {
  readonly id: LotId;
  readonly name: string;
  readonly boughtAt: EpochS;
  readonly boughtPieces: number;
  readonly priceCents: number;
  readonly cutAt: EpochS | null;
  readonly splitAt: EpochS | null;
  readonly lengthDeviationM: number;
  readonly inStack: number;
  readonly onCarts: number;
  readonly burned: number;
  /** Missing when it was counted; negative when more was found, or when trimming made two of one. */
  readonly lost: number;
  /** Left over from trimming. */
  readonly offcuts: number;
}
/** Pieces of one lot on one pit's cart. */
export interface OnCart {
  readonly pitId: PitId;
  readonly lotId: LotId;
  readonly pieces: number;
  /** Of those: trimmed to lie across. */
  readonly trimmed: number;
}
export interface WoodMove {
  readonly lotId: LotId;
  readonly pitId: PitId | null;
  readonly kind: WoodMoveKind;
  readonly stackPieces: number;
  readonly cartPieces: number;
  /** Splits on the cart that are trimmed now and were not, negative the other way; default 0. */
  readonly trimmedPieces?: number;
  readonly at: EpochS;
  readonly by: PersonId | null;
  readonly checkId?: string;
  readonly reason?: string;
}

/** The facts that change lots and carts. */
const CHANGES = ['lot-changed', 'wood-moved'] as const;

@Injectable()
export class WoodStore {
  private readonly remembered = { lots: new Remembered<Lot[]>(CHANGES), carts: new Remembered<OnCart[]>(CHANGES), readings: new Remembered<readonly KeptReading[]>(['lot-changed']) };

  constructor(private readonly ids: Ids) {}

  /** The yard's lots, those bought first first. */
  lots(em: EntityManager, yardId: YardId): Promise<Lot[]> {
    return this.remembered.lots.once(em, yardId, async () => ((await em.query(LOTS, [yardId])) as Lot[]).map(lotOf));
  }

  /** What lies on the carts; of each cart, the lot pulled last comes first: it lies on top. */
  carts(em: EntityManager, yardId: YardId): Promise<OnCart[]> {
    return this.remembered.carts.once(em, yardId, () => em.query(CARTS, [yardId]));
  }

  /** Lots as they are now; other moves of them are held back until the transaction ends, so that nothing is taken twice. */
  async holdLots(em: EntityManager, yardId: YardId, lotIds: readonly LotId[]): Promise<Lot[]> {
    this.forget(em);
    return ((await em.query(HOLD_LOTS, [yardId, lotIds])) as Lot[]).map(lotOf);
  }

  /** What lies on a pit's cart now, held in the same way; in no order of the cart. */
  holdCart(em: EntityManager, yardId: YardId, pitId: PitId): Promise<Omit<OnCart, 'pitId'>[]> {
    this.forget(em);
    return em.query(HOLD_CART, [yardId, pitId]);
  }

  async addLot(em: EntityManager, yardId: YardId, lot: Omit<Lot, 'inStack' | 'onCarts' | 'burned' | 'lost' | 'offcuts'>): Promise<void> {
    this.forget(em);
    await em.insert(LotRow, {
      id: lot.id, yardId, name: lot.name, species: lot.species, lengthM: lot.lengthM, thicknessM: lot.thicknessM,
      moistureFrac: lot.moisture, boughtAt: new Date(toIso(lot.boughtAt)), boughtPieces: lot.boughtPieces, priceCents: lot.priceCents,
      cutAt: lot.cutAt === null ? null : new Date(toIso(lot.cutAt)), splitAt: lot.splitAt === null ? null : new Date(toIso(lot.splitAt)), lengthDeviationM: lot.lengthDeviationM,
    });
  }

  async isNameTaken(em: EntityManager, yardId: YardId, name: string): Promise<boolean> {
    return (await em.query('select 1 from lot where yard_id = $1 and lower(name) = lower($2)', [yardId, name])).length > 0;
  }

  async addReading(em: EntityManager, reading: NewReading): Promise<void> {
    this.forget(em);
    this.remembered.readings.forget(em);
    await em.insert(LotReadingRow, {
      id: this.ids.next(), lotId: reading.lotId, moistureFrac: reading.moisture, measuredAt: new Date(toIso(reading.at)), crewMemberId: reading.by,
      shownPercent: reading.shown?.percent ?? null, basis: reading.shown?.basis ?? null, woodTempC: reading.shown?.woodTempC ?? null,
      deviationFrac: reading.deviation, atLeast: reading.atLeast,
    });
    await em.query(
      `update lot set moisture_frac = (select moisture_frac from lot_reading where lot_id = $1 order by measured_at desc, id desc limit 1) where id = $1`,
      [reading.lotId],
    );
  }

  /** Every reading of the yard's lots, the oldest first. */
  readings(em: EntityManager, yardId: YardId): Promise<readonly KeptReading[]> {
    return this.remembered.readings.once(em, yardId, () => this.askReadings(em, yardId));
  }

  private async askReadings(em: EntityManager, yardId: YardId): Promise<readonly KeptReading[]> {
    const rows = (await em.query(
      `select lot_id, lot_reading.moisture_frac, extract(epoch from measured_at)::float8 as at_s, deviation_frac, at_least
       from lot_reading join lot on lot.id = lot_id where lot.yard_id = $1 order by measured_at, lot_reading.id`,
      [yardId],
    )) as { lot_id: LotId; moisture_frac: number; at_s: number; deviation_frac: number; at_least: boolean }[];
    return rows.map((row) => ({ lotId: row.lot_id, moisture: dryBasis(row.moisture_frac), at: Math.floor(row.at_s) as EpochS, deviation: row.deviation_frac, atLeast: row.at_least }));
  }

  /** Writes moves into the ledger, and what they change of stack and carts. */
  async addMoves({ em, yardId, now }: Pick<Deed, 'em' | 'yardId' | 'now'>, deviceId: DeviceId | null, moves: readonly WoodMove[]): Promise<void> {
    if (moves.length === 0) return;
    this.forget(em);
    const told = moves.map(({ lotId, pitId, kind, stackPieces, cartPieces, trimmedPieces, at, by, checkId, reason }) => ({
      id: this.ids.next(), lot_id: lotId, pit_id: pitId, kind, stack_pieces: stackPieces, cart_pieces: cartPieces, trimmed_pieces: trimmedPieces ?? 0, moved_at: toIso(at), crew_member_id: by, check_id: checkId, reason,
    }));
    await em.query(MOVE, [yardId, JSON.stringify(told), deviceId, toIso(now)]);
  }

  /**
   * Splits burned between two instants, summed by pit, lot and stretch between two marks of the pit, each at the beginning of its
   * stretch; in order of time. Who asks what lay on a pit meanwhile marks when that changed: within a stretch no move differs from another.
   */
  async burnedBetween(em: EntityManager, yardId: YardId, { from, until }: { readonly from: EpochS; readonly until: EpochS }, marks: ReadonlyMap<PitId, readonly EpochS[]>): Promise<readonly BurnedWood[]> {
    const told = [...marks].map(([pit_id, at]) => ({ pit_id, at: at.map(toIso) }));
    const rows = (await em.query(BURNED, [yardId, toIso(from), toIso(until), JSON.stringify(told)])) as { pit_id: PitId; lot_id: LotId; burned: string }[];
    const all = rows.flatMap(({ pit_id, lot_id, burned }) => burned.split(',').map((one) => {
      const gap = one.indexOf(' ');
      const nth = Number(one.slice(0, gap));
      return { pitId: pit_id, lotId: lot_id, pieces: Number(one.slice(gap + 1)), at: nth === 0 ? from : marks.get(pit_id)![nth - 1]! };
    }));
    return all.sort((one, other) => one.at - other.at);
  }

  /** Every entry of what burned between two instants, in order of time: for one night, where each split's own moment counts. */
  burnedOneByOne(em: EntityManager, yardId: YardId, { from, until }: { readonly from: EpochS; readonly until: EpochS }): Promise<BurnedWood[]> {
    return em.query(
      `select pit_id as "pitId", lot_id as "lotId", -(cart_pieces + stack_pieces) as pieces, extract(epoch from moved_at)::float8 as at
       from wood_move where yard_id = $1 and kind = 'burned' and moved_at >= $2 and moved_at <= $3 order by moved_at, id`,
      [yardId, toIso(from), toIso(until)],
    );
  }

  /** Splits of each lot burned before an instant: whole days from their sums, the day of the instant from the ledger. */
  async burnedBefore(em: EntityManager, yardId: YardId, at: EpochS): Promise<ReadonlyMap<LotId, number>> {
    const rows = (await em.query(BURNED_BEFORE, [yardId, toIso(at)])) as { lot_id: LotId; pieces: number }[];
    return new Map(rows.map(({ lot_id, pieces }) => [lot_id, pieces]));
  }

  /** To be called before anything of stock is written. */
  forget(em: EntityManager): void {
    this.remembered.lots.forget(em);
    this.remembered.carts.forget(em);
  }
}

/** A reading as it is kept. */
export interface KeptReading {
  readonly lotId: LotId;
  readonly moisture: DryBasis;
  readonly at: EpochS;
  readonly deviation: number;
  readonly atLeast: boolean;
}
interface NewReading extends KeptReading {
  readonly by: PersonId | null;
  /** What the meter showed, before any correction. */
  readonly shown?: { readonly percent: number; readonly basis: 'dry' | 'wet'; readonly woodTempC: number | null };
}

const wholeS = (at: EpochS | null) => (at === null ? null : (Math.floor(at) as EpochS));
const lotOf = (asked: Lot): Lot => ({ ...asked, moisture: dryBasis(asked.moisture), boughtAt: Math.floor(asked.boughtAt) as EpochS, cutAt: wholeS(asked.cutAt), splitAt: wholeS(asked.splitAt) });
