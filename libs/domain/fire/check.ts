import { randomStream, requireRange, type RandomStream, seedFrom } from '../quantity/index.js';
import type { AirSet } from './air-set.js';
import { type FireBelief, memberAt, MEMBERS } from './belief.js';
import { expectingNothing } from './candour.js';
import { observe } from './filter.js';
import { GRADE_FRAC, glowingKg, LEFT_FRAC } from './grades.js';
import { standardPiece } from './kindle.js';
import { type LaidPiece, makeRoom, putPiece, rake } from './lay.js';
import { LOG_AIR, LOG_BURN, LOG_LOSS, PIECE_BURNT, PIECE_KG, pieceAt } from './layout.js';
import { uncertainPiece } from './noise.js';
import type { FireParameters } from './parameters.js';
import { type BedGrade, type FirePosition, isRaked, MOST_PIECES_LAID, type SplitLeft, type WoodOn } from './pit.js';
import { parametersOf } from './pit-shape.js';
import { laidPieceOf, takeHandTemps, type TempsSeen } from './see.js';

/** A grade is a word: the glowing bed behind it may be 40 % off; what is left of a split, 13 % beside the width of the word. Source: our fit. */
const GRADE_LN_SD = 0.4;
const LIFE_SD = 0.17;
/** So much more left than can be, and somebody laid a split that was not recorded. Source: our fit. */
const UNRECORDED_LIFE = 0.45;

/** A fire check: what was seen before anything was touched, then what was done. */
export interface CheckSeen extends TempsSeen {
  readonly bed?: BedGrade | undefined;
  readonly left?: SplitLeft | undefined;
  readonly on: WoodOn;
  /** Where the fire lies from now on. */
  readonly position: FirePosition;
  /** How the air was left; without it, as it was. */
  readonly air?: AirSet | undefined;
}

/**
 * Takes a fire check into the belief: temperatures, bed grade and what was left of the freshest split correct it, in that order;
 * then the fire is raked and the wood laid on, every member with a piece of its own within what is known of wood.
 * More left of a split than can be means a split nobody recorded: it is laid in, and nothing else is learned from it.
 *
 * @param seen.on  0 to 6 pieces
 * @returns a new belief at the same instant; bring it to the check's instant with `advance` first
 * @throws OutOfRangeError for more than 6 pieces, or a piece that is none
 */
export function seeCheck(belief: FireBelief, seen: CheckSeen): FireBelief {
  requireRange('pieces laid on', seen.on.pieces.length, 0, MOST_PIECES_LAID);
  const laid = seen.on.pieces.map(laidPieceOf);
  const warm = expectingNothing(takeHandTemps(belief, seen).belief);
  const p = parametersOf(belief.shape);
  const x = warm.members.slice();
  const random = randomStream(seedFrom(belief.seed, 'check', belief.at));
  if (seen.bed !== undefined) takeGrade(p, x, belief.pieces, seen.bed);
  const before = x.slice();
  const left = seen.left === undefined ? { pieces: belief.pieces, found: false } : takeLeft(p, x, belief, seen.left, random);
  let { pieces } = left;
  const unrecorded = left.found || burnsTooWell(before, x);
  if (unrecorded) keepMultipliers(before, x);
  if (isRaked(seen.on)) for (let m = 0; m < MEMBERS; m++) rake(x, memberAt(m), pieces);
  for (const piece of laid) pieces = layOnAll(p, x, pieces, piece, random);
  const graded = seen.bed !== undefined || seen.left !== undefined;
  return {
    ...warm,
    members: x,
    pieces,
    position: seen.position,
    ...(seen.air ? { air: seen.air } : {}),
    ungraded: belief.ungraded && seen.bed === undefined,
    ...(graded ? { lastSeenAt: belief.at } : {}),
    ...(unrecorded ? { unrecordedAt: belief.at } : {}),
  };
}

/** One check that wants splits to burn so much faster or slower found wood that nobody recorded, log. Source: our fit. */
const BURN_JUMP = 0.3;

function burnsTooWell(before: Float64Array, after: Float64Array): boolean {
  let jump = 0;
  for (let m = 0; m < MEMBERS; m++) jump += (after[memberAt(m) + LOG_BURN]! - before[memberAt(m) + LOG_BURN]!) / MEMBERS;
  return jump < -BURN_JUMP;
}

/** Nothing is learned of the pit from a check that does not fit what was recorded. */
function keepMultipliers(before: Float64Array, x: Float64Array): void {
  for (let m = 0; m < MEMBERS; m++) for (let i = LOG_LOSS; i <= LOG_AIR; i++) x[memberAt(m) + i] = before[memberAt(m) + i]!;
}

/** Lays one piece on every member's fire, each within what is known of it. @returns pieces on the grate */
function layOnAll(p: FireParameters, x: Float64Array, pieces: number, piece: LaidPiece, random: RandomStream): number {
  const place = makeRoom(p, x, MEMBERS, pieces);
  for (let m = 0; m < MEMBERS; m++) putPiece(x, pieceAt(memberAt(m), place), uncertainPiece(piece, random));
  return place + 1;
}

function takeGrade(p: FireParameters, x: Float64Array, pieces: number, bed: BedGrade): void {
  const seen = Float64Array.from({ length: MEMBERS }, (_, m) => Math.log(glowingKg(x, memberAt(m), pieces) / p.bedKg));
  observe(p, x, pieces, seen, Math.log(GRADE_FRAC[bed]), GRADE_LN_SD);
}

/** @returns pieces on the grate, and whether a split was found there that nobody recorded */
function takeLeft(
  p: FireParameters, x: Float64Array, belief: FireBelief, left: SplitLeft, random: RandomStream,
): { readonly pieces: number; readonly found: boolean } {
  const { pieces } = belief;
  const lifeOf = (piece: number) =>
    Float64Array.from({ length: MEMBERS }, (_, m) => {
      const at = pieceAt(memberAt(m), piece);
      return x[at + PIECE_KG]! > 0 ? 1 - x[at + PIECE_BURNT]! : 0;
    });
  const meanLife = pieces > 0 ? lifeOf(pieces - 1).reduce((sum, life) => sum + life / MEMBERS, 0) : 0;
  if (left !== 'coals' && LEFT_FRAC[left] - meanLife > UNRECORDED_LIFE - (left === 'some' ? 0.15 : 0)) {
    const place = makeRoom(p, x, MEMBERS, pieces);
    for (let m = 0; m < MEMBERS; m++) {
      const burntFrac = Math.min(0.95, Math.max(0, 1 - LEFT_FRAC[left] + 0.12 * random.normal()));
      const found = { ...uncertainPiece(standardPiece(belief.shape), random), burntFrac, heatedFrac: Math.min(1, 0.4 + burntFrac) };
      putPiece(x, pieceAt(memberAt(m), place), found);
    }
    return { pieces: place + 1, found: true };
  }
  for (let piece = left === 'coals' ? 0 : pieces - 1; piece >= 0 && piece < pieces; piece++) {
    observe(p, x, pieces, lifeOf(piece), LEFT_FRAC[left], LIFE_SD);
  }
  return { pieces, found: false };
}
