/** A line in pieces of whole words, none wider than the room; a word that is wider alone stands alone. */
function pieces(line: string, roomPx: number, widthPx: (text: string) => number): readonly string[] {
  return line.split(' ').reduce<string[]>((done, word) => {
    const last = done.at(-1);
    if (last === undefined || widthPx(`${last} ${word}`) > roomPx) return [...done, word];
    return [...done.slice(0, -1), `${last} ${word}`];
  }, []);
}

const STEP = 0.04;

/** A line of the wall's foot. The mark says what it is about, and stands before each of its pieces. */
export interface FootLine {
  readonly mark: string;
  readonly text: string;
}

/** The line in as few pieces as its room allows, about equally long, so that no last word stands alone. Widths in CSS px. */
export function brokenLine({ mark, text }: FootLine, roomPx: number, widthPx: (text: string) => number): readonly string[] {
  const leftPx = roomPx - widthPx(mark);
  const wide = pieces(text, leftPx, widthPx);
  const marked = (parts: readonly string[]) => parts.map((part) => `${mark}${part}`);
  for (let share = 1 / wide.length; share < 1; share += STEP) {
    const even = pieces(text, leftPx * share, widthPx);
    if (even.length === wide.length) return marked(even);
  }
  return marked(wide);
}

/** Figures on the wall are as wide as each other, a little wider than those measured. */
const WIDER = 1.02;

const fontOf = (fontPx: number) => `600 ${fontPx}px 'Barlow Semi Condensed'`;
/** Whether the typeface is there yet: what is measured before is measured in another. */
export const isDrawn = (fontPx: number): boolean => document.fonts.check(fontOf(fontPx));

/** Measures texts at this font size, in the weight of the foot's words; CSS px. */
export function widthIn(fontPx: number): (text: string) => number {
  const paper = document.createElement('canvas').getContext('2d')!;
  paper.font = fontOf(fontPx);
  return (text) => WIDER * paper.measureText(text).width;
}
