/** A paper to print or to hand on: a heading, lines below it, tables, and what must be read with them. */
export interface Paper {
  readonly title: string;
  readonly lines: readonly string[];
  readonly tables: readonly { readonly title: string; readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] }[];
  readonly notes: readonly string[];
}

/** Letters of code page 1252 that stand outside ISO 8859-1: all that the fonts every reader of a PDF brings along can write. */
const ALSO_WRITTEN = '€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ';
const isWritten = (letter: string) => ALSO_WRITTEN.includes(letter) || (letter.codePointAt(0) ?? 0) <= 0xff;

/** A text in letters that those fonts have: a letter with a foreign mark loses its mark, one that is wholly foreign becomes a question mark. */
export const written = (text: string): string => [...text].map((letter) => {
  if (isWritten(letter)) return letter;
  if (/\s/.test(letter)) return ' ';
  const bare = letter.normalize('NFD').replaceAll(/\p{M}/gu, '');
  return [...bare].every(isWritten) && bare !== '' ? bare : '?';
}).join('');

/** Hands a paper to the person as a PDF; what writes it is fetched when it is first asked for. */
export async function savePaper(name: string, paper: Paper): Promise<void> {
  const { pdfOf } = await import('./paper-pdf.js');
  pdfOf(paper).save(name);
}
