import { type Cents, cents, type LotId, requireRange } from '../quantity/index.js';

/** What a lot cost and how far it has been burned. */
export interface LotPrice {
  readonly lotId: LotId;
  readonly priceCents: Cents;
  readonly boughtPieces: number;
  /** Sawn to dust, rotten, missing at a recount: those that are burned carry their price. Negative: found, or two made of one. Default 0. */
  readonly lostPieces?: number;
  /** Burned before the stretch that is reckoned. Default 0. */
  readonly burnedBefore?: number;
}

/**
 * Price of the next splits of a lot. Reckoned from the lot's first split on, so that all its splits together cost its price to the cent:
 *
 *     cents = round(P b2 / n) - round(P b1 / n),    n = bought - lost, at least what is burned
 *
 * @param lot     price 0 to 1e9 cents; whole splits
 * @param pieces  whole splits burned after `burnedBefore`
 * @returns whole cents. Held to libs/domain/cost/lot-price.test.ts
 */
export function priceOfPieces(lot: LotPrice, pieces: number): Cents {
  requireRange('price of a lot (cents)', lot.priceCents, 0, 1e9);
  requireRange('splits burned', pieces, 0, 1e6);
  const before = lot.burnedBefore ?? 0;
  const useful = Math.max(1, before + pieces, lot.boughtPieces - (lot.lostPieces ?? 0));
  const until = (count: number) => Math.floor((2 * lot.priceCents * count + useful) / (2 * useful));
  return cents(until(before + pieces) - until(before));
}
