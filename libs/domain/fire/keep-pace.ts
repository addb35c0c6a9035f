import { clamp, randomStream, seedFrom } from '../quantity/index.js';
import { chamberK } from './chamber-temp.js';
import { memberAt } from './belief.js';
import { lifeSum } from './grades.js';
import { type LaidPiece, makeRoom, putPiece, rake } from './lay.js';
import { pieceAt } from './layout.js';
import { uncertainPiece } from './noise.js';
import type { Band } from './pit.js';
import { needInSplits } from './pencil-rule.js';
import type { Roll, RolledState } from './roll.js';

/** What laying wood in a rolled future needs to know. */
export interface LayTerms {
  readonly band: Band;
  /** The split that suits this firebox. */
  readonly standard: LaidPiece;
  /** Which pieces turn out how wet is drawn from it, by their number only, so that all plans share it. */
  readonly seed: number;
}
/** Less than this of a standard split is not laid; more than this not at once; a thick piece is no thicker than this. Source: our fit. */
const LEAST_SPLIT = 0.3;
const MOST_SPLITS = 2;
const THICKEST = 1.15;

/** Rakes, then lays the same pieces on all rolled members, each within what is known of wood. */
export function layPieces(roll: Roll, state: RolledState, pieces: readonly LaidPiece[], terms: LayTerms): void {
  for (let m = 0; m < roll.count; m++) rake(state.x, memberAt(m), state.pieces);
  pieces.forEach((piece, nth) => {
    const random = randomStream(seedFrom(terms.seed, 'laid', 0, nth));
    const place = makeRoom(roll.p, state.x, roll.count, state.pieces);
    for (let m = 0; m < roll.count; m++) putPiece(state.x, pieceAt(memberAt(m), place), uncertainPiece(piece, random));
    state.pieces = place + 1;
  });
}

/**
 * A later look, as the pencil rule would use it: every member gets the piece that its own temperature and its own wood ask for.
 * So what comes after an action is judged by people who look and answer, not by a blind pace. Source: our fit.
 *
 * @param look  number of that look, from 1: the same look meets the same wood in every plan
 */
export function layByNeed(roll: Roll, state: RolledState, terms: LayTerms, look: number): void {
  const { standard, band } = terms;
  for (let m = 0; m < roll.count; m++) rake(state.x, memberAt(m), state.pieces);
  const random = randomStream(seedFrom(terms.seed, 'laid', look));
  const place = makeRoom(roll.p, state.x, roll.count, state.pieces);
  for (let m = 0; m < roll.count; m++) {
    const member = memberAt(m);
    const belowK = 0.5 * (band.lowC + band.highC) + 273.15 - chamberK(state.x, member);
    const want = needInSplits(lifeSum(state.x, member, state.pieces, standard.dryKg), belowK);
    const splits = want < LEAST_SPLIT ? 0 : clamp(want, LEAST_SPLIT, MOST_SPLITS);
    const drawn = uncertainPiece(standard, random);
    const halfThicknessM = drawn.halfThicknessM * Math.min(THICKEST, Math.sqrt(splits));
    putPiece(state.x, pieceAt(member, place), { ...drawn, dryKg: drawn.dryKg * splits, halfThicknessM });
  }
  state.pieces = place + 1;
}
