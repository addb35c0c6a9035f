import { createHash, randomBytes } from 'node:crypto';

/** Crockford's base 32: no I, L, O or U, and what is read as O, I or L is meant as 0 or 1. */
const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
/** 8 characters of 5 bits: 40 bits, for ten minutes and one use. */
const CODE_LENGTH = 8;

/** 256 bits of chance for a device, a session or the first run. */
export const newToken = (): string => randomBytes(32).toString('base64url');

/** A token is too long to be guessed, so a plain hash of it is kept and nothing else. */
export const tokenHash = (token: string): Buffer => createHash('sha256').update(token).digest();

/** A code to be read aloud and typed, from at least 8 random bytes: 'K7Q2-9MXA'. */
export function codeFrom(bytes: Buffer): string {
  const letters = [...bytes.subarray(0, CODE_LENGTH)].map((byte) => ALPHABET[byte % 32]).join('');
  return `${letters.slice(0, 4)}-${letters.slice(4)}`;
}

/** The code as it was meant, however it was typed. */
export const codeAsMeant = (typed: string): string =>
  typed.toUpperCase().replaceAll(/[\s-]/g, '').replaceAll('O', '0').replaceAll(/[IL]/g, '1');
