import type { CartView, LotView } from '@stokehold/domain/contract';

/** How wood of a moisture burns; dry basis. 10 to 15 % is good wood by the meter: common practice, no source. */
export type Dryness = 'dry' | 'fair' | 'wet' | 'green';
const DRY_TO = 0.16;
const FAIR_TO = 0.2;
/** Freshly cut or nearly so: below this it is only wet. Common practice, no source. */
const WET_TO = 0.3;
export const drynessOf = (moisture: number): Dryness => (moisture <= DRY_TO ? 'dry' : moisture <= FAIR_TO ? 'fair' : moisture <= WET_TO ? 'wet' : 'green');

/** Ready wood first, and of that the most first. */
export const lotsInOrder = (lots: readonly LotView[]): readonly LotView[] => {
  const rank: Readonly<Record<Dryness, number>> = { dry: 0, fair: 1, wet: 2, green: 3 };
  return [...lots].sort((a, b) => rank[drynessOf(a.moisture)] - rank[drynessOf(b.moisture)] || b.inStack - a.inStack || a.name.localeCompare(b.name));
};

/** A round end of a split in the drawn stack. */
export interface SplitEnd {
  readonly x: number;
  readonly y: number;
}

const COLUMNS = 12;
const ROWS = 5;
/** How many ends the fullest stack shows; the others by their share, and at least one as long as there is one. */
const MOST_ENDS = COLUMNS * ROWS;

/** The stack as ends of splits, piled from the ground up, each row half an end aside of the one below. */
export function stackOf(pieces: number, most: number, endPx: number): readonly SplitEnd[] {
  const ends = pieces === 0 ? 0 : Math.max(1, Math.round((pieces / Math.max(1, most)) * MOST_ENDS));
  return Array.from({ length: ends }, (_, n) => {
    const row = Math.floor(n / COLUMNS);
    return { x: (n % COLUMNS) * endPx + (row % 2) * (endPx / 2), y: (ROWS - 1 - row) * endPx * 0.87 };
  });
}
export const stackSize = (endPx: number) => ({ width: (COLUMNS + 0.5) * endPx, height: endPx * (0.87 * (ROWS - 1) + 1) });

export interface Fit {
  readonly across: readonly string[];
  readonly lengthwise: readonly string[];
  readonly tooLong: readonly string[];
}
/** Which pits this lot fits and how it lies there, by the pits' names. */
export function fitOf(lot: Pick<LotView, 'fits'>, nameOf: (pitId: string) => string | undefined): Fit {
  const names = (lies: LotView['fits'][number]['lies']) => lot.fits.filter((fit) => fit.lies === lies).flatMap(({ pitId }) => nameOf(pitId) ?? []);
  return { across: names('across'), lengthwise: names('lengthwise'), tooLong: names('too-long') };
}

/** A cart that lasts no longer than this wants somebody to haul now: the yard's wood is no help at 3 in the morning. */
const HAUL_WITHIN_MS = 3_600_000;
/** Whether a cart runs out before long: at the pace at which its pit burns until the shift ends. */
export function wantsHaul(cart: { readonly splits: number; readonly needed: number }, left: { readonly nowMs: number; readonly endsMs: number }): boolean {
  if (cart.splits >= cart.needed) return false;
  return (cart.splits / cart.needed) * Math.max(0, left.endsMs - left.nowMs) < HAUL_WITHIN_MS;
}

/** Splits of a lot on a pit's cart that nobody has trimmed yet. */
export function untrimmedOn(carts: readonly Pick<CartView, 'pitId' | 'lots'>[], of: { readonly pitId: string; readonly lotId: string }): number {
  const there = carts.find(({ pitId }) => pitId === of.pitId)?.lots.find(({ lotId }) => lotId === of.lotId);
  return there ? there.pieces - there.trimmed : 0;
}
