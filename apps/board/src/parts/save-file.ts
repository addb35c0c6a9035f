/** What a spreadsheet may take for a formula, at the beginning or after blanks; the wide forms too. Source: OWASP, CSV Injection, from memory. */
const FORMULA = /^\s*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/;
const NUMBER = /^-?\d+(\.\d+)?$/;

/** Marks that turn the reading of what stands beside them: written out, so that a line of a table reads as it is. */
const TURNS = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;
const turnsSaid = (text: string) => text.replaceAll(TURNS, (mark) => `<U+${mark.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}>`);

/** One cell as RFC 4180 wants it; a text that a spreadsheet would take for a formula is kept as text, a number that was written out stays one. */
export function csvCell(value: string | number): string {
  const said = turnsSaid(String(value));
  const text = typeof value === 'string' && FORMULA.test(said) && !NUMBER.test(said) ? `'${said}` : said;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Rows as text/csv, RFC 4180: comma, CRLF, a header first. */
export const csvOf = (rows: readonly (readonly (string | number)[])[]): string => rows.map((row) => row.map(csvCell).join(',')).join('\r\n').concat('\r\n');

/** Hands a table to the person as a file; the mark at its front tells spreadsheets that it is UTF-8. */
export const saveFile = (name: string, csv: string): void => handOver(name, new Blob(['\ufeff', csv], { type: 'text/csv;charset=utf-8' }));

/** Hands anything to the person as a file of JSON. */
export const saveJson = (name: string, value: object): void => handOver(name, new Blob([JSON.stringify(value, null, 2)], { type: 'application/json' }));

function handOver(name: string, file: Blob): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
