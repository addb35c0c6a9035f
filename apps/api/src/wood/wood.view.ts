import { Injectable } from '@nestjs/common';
import type { CartView, LotView, PitSettings, WoodView } from '@stokehold/domain/contract';
import { type EpochS, type PitId, toIso, type YardId } from '@stokehold/domain/quantity';
import { BURNS_UP_TO, dryMassKg, expectedDryKg, heatOfPieceJ, liesAcross, type Pace, type Piece, USUAL_SPLIT, wetMassKg } from '@stokehold/domain/wood';
import type { EntityManager } from 'typeorm';
import { Shifts } from '../shifts/index.js';
import { Yards } from '../yards/index.js';
import { Paces } from './paces.service.js';
import { type Lot, type OnCart, WoodStore } from './wood.store.js';

const fitsOf = (lot: Piece, pits: readonly PitSettings[]): LotView['fits'] =>
  pits.filter(({ retired }) => !retired).map((pit) => ({ pitId: pit.id, lies: liesAcross({ lengthM: lot.lengthM, ...pit }) }));

const lotView = (lot: Lot, pits: readonly PitSettings[]): LotView => ({
  id: lot.id,
  name: lot.name,
  species: lot.species,
  lengthM: lot.lengthM,
  thicknessM: lot.thicknessM,
  moisture: lot.moisture,
  boughtAt: toIso(lot.boughtAt),
  priceCents: lot.priceCents as LotView['priceCents'],
  pieceKg: wetMassKg(lot),
  pieceHeatJ: heatOfPieceJ(lot),
  pieceCostCents: lot.priceCents / lot.boughtPieces,
  boughtPieces: lot.boughtPieces,
  inStack: lot.inStack,
  onCarts: lot.onCarts,
  burned: lot.burned,
  offcuts: lot.offcuts,
  fits: fitsOf(lot, pits),
});

/** What lies in the stack and on the carts, and whether it will last. */
@Injectable()
export class WoodViews {
  constructor(
    private readonly store: WoodStore,
    private readonly yards: Yards,
    private readonly shifts: Shifts,
    private readonly paces: Paces,
  ) {}

  /** @param burnRates dry wood a second, as believed of the last hour of each burning fire */
  async view(em: EntityManager, yardId: YardId, now: EpochS, burnRates: ReadonlyMap<PitId, number>): Promise<WoodView> {
    const pits = await this.yards.pits(em, yardId);
    const lots = await this.store.lots(em, yardId);
    const onCarts = await this.store.carts(em, yardId);
    const shift = await this.shifts.running(em, yardId, now);
    const paces = shift ? await this.paces.of(em, yardId, now, { shift, pits, recent: burnRates }) : new Map<PitId, Pace>();
    const burning = (shift?.pits ?? []).flatMap(({ pitId, lightAt }) => {
      const pace = paces.get(pitId);
      return pace && shift ? [{ pitId, pace, durationS: Math.max(0, shift.until - Math.max(now, lightAt)) }] : [];
    });
    const cartOf = ({ pitId, pace, durationS }: (typeof burning)[number]): CartView => {
      const cart = onCarts.filter((one) => one.pitId === pitId);
      return { ...cartOn(pitId, cart), needed: expectedDryKg(pace, 0, durationS) / dryMassKg(pieceFor(cart, lots)) };
    };
    const carts = burning.map(cartOf);
    return {
      lots: lots.map((lot) => lotView(lot, pits)),
      carts: [...carts, ...restingCarts(onCarts, carts)],
      splitsLeft: lots.filter(({ moisture }) => moisture <= BURNS_UP_TO).reduce((sum, { inStack }) => sum + inStack, 0) + onCarts.reduce((sum, { pieces }) => sum + pieces, 0),
      splitsNeeded: carts.reduce((sum, { needed }) => sum + needed, 0),
    };
  }
}

/** The split to reckon with: what lies on top of the cart, else the lot with most in the stack. */
function pieceFor(cart: readonly OnCart[], lots: readonly Lot[]): Piece {
  const top = lots.find(({ id }) => id === cart[0]?.lotId);
  const most = lots.reduce<Lot | undefined>((best, lot) => (lot.inStack > (best?.inStack ?? 0) ? lot : best), undefined);
  return top ?? most ?? USUAL_SPLIT;
}

const cartOn = (pitId: PitId, cart: readonly OnCart[]): Omit<CartView, 'needed'> => ({
  pitId, splits: cart.reduce((sum, { pieces }) => sum + pieces, 0), lots: cart.map(({ lotId, pieces, trimmed }) => ({ lotId, pieces, trimmed })),
});

/** A pit that rests tonight may still have wood on its cart. */
function restingCarts(onCarts: readonly OnCart[], burning: readonly CartView[]): CartView[] {
  const resting = [...new Set(onCarts.map(({ pitId }) => pitId))].filter((pitId) => !burning.some((cart) => cart.pitId === pitId));
  return resting.map((pitId) => ({ ...cartOn(pitId, onCarts.filter((one) => one.pitId === pitId)), needed: 0 }));
}
