import { requireRange } from '../quantity/index.js';
import { dryMassKg, type Piece } from './piece.js';
import { dryWoodKgPerM3 } from './density.js';

/** A foot in metres, exact by the international yard and pound agreement of 1959. [SI-2019] */
const FOOT_M = 0.3048;
/** A cord: 128 cubic feet of wood ranked and well stowed. [NIST-HB130] Uniform Regulation for the Method of Sale, 2.4 Fireplace and Stove Wood. */
export const CORD_M3 = 128 * FOOT_M ** 3;
/** Packaged wood is less than 1/8 cord and is sold by volume. [NIST-HB130] 2.4. */
export const PACKAGED_UNDER_M3 = CORD_M3 / 8;
/** Solid wood in a stowed cord: 85 of 128 cubic feet, usual range 80 to 90. Source: an encyclopedia of measures; the range from memory. */
export const STOWED_SOLID_FRAC = 85 / 128;
const SOLID_RANGE: readonly [number, number] = [80 / 128, 90 / 128];
/** Cross-stacked wood holds half as much air again as stowed wood. Source: the same encyclopedia of measures. */
const CROSS_STACKED_AIR = 1.5;

/** How splits lie in a stack: ranked side by side, crossed layer by layer, or thrown in a heap. */
export type Stowing = 'ranked' | 'crossed' | 'heaped';
/** A heap holds about as much wood as 2/3 of the same room ranked. Source: common practice, no source. */
const HEAPED_OF_RANKED = 2 / 3;

/**
 * Solid wood in a stacked cubic metre, m3/m3.
 *
 *     ranked  f        crossed  1 - 1.5 (1 - f)        heaped  2/3 f
 *
 * @param stowing     how the wood lies
 * @param rankedFrac  f, 0.5 to 0.8 of ranked wood; default 85/128
 */
export function solidFrac(stowing: Stowing, rankedFrac: number = STOWED_SOLID_FRAC): number {
  requireRange('solid part of ranked wood', rankedFrac, 0.5, 0.8);
  if (stowing === 'ranked') return rankedFrac;
  return stowing === 'crossed' ? 1 - CROSS_STACKED_AIR * (1 - rankedFrac) : HEAPED_OF_RANKED * rankedFrac;
}

/** Wood counted in one of the ways that a yard and a seller count. */
export type Measure =
  | { readonly by: 'pieces'; readonly pieces: number }
  /** Rows of splits: length and height of the row; its depth is the length of the splits. */
  | { readonly by: 'rows'; readonly rows: number; readonly lengthM: number; readonly heightM: number; readonly stowing?: Stowing }
  | { readonly by: 'cords'; readonly cords: number; readonly stowing?: Stowing }
  | { readonly by: 'volume'; readonly stackedM3: number; readonly stowing?: Stowing }
  /** As a scale shows it, with its water. */
  | { readonly by: 'weight'; readonly massKg: number };

/** Solid wood of one piece, m3: dry mass over dry wood in a cubic metre. Source: geometry. */
export const solidM3OfPiece = (piece: Piece): number => dryMassKg(piece) / dryWoodKgPerM3(piece);

/**
 * Solid wood in what was measured, with the range that the way of measuring leaves open.
 *
 *     pieces n v        rows  rows L H l f        cords  128 ft3 f        weight  m / (rho_dry (1 + x))
 *
 * The range: of a count of pieces by the spread of their thickness, of a stack by 80 to 90 of 128 cubic feet, of a weight by the
 * 10 % by which the density of single trees varies within a species ([FPL-GTR-190] ch. 4) over the root of the trees in it.
 *
 * @param measure  amounts 0 or more
 * @param piece    the usual split of the lot, for its size, species and moisture
 * @returns m3 of solid wood. Held to tests/published/wood-measure.test.ts
 */
export function solidM3(measure: Measure, piece: Piece): { readonly m3: number; readonly lowM3: number; readonly highM3: number } {
  const around = (m3: number, frac: number) => ({ m3, lowM3: m3 * (1 - frac), highM3: m3 * (1 + frac) });
  const stacked = (m3: number, stowing: Stowing = 'ranked') => ({
    m3: m3 * solidFrac(stowing), lowM3: m3 * solidFrac(stowing, SOLID_RANGE[0]), highM3: m3 * solidFrac(stowing, SOLID_RANGE[1]),
  });
  switch (measure.by) {
    case 'pieces':
      requireRange('pieces', measure.pieces, 0, 1e6);
      return around(measure.pieces * solidM3OfPiece(piece), COUNT_SPREAD);
    case 'rows':
      requireRange('rows', measure.rows, 0, 1000);
      requireRange('length of a row (m)', measure.lengthM, 0, 100);
      requireRange('height of a row (m)', measure.heightM, 0, 10);
      return stacked(measure.rows * measure.lengthM * measure.heightM * piece.lengthM, measure.stowing);
    case 'cords':
      requireRange('cords', measure.cords, 0, 10_000);
      return stacked(measure.cords * CORD_M3, measure.stowing);
    case 'volume':
      requireRange('stacked volume (m3)', measure.stackedM3, 0, 1e5);
      return stacked(measure.stackedM3, measure.stowing);
    case 'weight':
      requireRange('mass (kg)', measure.massKg, 0, 1e7);
      return around(measure.massKg / (dryWoodKgPerM3(piece) * (1 + piece.moisture)), WEIGHT_SPREAD);
  }
}
/** A split is no standard split: thickness by a tenth either way, a fifth of its section. Source: common practice, no source. */
const COUNT_SPREAD = 0.2;
/** Density of a delivery from some ten trees, 10 % each, twice the deviation. [FPL-GTR-190] ch. 4; the number of trees from common practice, no source. */
const WEIGHT_SPREAD = 0.08;

/** Splits in what was measured, not rounded: its solid wood over that of one. Same ranges as `solidM3`. */
export const piecesOf = (measure: Measure, piece: Piece): number =>
  measure.by === 'pieces' ? measure.pieces : solidM3(measure, piece).m3 / solidM3OfPiece(piece);

/** Cords that a number of splits fill when ranked and well stowed. Same ranges as `solidM3`. */
export const cordsOf = (pieces: number, piece: Piece): number => solidM3({ by: 'pieces', pieces }, piece).m3 / (CORD_M3 * STOWED_SOLID_FRAC);

/**
 * Mass of a stowed cord with its water: m = 128 ft3 f rho_dry (1 + x). [FPL-GTR-190] ch. 4, [NIST-HB130] 2.4.
 *
 * @param wood       species and moisture x, dry basis, 0 to 1.4
 * @param solidPart  f; tables of firewood use 80/128, 85/128 or 90/128 without saying which
 * @returns kg. Held to tests/published/wood-measure.test.ts
 */
export const cordMassKg = (wood: Pick<Piece, 'species' | 'moisture'>, solidPart: number = STOWED_SOLID_FRAC): number =>
  CORD_M3 * solidPart * dryWoodKgPerM3(wood) * (1 + wood.moisture);
