import { type EpochS, requireRange } from '../quantity/index.js';

/** Offcuts of one lot that lie there. */
export interface OffcutPile<LotId extends string> {
  readonly lotId: LotId;
  /** Whole pieces. */
  readonly offcuts: number;
}

/**
 * Which lots the offcuts that went on came from: the lot that was named first, then the others in their order, first in first out.
 * What no lot can give is not invented: it is left open.
 *
 * @param piles   in the order in which lots are opened
 * @param pieces  whole offcuts, 0 to 1e5
 * @param named   the lot that somebody named
 * @returns Held to libs/domain/wood/offcuts.test.ts
 */
export function drawOffcuts<LotId extends string>(piles: readonly OffcutPile<LotId>[], pieces: number, named?: LotId): { readonly drawn: readonly { readonly lotId: LotId; readonly pieces: number }[]; readonly open: number } {
  requireRange('offcuts', pieces, 0, 1e5);
  let open = pieces;
  const drawn = [...piles.filter(({ lotId }) => lotId === named), ...piles.filter(({ lotId }) => lotId !== named)].flatMap(({ lotId, offcuts }) => {
    const taken = Math.min(open, Math.max(0, offcuts));
    open -= taken;
    return taken > 0 ? [{ lotId, pieces: taken }] : [];
  });
  return { drawn, open };
}

/**
 * How many of a cart's splits of one lot are trimmed after some left it. Trimmed ones lie ready for the fire and burn first; what is
 * brought back or missing at a count was not trimmed yet, as long as there was such. Source: common practice, no source.
 *
 * @param cart   whole splits on the cart before, and those of them that are trimmed
 * @param taken  whole splits that left it; negative when some came
 * @param how    burned, or taken away
 */
export function trimmedLeft(cart: { readonly pieces: number; readonly trimmed: number }, taken: number, how: 'burned' | 'taken-away'): number {
  requireRange('trimmed splits', cart.trimmed, 0, Math.max(0, cart.pieces));
  const left = how === 'burned' ? cart.trimmed - Math.max(0, taken) : cart.trimmed;
  return Math.max(0, Math.min(left, cart.pieces - taken));
}

/**
 * From when offcuts will do on a fire because all food on it is wrapped and takes no more smoke. Source: common practice, no source.
 *
 * @param wrapAt  for each cook on the pit when it was or will be wrapped; undefined for one that nobody means to wrap
 * @returns undefined where some food stays bare, or none lies there
 */
export function allWrappedFrom(wrapAt: readonly (EpochS | undefined)[]): EpochS | undefined {
  const known = wrapAt.filter((at) => at !== undefined);
  return known.length > 0 && known.length === wrapAt.length ? (Math.max(...known) as EpochS) : undefined;
}
