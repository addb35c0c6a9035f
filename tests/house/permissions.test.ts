import { DEVICE_MAY, MAY } from '@stokehold/domain/contract';
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

it('the page for engineers says of every role and device what the one table in code says', () => {
  const page = readFileSync(new URL('../../DEVELOPERS.md', import.meta.url), 'utf8');
  const [heads, , ...rows] = (/^\| may \|.*\n(?:\|.*\n)+/m.exec(page)?.[0] ?? '').trimEnd().split('\n').map((line) => line.split('|').slice(1, -1).map((cell) => cell.trim()));
  const who = { ...MAY, ...DEVICE_MAY };
  expect(heads).toEqual(['may', ...Object.keys(who), 'such as']);
  const said = Object.keys(who).map((name, nth) => [name, rows.filter((row) => row[nth + 1] === 'yes').map(([may]) => may)]);
  expect(Object.fromEntries(said)).toEqual(Object.fromEntries(Object.entries(who).map(([name, may]) => [name, [...may]])));
});
