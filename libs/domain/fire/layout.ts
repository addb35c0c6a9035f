/**
 * Where the numbers of one believed fire lie in a flat row: state of the pit, then the pieces on the grate. Temperatures in
 * kelvin. Thirds of the chamber count from the fire end.
 * The first: loose coals, kg.
 */
export const BED_KG = 0;
/** Temperature of the bed, K. */
export const BED_K = 1;
/** Firebox steel, K. */
export const FIREBOX_K = 2;
/** Shell of the first third, K; the other two follow. */
export const SHELL_K = 3;
/** Grates and plates of the first third, K; the other two follow. */
export const INNER_K = 6;
/** Surface layer of the food in the first third, K; the other two follow. */
export const FOOD_K = 9;
/** What a gauge in the first third shows, K; the other two follow. */
export const GAUGE_K = 12;
/** Ash under the bed, kg. */
export const ASH_KG = 15;
/** Log of the multiplier on the outside loss. */
export const LOG_LOSS = 16;
/** Log of the multiplier on the burn rate. */
export const LOG_BURN = 17;
/** Log of the multiplier on the coal rate. */
export const LOG_COAL = 18;
/** Log of the multiplier on the air flow. */
export const LOG_AIR = 19;
/** Numbers of the pit in a row; the pieces follow. */
export const PIT_NUMBERS = 20;

/** Of a piece: dry mass at start, kg; 0 when nothing is left of it. */
export const PIECE_KG = 0;
/** Half thickness, m. */
export const PIECE_HALF_M = 1;
/** Moisture, dry basis. */
export const PIECE_MOISTURE = 2;
/** Burnt share of the half thickness, 0 to 1. */
export const PIECE_BURNT = 3;
/** Heat-up, 0 fresh to 1 aflame all round. */
export const PIECE_HEATED = 4;
/** Char that still hangs on it, kg. */
export const PIECE_CHAR_KG = 5;
/** Dry mass over volume, kg/m3. */
export const PIECE_DENSITY = 6;
/** Numbers of a piece. */
export const PIECE_NUMBERS = 7;

/** Pieces told apart on one grate; two nearly burnt ones count as one when another must lie down. */
export const MOST_PIECES = 8;
/** Length of a row. */
export const MEMBER_NUMBERS = PIT_NUMBERS + MOST_PIECES * PIECE_NUMBERS;
/** Thirds of the chamber in the model, whatever the crew calls zones. */
export const THIRDS = 3;
/** First index of a piece's numbers in the row that begins at `member`. */
export const pieceAt = (member: number, piece: number) => member + PIT_NUMBERS + piece * PIECE_NUMBERS;
