import { ok, refuse, requireRange, type Result } from '../quantity/index.js';
import type { Firebox } from './trim.js';
import { liesAcross } from './fit.js';
import { CORD_M3, type Measure, PACKAGED_UNDER_M3, solidM3, solidM3OfPiece } from './measure.js';
import type { Piece } from './piece.js';
import { BURNS_UP_TO } from './usual-split.js';

/** What came through the gate: the same wood in as many measures as somebody took. */
export interface Delivery {
  readonly piece: Piece;
  /** At least one; the first is what was paid for. */
  readonly measures: readonly Measure[];
  readonly priceCents: number;
}

/** Something about a delivery that does not add up; it is pointed out, the wood may still be taken in. */
export type DeliveryRemark =
  /** Two measures of the same wood that cannot both be right; `ratio` is the second over the first, in solid wood. */
  | { readonly code: 'measures-disagree'; readonly first: Measure['by']; readonly second: Measure['by']; readonly ratio: number }
  /** Less than 1/8 cord: a package, sold by volume and not by the cord. */
  | { readonly code: 'sold-as-package'; readonly stackedM3: number }
  | { readonly code: 'no-price' }
  /** Far from what a cord of firewood costs, beside the other lots of the yard. */
  | { readonly code: 'price-unusual'; readonly centsPerCord: number; readonly usualCentsPerCord: number }
  | { readonly code: 'fits-nowhere' }
  | { readonly code: 'too-wet-to-burn-now' };

export type DeliveryRefusal = { readonly code: 'nothing-measured' } | { readonly code: 'counted-below-zero'; readonly by: Measure['by'] };

const amountOf = (measure: Measure): number => {
  if (measure.by === 'pieces') return measure.pieces;
  if (measure.by === 'rows') return Math.min(measure.rows, measure.lengthM, measure.heightM);
  if (measure.by === 'cords') return measure.cords;
  return measure.by === 'volume' ? measure.stackedM3 : measure.massKg;
};
/** A price that is this many times that of the yard's other lots, or less than one over it, is looked at again. Source: common practice, no source. */
const UNUSUAL_PRICE = 2.5;

/**
 * Takes a delivery in: how many splits it is by what was paid for, and what about it does not add up. Two measures disagree when
 * their ranges of solid wood do not touch. Units that are none (truckload, rack, pile, face cord: [NIST-HB130] 2.4) cannot be given.
 *
 * @param delivery  measures 0 or more
 * @param yard      fireboxes of the pits in use; what a cord of other lots cost
 * @returns splits by the first measure, and the remarks. Held to libs/domain/wood/delivery.test.ts
 */
export function takeIn(
  delivery: Delivery,
  yard: { readonly fireboxes: readonly Firebox[]; readonly usualCentsPerCord?: number },
): Result<{ readonly pieces: number; readonly remarks: readonly DeliveryRemark[] }, DeliveryRefusal> {
  const { piece, measures, priceCents } = delivery;
  requireRange('price (cents)', priceCents, 0, 1e9);
  const [paidFor] = measures;
  if (!paidFor) return refuse({ code: 'nothing-measured' });
  const below = measures.find((measure) => !(amountOf(measure) > 0));
  if (below) return refuse({ code: 'counted-below-zero', by: below.by });
  const solid = solidM3(paidFor, piece).m3;
  return ok({
    pieces: Math.max(1, Math.round(solid / solidM3OfPiece(piece))),
    remarks: [...disagreements(measures, piece), ...priceRemarks(paidFor, solid, priceCents, yard.usualCentsPerCord), ...woodRemarks(piece, yard.fireboxes)],
  });
}

function disagreements(measures: readonly Measure[], piece: Piece): readonly DeliveryRemark[] {
  const [first] = measures;
  if (!first) return [];
  const paid = solidM3(first, piece);
  return measures.slice(1).flatMap((measure): readonly DeliveryRemark[] => {
    const other = solidM3(measure, piece);
    const touch = other.lowM3 <= paid.highM3 && paid.lowM3 <= other.highM3;
    return touch ? [] : [{ code: 'measures-disagree', first: first.by, second: measure.by, ratio: other.m3 / paid.m3 }];
  });
}

function priceRemarks(paidFor: Measure, solid: number, priceCents: number, usual: number | undefined): readonly DeliveryRemark[] {
  const stackedM3 = paidFor.by === 'cords' ? paidFor.cords * CORD_M3 : solid / (85 / 128);
  const centsPerCord = (priceCents * CORD_M3) / stackedM3;
  const odd = usual !== undefined && usual > 0 && priceCents > 0 && (centsPerCord > usual * UNUSUAL_PRICE || centsPerCord < usual / UNUSUAL_PRICE);
  return [
    ...(stackedM3 < PACKAGED_UNDER_M3 && paidFor.by === 'cords' ? [{ code: 'sold-as-package', stackedM3 } as const] : []),
    ...(priceCents === 0 ? [{ code: 'no-price' } as const] : []),
    ...(odd ? [{ code: 'price-unusual', centsPerCord, usualCentsPerCord: usual } as const] : []),
  ];
}

function woodRemarks(piece: Piece, fireboxes: readonly Firebox[]): readonly DeliveryRemark[] {
  const nowhere = fireboxes.length > 0 && fireboxes.every((box) => liesAcross({ ...box, lengthM: piece.lengthM }) === 'too-long');
  return [...(nowhere ? [{ code: 'fits-nowhere' } as const] : []), ...(piece.moisture > BURNS_UP_TO ? [{ code: 'too-wet-to-burn-now' } as const] : [])];
}
