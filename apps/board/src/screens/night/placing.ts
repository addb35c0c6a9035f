import type { PitId } from '@stokehold/domain/quantity';
import type { CookView, PlaceCook, YardState } from '@stokehold/domain/contract';
import type { LiesInZone } from '../../parts/pit-drawing.js';
import { typedNumber } from '../../units/typed-number.js';

// Pieces in zones, counted from the fire end, as they are being placed by hand.

/** Typed pieces by pit and zone. */
export type Placing = Readonly<Record<string, string>>;
export const spot = (pitId: string, zone: number): string => `${pitId}/${zone}`;

export const placingOf = (cook: Pick<CookView, 'lies'>): Placing =>
  Object.fromEntries(cook.lies.map(({ pitId, zone, pieces }) => [spot(pitId, zone), String(pieces)]));

export type Placed =
  | { readonly kind: 'lies'; readonly lies: PlaceCook['lies']; readonly pieces: number }
  | { readonly kind: 'unreadable'; readonly spots: readonly string[] }
  | { readonly kind: 'too-many'; readonly pieces: number };

/** Where the cook lies by what was typed; empty fields are empty zones. */
export function placed(placing: Placing, cookPieces: number): Placed {
  const typed = Object.entries(placing).filter(([, text]) => text.trim() !== '');
  const read = typed.map(([where, text]) => ({ where, pieces: typedNumber(text) }));
  const bad = read.filter(({ pieces }) => pieces === undefined || !Number.isInteger(pieces) || pieces < 0);
  if (bad.length > 0) return { kind: 'unreadable', spots: bad.map(({ where }) => where) };
  const lies = read.flatMap(({ where, pieces }) => {
    const [pitId, zone] = where.split('/');
    return pieces ? [{ pitId: pitId as PitId, zone: Number(zone), pieces }] : [];
  });
  const pieces = lies.reduce((sum, lie) => sum + lie.pieces, 0);
  return pieces > cookPieces ? { kind: 'too-many', pieces } : { kind: 'lies', lies, pieces };
}

/** What lies on a pit while this cook is being placed: the others as they are, this one as typed. */
export function liesWhilePlacing(state: Pick<YardState, 'cooks'>, cook: CookView, placing: Placing, pitId: PitId): readonly LiesInZone[] {
  const others = state.cooks
    .filter(({ id, offAt }) => id !== cook.id && offAt === null)
    .flatMap(({ lies, shape }) => lies.filter((lie) => lie.pitId === pitId).map(({ zone, pieces }) => ({ zone, pieces, shape })));
  const own = Object.entries(placing).flatMap(([where, text]) => {
    const pieces = typedNumber(text);
    const [pit, zone] = where.split('/');
    return pit === pitId && pieces !== undefined && pieces > 0 ? [{ zone: Number(zone), pieces: Math.min(400, Math.round(pieces)), shape: cook.shape }] : [];
  });
  return [...others, ...own];
}
