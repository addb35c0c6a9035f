/** Capital height over font size of Barlow Semi Condensed: 700 of 1000 units, as its font file says (table OS/2). */
export const CAPITAL_FRAC = 0.7;

/**
 * Capital heights for reading at 5 m and still at 6 m, mm: 24 minutes of arc at 6 m is 42 mm, 16 minutes 28 mm.
 * Held to ISO 9241-303 (16 minutes to read, 20 to 22 preferred) and, for large, to 34 minutes at 5 m.
 */
const AT_5_M_MM = { large: 50, middle: 35, small: 28 } as const;
const WRITTEN_FOR_M = 5;

export interface WallSizes {
  /** Font sizes, CSS px. large: minutes, and a name when hands are needed. middle: the person, temperatures, the clock. */
  readonly large: number;
  readonly middle: number;
  readonly small: number;
  readonly mmPerPx: number;
  readonly headPx: number;
  readonly footPx: number;
  readonly stripePx: number;
  readonly gapPx: number;
  /** So many stripes stand on one page at full size. */
  readonly stripes: number;
  /** Width left for the drawing of the pit and for the ribbon, px. */
  readonly picturePx: number;
  /** Height left for them, px: of the stripe, or of the line of their own that they have on a screen taller than wide. */
  readonly pictureHighPx: number;
  /** Whether one stripe and the two lines fit at all: if not, this screen cannot be read at that distance. */
  readonly readable: boolean;
  /** What these sizes can be read from, m: the distance asked for, or the most that this screen allows. */
  readonly readFromM: number;
}

interface SizesOf {
  readonly screenDiagonalM: number;
  readonly viewDistanceM: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Width of name and minutes together, in large font sizes. */
export const WHICH_EM = 4.42;
/** Line height of the person's name, which has no line above it. */
const PERSON_LINE = 0.9;
/** Width of the person with what to do, in large font sizes. */
export const WHO_EM = 3.78;
/** Width of the temperature, in large font sizes. */
export const TEMP_EM = 1.36;
/** The stripe's words with the gaps between them need this many large font sizes of width. */
const WORDS_EM = WHICH_EM + WHO_EM + TEMP_EM + 0.42;

/** On a screen taller than wide: height of the pictures' line in large font sizes, and what the stripe's edges take of its width. */
const UPRIGHT_PICTURE_EM = 1.8;
const UPRIGHT_EDGES_PX = 64;

const STEP_M = 0.1;

/**
 * Sizes of the wall in CSS px, from the yard's screen, seen whole, and how far from it people stand. A screen that cannot
 * be read from there gets the sizes of the longest distance from which it can, and says which that is.
 */
export function wallSizes(asked: SizesOf): WallSizes {
  const sizes = sizesFrom(asked);
  if (sizes.readable) return sizes;
  let nearer = sizes;
  for (let m = asked.viewDistanceM - STEP_M; !nearer.readable && m > STEP_M; m -= STEP_M) nearer = sizesFrom({ ...asked, viewDistanceM: m });
  return { ...nearer, readable: false };
}

function sizesFrom({ screenDiagonalM, viewDistanceM, widthPx, heightPx }: SizesOf): WallSizes {
  const mmPerPx = (screenDiagonalM * 1000) / Math.hypot(widthPx, heightPx);
  const fontPx = (capitalMm: number) => Math.ceil((capitalMm * viewDistanceM) / WRITTEN_FOR_M / mmPerPx / CAPITAL_FRAC);
  const large = fontPx(AT_5_M_MM.large);
  const middle = fontPx(AT_5_M_MM.middle);
  const small = fontPx(AT_5_M_MM.small);
  const gapPx = 6;
  // Taller than wide, a phone held in the hand, the head takes a second line, and the pictures stand under the words.
  const upright = heightPx > widthPx;
  const headPx = Math.ceil(middle * 1.34 + (upright ? small * 1.3 : 0));
  const footPx = Math.ceil(small * 1.44);
  // The person stands over what is to be done there, each on its line.
  const wordsPx = Math.ceil(Math.max(middle * PERSON_LINE + small + 4, large * 1.1));
  const leastPx = upright ? Math.ceil(wordsPx + large * UPRIGHT_PICTURE_EM) : wordsPx;
  const room = heightPx - headPx - footPx;
  const stripes = Math.max(1, Math.floor((room + gapPx) / (leastPx + gapPx)));
  const besidePx = widthPx - WORDS_EM * large;
  return {
    large, middle, small, mmPerPx, headPx, footPx, gapPx, stripes,
    picturePx: upright ? widthPx - UPRIGHT_EDGES_PX : besidePx,
    pictureHighPx: upright ? large * UPRIGHT_PICTURE_EM - 8 : Math.min(leastPx - 8, 160 * (widthPx / 1920)),
    stripePx: leastPx,
    readable: room >= leastPx && besidePx >= (upright ? UPRIGHT_EDGES_PX : widthPx * 0.2),
    readFromM: viewDistanceM,
  };
}
