import { type Piece, pieceOfSize, type PieceSize } from '../wood/index.js';

/** What a person may do at a fire: rake only, or rake and lay. */
export type AdviceAction = 'rake' | 'one' | 'two' | 'one-thin' | 'one-thick' | 'two-thin' | 'offcut' | 'two-offcuts';

const LAYS: Readonly<Record<AdviceAction, readonly PieceSize[]>> = {
  rake: [],
  one: ['standard'],
  two: ['standard', 'standard'],
  'one-thin': ['thin'],
  'one-thick': ['thick'],
  'two-thin': ['thin', 'thin'],
  offcut: ['offcut'],
  'two-offcuts': ['offcut', 'offcut'],
};

/** The pieces that an action lays, cut from the cart's standard split. */
export const piecesOf = (action: AdviceAction, standard: Piece): readonly Piece[] => LAYS[action].map((size) => pieceOfSize(standard, size));
