import { requireRange } from '../quantity/index.js';
import { bestAcrossM, type Lie, liesAcross } from './fit.js';

/** A firebox as far as wood is concerned; inside sizes. */
export interface Firebox {
  readonly fireboxDiameterM: number;
  readonly fireboxLengthM: number;
}
/** How one split is cut so that it lies across. */
export interface Cutting {
  /** Splits of this length come out of one. */
  readonly pieces: number;
  readonly pieceLengthM: number;
  readonly cuts: number;
  /** Length of the one offcut; 0 when nothing is left. */
  readonly offcutM: number;
  /** Sawn to dust, or too short to be worth keeping. */
  readonly lostM: number;
  /** A piece so short that it must not be held by hand against a saw. */
  readonly short: boolean;
}

/** Width of a saw cut, m. Source: common practice, no source. */
const KERF_M = 0.006;
/** Shorter than this it is kindling dust, not an offcut, m. Source: common practice, no source. */
const OFFCUT_LEAST_M = 0.05;
/** Below this length a piece or offcut must be cut with a guarded lopping saw or a fixed splitting wedge. Source: common practice, no source. */
const SHORT_M = 0.3;
/** Even parts are good enough from half the width up to where they no longer lie across. Source: common practice, no source. */
const EVEN_FRAC: readonly [number, number] = [0.5, 0.7];

/**
 * How the kitchen's loading ties the fire's place: with food at the fire end the fire must stay by the door, so wood must lie across;
 * loaded at the stack end alone it may lie lengthwise. Source: common practice, no source.
 *
 * @param loadedZones  zones that hold food, counted from the fire end at 0
 * @param zoneCount    zones of the chamber, 1 or more
 */
export function mustLieAcross(loadedZones: readonly number[], zoneCount: number): boolean {
  requireRange('zones', zoneCount, 1, 12);
  return loadedZones.some((zone) => zone < zoneCount / 2);
}

/** Whether wood that lies so may go on a fire whose food asks for wood across, or not. */
export const mayBurn = (lies: Lie, across: boolean): boolean => lies === 'across' || (lies === 'lengthwise' && !across);

/**
 * How to cut a split so that it lies across: into even parts without an offcut where those are half to 0.7 of the width, else into
 * parts of 0.58 of the width and one offcut. Fewest offcut first, then fewest cuts. Undefined where it lies across as it is.
 *
 * @param lengthM  of the split, 0.02 to 3 m
 * @param firebox  inside sizes
 * @returns Held to libs/domain/wood/trim.test.ts
 */
export function cuttingFor(lengthM: number, firebox: Firebox): Cutting | undefined {
  if (liesAcross({ ...firebox, lengthM }) === 'across') return undefined;
  const width = firebox.fireboxDiameterM;
  const best = bestAcrossM(width);
  const most = Math.floor((lengthM + KERF_M) / (EVEN_FRAC[0] * width + KERF_M));
  const even = Array.from({ length: Math.max(0, most - 1) }, (_, i) => i + 2)
    .map((pieces) => ({ pieces, pieceLengthM: (lengthM - (pieces - 1) * KERF_M) / pieces }))
    .filter(({ pieceLengthM }) => pieceLengthM >= EVEN_FRAC[0] * width && pieceLengthM <= EVEN_FRAC[1] * width)
    .sort((a, b) => Math.abs(a.pieceLengthM - best) - Math.abs(b.pieceLengthM - best))[0];
  if (even) return { ...even, cuts: even.pieces - 1, offcutM: 0, lostM: (even.pieces - 1) * KERF_M, short: even.pieceLengthM < SHORT_M };
  const pieces = Math.floor(lengthM / (best + KERF_M));
  const rest = lengthM - pieces * (best + KERF_M);
  const offcutM = rest >= OFFCUT_LEAST_M ? rest : 0;
  return { pieces, pieceLengthM: best, cuts: pieces, offcutM, lostM: lengthM - pieces * best - offcutM, short: best < SHORT_M || (offcutM > 0 && offcutM < SHORT_M) };
}

const longestAsIsM = (firebox: Firebox, across: boolean): number => (across ? EVEN_FRAC[1] * firebox.fireboxDiameterM : 0.9 * firebox.fireboxLengthM);

/**
 * How long the splits of a lot are that have to be cut: as the lot is, or, of a lot that lies as it should on the whole, as its longer ones.
 *
 * @param lot.lengthDeviationM  one deviation of its length, 0 to 0.3 m
 */
export function longSplitM(lot: { readonly lengthM: number; readonly lengthDeviationM?: number; readonly firebox: Firebox; readonly across: boolean }): number {
  const { lengthM, lengthDeviationM = 0, firebox, across } = lot;
  const asIs = mayBurn(liesAcross({ ...firebox, lengthM }), across);
  return asIs && lengthDeviationM > 0 ? Math.max(longestAsIsM(firebox, across) * 1.02, lengthM + lengthDeviationM) : lengthM;
}

/** One line of the trim list. */
export interface TrimLine<PitId extends string, LotId extends string> {
  readonly pitId: PitId;
  readonly lotId: LotId;
  readonly splits: number;
  readonly cutting: Cutting;
  readonly cuts: number;
  readonly offcuts: number;
  /** What comes out and lies across. */
  readonly pieces: number;
}

/**
 * What to trim for tonight: of the wood meant for each pit, the splits that may not burn there as they are. Lengths of a lot differ:
 * of a lot that lies across on the whole, those that are longer are counted by the normal distribution.
 *
 * @param wanted  splits of a lot meant for a pit, 0 or more; deviation of the lot's length, 0 to 0.3 m
 * @returns lines in the order given, without those that need no cut. Held to libs/domain/wood/trim.test.ts
 */
export function trimList<PitId extends string, LotId extends string>(
  wanted: readonly { readonly pitId: PitId; readonly lotId: LotId; readonly splits: number; readonly lengthM: number; readonly lengthDeviationM?: number; readonly firebox: Firebox; readonly across: boolean }[],
): readonly TrimLine<PitId, LotId>[] {
  return wanted.flatMap(({ pitId, lotId, splits, lengthM, lengthDeviationM = 0, firebox, across }) => {
    requireRange('splits', splits, 0, 1e5);
    requireRange('deviation of length (m)', lengthDeviationM, 0, 0.3);
    const asIs = mayBurn(liesAcross({ ...firebox, lengthM }), across);
    const cutting = cuttingFor(longSplitM({ lengthM, lengthDeviationM, firebox, across }), firebox);
    const cut = asIs ? Math.round(splits * longerFrac(longestAsIsM(firebox, across), lengthM, lengthDeviationM)) : splits;
    if (!cutting || cut === 0) return [];
    return [{ pitId, lotId, splits: cut, cutting, cuts: cut * cutting.cuts, offcuts: cutting.offcutM > 0 ? cut : 0, pieces: cut * cutting.pieces }];
  });
}

/** Part of a lot longer than a length, by the logistic form of the normal distribution. Source: the usual approximation, error under 0.01. */
const longerFrac = (limit: number, mean: number, deviation: number): number =>
  deviation === 0 ? (mean > limit ? 1 : 0) : 1 / (1 + Math.exp((1.702 * (limit - mean)) / deviation));
