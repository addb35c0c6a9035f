/** What a spreadsheet may take for a formula, at the beginning or after blanks; the wide forms too. Source: OWASP, CSV Injection, from memory. */
const FORMULA = /^\s*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/;
const NUMBER = /^-?\d+(\.\d+)?$/;

/** One cell as RFC 4180 wants it; a text that a spreadsheet would take for a formula is kept as text, a number that was written out stays one. */
export function csvCell(value: string | number): string {
  const text = typeof value === 'string' && FORMULA.test(value) && !NUMBER.test(value) ? `'${value}` : String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Rows as text/csv, RFC 4180: comma, CRLF, a header first. */
export const csvOf = (rows: readonly (readonly (string | number)[])[]): string => rows.map((row) => row.map(csvCell).join(',')).join('\r\n').concat('\r\n');

/** Hands a text to the person as a file; the mark at its front tells spreadsheets that it is UTF-8. */
export function saveFile(name: string, csv: string): void {
  const address = URL.createObjectURL(new Blob(['\ufeff', csv], { type: 'text/csv;charset=utf-8' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
