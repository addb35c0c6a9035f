import { type DryBasis, requireRange } from '../quantity/index.js';
import { dryWoodKgPerM3 } from './density.js';
import { netHeatJPerDryKg } from './heat.js';
import type { Species } from './species.js';

/** How thick a piece is beside the lot's standard split; an offcut is what trimming left. */
export type PieceSize = 'thin' | 'standard' | 'thick' | 'offcut';

/** One piece of firewood. */
export interface Piece {
  /** Side of the square that the split would just pass, m. */
  readonly thicknessM: number;
  readonly lengthM: number;
  readonly species: Species;
  /** Dry basis: what the meter shows on a fresh face, over 100. */
  readonly moisture: DryBasis;
}

/** A split is a wedge, not a squared beam: its section over thickness squared. Source: our fit, to splits of 3.8 lb dry. */
const SECTION_FRAC = 0.78;

/** Thickness beside the standard split. A third more wood in a thick one, a quarter less in a thin one. Source: common practice, no source. */
const THICKNESS_RATIO: Readonly<Record<PieceSize, number>> = { thin: 0.078 / 0.092, standard: 1, thick: 0.106 / 0.092, offcut: 1 };
/** An offcut is what is left of a split trimmed to lie across. Source: common practice, no source. */
const OFFCUT_LENGTH_RATIO = 0.4;

/**
 * The piece that a person means by 'a thin one' of a lot.
 *
 * @param standard  the lot's standard split
 * @param size      thin, standard, thick, or an offcut: full thickness, 0.4 of the length
 */
export function pieceOfSize(standard: Piece, size: PieceSize): Piece {
  const lengthM = size === 'offcut' ? standard.lengthM * OFFCUT_LENGTH_RATIO : standard.lengthM;
  return { ...standard, thicknessM: standard.thicknessM * THICKNESS_RATIO[size], lengthM };
}

/**
 * Dry wood in a piece: m = 0.78 t^2 l rho_dry. Source: geometry; density by species, [FPL-GTR-190] ch. 4.
 *
 * @param piece  thickness 0.005 to 0.5 m, length 0.02 to 3 m, moisture dry basis 0 to 1.4
 * @returns kg, bone dry
 */
export function dryMassKg(piece: Piece): number {
  requireRange('thickness (m)', piece.thicknessM, 0.005, 0.5);
  requireRange('length (m)', piece.lengthM, 0.02, 3);
  return SECTION_FRAC * piece.thicknessM ** 2 * piece.lengthM * dryWoodKgPerM3(piece);
}

/** Mass of a piece as a scale shows it, kg: dry mass and its water. Same ranges as `dryMassKg`. */
export const wetMassKg = (piece: Piece): number => dryMassKg(piece) * (1 + piece.moisture);

/** Net heat in a piece as it goes on the fire, J: dry mass times the heat per dry kilogram that is left after its water is boiled off. */
export const heatOfPieceJ = (piece: Piece): number => dryMassKg(piece) * netHeatJPerDryKg(piece.moisture);
