/**
 * Where the numbers of one believed fire lie in a flat row: state of the pit, then the pieces on the grate. Temperatures in
 * kelvin. Thirds of the chamber count from the fire end.
 */
export const BED_KG = 0;
export const BED_K = 1;
export const FIREBOX_K = 2;
export const SHELL_K = 3;
export const INNER_K = 6;
export const FOOD_K = 9;
export const GAUGE_K = 12;
export const ASH_KG = 15;
/** Logs of the multipliers on outside loss, burn rate, coal rate, air flow. */
export const LOG_LOSS = 16;
export const LOG_BURN = 17;
export const LOG_COAL = 18;
export const LOG_AIR = 19;
export const PIT_NUMBERS = 20;

/** Of a piece: dry mass at start, half thickness, moisture (dry basis), burnt share of the half thickness, heat-up, char still attached, density. */
export const PIECE_KG = 0;
export const PIECE_HALF_M = 1;
export const PIECE_MOISTURE = 2;
export const PIECE_BURNT = 3;
export const PIECE_HEATED = 4;
export const PIECE_CHAR_KG = 5;
export const PIECE_DENSITY = 6;
export const PIECE_NUMBERS = 7;

/** Pieces told apart on one grate; two nearly burnt ones count as one when another must lie down. */
export const MOST_PIECES = 8;
export const MEMBER_NUMBERS = PIT_NUMBERS + MOST_PIECES * PIECE_NUMBERS;
/** Thirds of the chamber in the model, whatever the crew calls zones. */
export const THIRDS = 3;
export const pieceAt = (member: number, piece: number) => member + PIT_NUMBERS + piece * PIECE_NUMBERS;
