import type { EpochS } from '../quantity/index.js';
import { type FireBelief, MEMBERS, PAST_MINUTES, PAST_NUMBERS } from './belief.js';
import { MEMBER_NUMBERS, MOST_PIECES } from './layout.js';
import type { FirePosition, PitShape } from './pit.js';

/** Changes when the layout of the numbers does: an older belief is then refused instead of misread. */
const FORMAT = 20261;
const HEADER = 20;
const POSITIONS: readonly FirePosition[] = ['door', 'middle', 'throat'];
const SHAPE_FIELDS = [
  'chamberLengthM', 'chamberDiameterM', 'fireboxLengthM', 'fireboxDiameterM', 'steelThicknessM', 'stackHeightM', 'stackDiameterM', 'zones',
] as const satisfies readonly (keyof PitShape)[];
const AFTER_SHAPE = 8;

/** Thrown for bytes that hold no belief of this version: start the fire anew with `kindle` and the last check. */
export class UnreadableBeliefError extends Error {
  constructor(why: string) {
    super(`These bytes hold no fire that can be read (${why}). Kindle the fire anew from its last check.`);
    this.name = 'UnreadableBeliefError';
  }
}

/** A belief as bytes, about 27 kB, IEEE 754 doubles in little-endian order: the way back gives the same numbers to the last bit. */
export function beliefToBytes(belief: FireBelief): Uint8Array {
  const numbers = [
    FORMAT, belief.at, belief.seed, POSITIONS.indexOf(belief.position), belief.ungraded ? 1 : 0, belief.pieces, belief.dryKgPerS,
    belief.past.length, ...SHAPE_FIELDS.map((field) => belief.shape[field]), belief.lastSeenAt ?? NaN, belief.lastTempAt ?? NaN,
    belief.fireEndRejectedSince ?? NaN, belief.stackEndRejectedSince ?? NaN,
  ];
  const bytes = new Uint8Array((HEADER + belief.past.length + belief.members.length) * 8);
  const view = new DataView(bytes.buffer);
  let at = 0;
  const put = (value: number) => {
    view.setFloat64(at, value, true);
    at += 8;
  };
  numbers.forEach(put);
  belief.past.forEach(put);
  belief.members.forEach(put);
  return bytes;
}

/** @throws UnreadableBeliefError for bytes of another version or length */
export function beliefFromBytes(bytes: Uint8Array): FireBelief {
  if (bytes.byteLength < HEADER * 8 || bytes.byteLength % 8 !== 0) throw new UnreadableBeliefError(`${bytes.byteLength} bytes`);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const number = (index: number) => view.getFloat64(index * 8, true);
  if (number(0) !== FORMAT) throw new UnreadableBeliefError('another version');
  const pastLength = number(7);
  const membersFrom = HEADER + pastLength;
  const fits =
    pastLength >= 0 && pastLength <= PAST_MINUTES * PAST_NUMBERS && bytes.byteLength === (membersFrom + MEMBERS * MEMBER_NUMBERS) * 8;
  const position = POSITIONS[number(3)];
  if (!fits || position === undefined || !(number(5) >= 0 && number(5) <= MOST_PIECES)) throw new UnreadableBeliefError('wrong length');
  const shape = Object.fromEntries(SHAPE_FIELDS.map((field, i) => [field, number(AFTER_SHAPE + i)])) as unknown as PitShape;
  const instant = <K extends string>(name: K, index: number) =>
    (Number.isNaN(number(index)) ? {} : { [name]: number(index) as EpochS }) as { readonly [name in K]?: EpochS };
  return {
    at: number(1) as EpochS,
    seed: number(2),
    position,
    ungraded: number(4) === 1,
    pieces: number(5),
    dryKgPerS: number(6),
    shape,
    ...instant('lastSeenAt', 16),
    ...instant('lastTempAt', 17),
    ...instant('fireEndRejectedSince', 18),
    ...instant('stackEndRejectedSince', 19),
    past: Float64Array.from({ length: pastLength }, (_, i) => number(HEADER + i)),
    members: Float64Array.from({ length: MEMBERS * MEMBER_NUMBERS }, (_, i) => number(membersFrom + i)),
  };
}
