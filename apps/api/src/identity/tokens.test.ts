import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { bearerOf, tokensOf } from './cookies.js';
import { isOwnOrigin } from './origin.js';
import { Pins } from './pins.js';
import { SecretKey } from './secret-key.js';
import { codeAsMeant, codeFrom, newToken } from './tokens.js';

const folder = mkdtempSync(join(tmpdir(), 'stokehold-key-'));
afterAll(() => rmSync(folder, { recursive: true }));

it('a token holds 256 bits', () => {
  expect(Buffer.from(newToken(), 'base64url')).toHaveLength(32);
});

it('a code has eight letters of an alphabet of 32, so 40 bits, and none that looks like another', () => {
  const codes = Array.from({ length: 256 }, (_, byte) => codeFrom(Buffer.alloc(8, byte)));
  expect(new Set(codes)).toHaveProperty('size', 32);
  for (const code of codes) expect(code).toMatch(/^[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4}$/);
});

it('a code is understood however it is typed', () => {
  expect(codeAsMeant(' k7o2 9mil ')).toBe('K7029M11');
  for (let byte = 0; byte < 256; byte++) {
    const code = codeFrom(Buffer.alloc(8, byte));
    expect(codeAsMeant(code.toLowerCase())).toBe(code.replace('-', ''));
  }
});

it('the key is made once, for its owner alone, and another process reads the same', () => {
  const key = new SecretKey(join(folder, 'deep', 'data'));
  expect(key.exists()).toBe(false);
  expect(key.bytes()).toHaveLength(32);
  expect(statSync(key.path).mode & 0o777).toBe(0o600);
  expect(new SecretKey(join(folder, 'deep', 'data')).bytes()).toEqual(key.bytes());
});

it('a PIN is kept as argon2id of 19 MiB, two passes, one lane (OWASP password storage), and opens only with its key', async () => {
  const pins = new Pins(new SecretKey(join(folder, 'one')));
  const hash = await pins.hash('402918');
  expect(hash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
  expect(await pins.isRight(hash, '402918')).toBe(true);
  expect(await pins.isRight(hash, '402919')).toBe(false);
  expect(await new Pins(new SecretKey(join(folder, 'two'))).isRight(hash, '402918')).toBe(false);
});

it('tokens come as cookies or as a bearer, and a bearer signs nobody in', () => {
  expect(tokensOf('stokehold_device=d; stokehold_session=s', undefined)).toEqual({ device: 'd', session: 's' });
  expect(tokensOf('stokehold_session=s', bearerOf('Bearer d'))).toEqual({ device: 'd' });
  expect(bearerOf('Basic eA==')).toBeUndefined();
});

it.each([
  { origin: undefined, host: 'pit.local:4310', own: true },
  { origin: 'http://pit.local:4310', host: 'pit.local:4310', own: true },
  { origin: 'https://pit.local', host: 'pit.local', own: true },
  { origin: 'https://pit.local', host: 'pit.local:443', own: true },
  { origin: 'http://pit.local:4311', host: 'pit.local:4310', own: false },
  { origin: 'https://pit.local.example', host: 'pit.local', own: false },
  { origin: 'null', host: 'pit.local', own: false },
  { origin: 'http://pit.local', host: undefined, own: false },
])('a page at $origin is this host $host: $own', ({ origin, host, own }) => {
  expect(isOwnOrigin(origin, host)).toBe(own);
});
