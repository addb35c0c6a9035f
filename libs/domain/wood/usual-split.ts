import { dryBasis } from '../quantity/index.js';
import type { Piece } from './piece.js';

/** The split to reckon with where no lot is known: 3.6 in thick, 14 in long, air-dry oak. Source: common practice, no source. */
export const USUAL_SPLIT: Piece = { thicknessM: 0.092, lengthM: 0.36, species: 'white-oak', moisture: dryBasis(0.15) };

/** Wood over this is not burned, dry basis: it smoulders, and smokes the food. Source: common practice, no source. */
export const BURNS_UP_TO = dryBasis(0.25);
