import type { EpochS } from '../quantity/index.js';
import { type FireBelief, MEMBERS, PAST_MINUTES, PAST_NUMBERS } from './belief.js';
import { type AirSet, DAMPERS, DOORS } from './air-set.js';
import { MEMBER_NUMBERS, MOST_PIECES } from './layout.js';
import type { FirePosition, PitShape } from './pit.js';

/** Changes when the layout of the numbers does: an older belief is then refused instead of misread. */
const FORMAT = 20265;
const HEADER = 33;
const POSITIONS: readonly FirePosition[] = ['door', 'middle', 'throat'];
const SHAPE_FIELDS = [
  'chamberLengthM', 'chamberDiameterM', 'fireboxLengthM', 'fireboxDiameterM', 'steelThicknessM', 'stackHeightM', 'stackDiameterM', 'zones',
] as const satisfies readonly (keyof PitShape)[];
const AFTER_SHAPE = 8;

const airNumbers = (air: AirSet | undefined) => (air ? [DOORS.indexOf(air.door), DAMPERS.indexOf(air.damper), air.screen ? 1 : 0] : [NaN, NaN, NaN]);
function airRead(door: number, damper: number, screen: number): { readonly air?: AirSet } {
  const [doorSet, damperSet] = [DOORS[door], DAMPERS[damper]];
  return doorSet === undefined || damperSet === undefined ? {} : { air: { door: doorSet, damper: damperSet, screen: screen === 1 } };
}

/** Thrown for bytes that hold no belief of this version: start the fire anew with `kindle` and the last check. */
export class UnreadableBeliefError extends Error {
  constructor(why: string) {
    super(`These bytes hold no fire that can be read (${why}). Kindle the fire anew from its last check.`);
    this.name = 'UnreadableBeliefError';
  }
}

/** Whether this machine keeps its numbers with the least byte first, as the bytes of a belief do. */
const LEAST_FIRST = new Uint8Array(Float64Array.of(1).buffer)[7] !== 0;
/** Turns each number's bytes round, on machines that keep them the other way. */
function swapped(bytes: Uint8Array): Uint8Array {
  if (LEAST_FIRST) return bytes;
  const turned = new Uint8Array(bytes.length);
  for (let i = 0; i < bytes.length; i++) turned[i] = bytes[i - (i % 8) + 7 - (i % 8)]!;
  return turned;
}

/** A belief as bytes, about 27 kB, IEEE 754 doubles in little-endian order: the way back gives the same numbers to the last bit. */
export function beliefToBytes(belief: FireBelief): Uint8Array {
  const header = [
    FORMAT, belief.at, belief.seed, POSITIONS.indexOf(belief.position), belief.ungraded ? 1 : 0, belief.pieces, belief.dryKgPerS,
    belief.past.length, ...SHAPE_FIELDS.map((field) => belief.shape[field]), belief.lastSeenAt ?? NaN, belief.lastTempAt ?? NaN,
    belief.fireEndRejectedSince ?? NaN, belief.stackEndRejectedSince ?? NaN, belief.unrecordedAt ?? NaN, belief.divergedAt ?? NaN,
    belief.endsApartSince ?? NaN, ...airNumbers(belief.air), belief.lookAgainAt ?? NaN,
    belief.endsApartK ?? NaN, belief.expects?.at ?? NaN, belief.expects?.tempC ?? NaN, belief.expects?.sdK ?? NaN,
    belief.surprises?.count ?? NaN, belief.surprises?.sum ?? NaN,
  ];
  const numbers = new Float64Array(HEADER + belief.past.length + belief.members.length);
  numbers.set(header);
  numbers.set(belief.past, HEADER);
  numbers.set(belief.members, HEADER + belief.past.length);
  return swapped(new Uint8Array(numbers.buffer));
}

/** @throws UnreadableBeliefError for bytes of another version or length */
export function beliefFromBytes(bytes: Uint8Array): FireBelief {
  if (bytes.byteLength < HEADER * 8 || bytes.byteLength % 8 !== 0) throw new UnreadableBeliefError(`${bytes.byteLength} bytes`);
  const numbers = new Float64Array(bytes.byteLength / 8);
  new Uint8Array(numbers.buffer).set(swapped(bytes));
  const number = (index: number) => numbers[index]!;
  if (number(0) !== FORMAT) throw new UnreadableBeliefError('another version');
  const pastLength = number(7);
  const membersFrom = HEADER + pastLength;
  const fits =
    pastLength >= 0 && pastLength <= PAST_MINUTES * PAST_NUMBERS && numbers.length === membersFrom + MEMBERS * MEMBER_NUMBERS;
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
    ...instant('unrecordedAt', 20),
    ...instant('divergedAt', 21),
    ...instant('endsApartSince', 22),
    ...airRead(number(23), number(24), number(25)),
    ...instant('lookAgainAt', 26),
    ...(Number.isNaN(number(27)) ? {} : { endsApartK: number(27) }),
    ...(Number.isNaN(number(28)) ? {} : { expects: { at: number(28) as EpochS, tempC: number(29), sdK: number(30) } }),
    ...(Number.isNaN(number(31)) ? {} : { surprises: { count: number(31), sum: number(32) } }),
    past: numbers.slice(HEADER, membersFrom),
    members: numbers.slice(membersFrom),
  };
}
