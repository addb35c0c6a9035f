import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { FAULTS } from '../faults/faults.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
const read = (file: string) => readFileSync(root + file, 'utf8');
const tests = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], { cwd: root, encoding: 'utf8' }).split('\n').filter((file) => /\.test\.tsx?$/.test(file));

/** Titles of the tests of a file: the first text after `it(`, or after the table of `it.each`. */
const titlesOf = (file: string) => [...read(file).matchAll(/(?:\bit|^\s*[\])}]+\s*(?:as const)?\)?|\)|\])\(\s*(['"`])((?:\\.|(?!\1).)+)\1/gm)].map(([, , title]) => title!.replaceAll("\\'", "'"));
const isThere = (name: string, title: string) => tests.filter((file) => file === name || basename(file) === name).some((file) => titlesOf(file).some((one) => one.includes(title)));

interface Row {
  readonly item: string;
  readonly asks: string;
  readonly named: readonly { readonly file: string; readonly title: string }[];
  readonly text: string;
}
/** Rows of the table under the heads `item` or `rule`. */
function rowsOf(page: string, head: string): Row[] {
  const table = new RegExp(`^\\| ${head} \\|.*\\n(?:\\|.*\\n)+`, 'm').exec(read(page))?.[0] ?? '';
  return table.trimEnd().split('\n').slice(2).map((text) => {
    const cells = text.split('|').map((cell) => cell.trim());
    return { item: cells[1]!, asks: cells[2]!, text, named: [...text.matchAll(/`([\w.-]+\.test\.tsx?)` "([^"]+)"/g)].map(([, file, title]) => ({ file: file!, title: title! })) };
  });
}
const missing = ({ named }: Row) => named.filter(({ file, title }) => !isThere(file, title));

/** Numbers of the items of OWASP ASVS 5.0 that apply, as the page has them in its ranges. */
const ASVS = ['2.2.1-2.2.3', '2.3.3', '2.3.4', '2.4.1', '3.3.1-3.3.4', '3.4.1', '3.4.3-3.4.6', '3.5.1-3.5.3', '4.1.3', '4.4.1-4.4.4', '6.1.1, 6.3.1', '6.2.1, 6.2.4', '6.3.2', '6.4.1', '6.5.2, 6.5.4', '7.2.3, 7.2.4', '7.3.1, 7.3.2', '7.4.2, 7.4.5, 7.5.2', '16.2.1, 16.2.2', '16.3.1-16.3.4', '16.4.1-16.4.3', '16.5.1-16.5.3'];

describe('what a page says is shown by a test', () => {
  it('every item of ASVS that applies names a test that is there', () => {
    const rows = rowsOf('infra/security.md', 'item');
    expect(rows.map(({ item }) => item)).toEqual(ASVS);
    expect(rows.filter(({ named }) => named.length === 0).map(({ item }) => item)).toEqual([]);
    expect(rows.flatMap(missing)).toEqual([]);
  });

  it('every element of a record names a test that is there', () => {
    const rows = rowsOf('infra/records.md', 'rule');
    expect(rows.length).toBeGreaterThan(10);
    expect(rows.filter(({ named }) => named.length === 0).map(({ item }) => item)).toEqual([]);
    expect(rows.flatMap(missing)).toEqual([]);
  });

  it('every fault names a test that is there, or says what is not shown', () => {
    expect(FAULTS.map(({ code }) => code)).toEqual(Array.from({ length: 24 }, (_, nth) => `R${nth + 1}`));
    expect(FAULTS.filter(({ shownBy, open }) => shownBy.length === 0 && !open)).toEqual([]);
    expect(FAULTS.flatMap(({ shownBy }) => shownBy.filter(([file, title]) => !isThere(file, title)))).toEqual([]);
  });

  it('a title that no test bears is found to be missing', () => {
    expect(isThere('shown-by.test.ts', 'a title that no test bears')).toBe(true);
    expect(isThere('shown-by.test.ts', 'a title that was never given')).toBe(false);
    expect(isThere('never.test.ts', 'a title')).toBe(false);
  });
});
