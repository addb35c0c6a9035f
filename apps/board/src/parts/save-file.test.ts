import { expect, it } from 'vitest';
import { csvOf } from './save-file.js';

it('commas, quotes and line ends are kept inside quotes, rows end with CRLF (RFC 4180)', () => {
  expect(csvOf([['lot', 'cents'], ['West, oak', 12], ['the "old" one', -3]])).toBe('lot,cents\r\n"West, oak",12\r\n"the ""old"" one",-3\r\n');
});
it.each(['=1+1', '@x', '+1+1', '-2+3', '\t=1', ' =1', '\n=1', '\uff1d1', '=cmd|calc', '-', '+5'])('a name that looks like a formula stays a name: %j', (name) => {
  expect(csvOf([[name]]).replace(/^"/, '').startsWith("'")).toBe(true);
});
it('a number below nothing stays a number, written out or not', () => {
  expect(csvOf([['-12.50', -3, '-7']])).toBe('-12.50,-3,-7\r\n');
});
