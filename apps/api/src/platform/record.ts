import type { DeedName } from '@stokehold/domain/contract';
import { canonicalJson } from '@stokehold/domain/record';
import { createHash } from 'node:crypto';

/** What was done, by whom, when and with which device, as it is kept for good. */
export interface Entry {
  /** ISO 8601 in UTC: the yard's time when the house took it in. */
  readonly at: string;
  readonly personId: string | null;
  readonly deviceId: string | null;
  readonly command: DeedName;
  readonly key: string;
  /** As it was sent, but for secrets. */
  readonly body: object;
}

/** Where the chain of a yard begins: 32 bytes of zero. */
export const BEGINNING = Buffer.alloc(32);

const sha256 = (...parts: (Buffer | string)[]): Buffer => parts.reduce((hash, part) => hash.update(part), createHash('sha256')).digest();

/** What stands for an entry of a yard: SHA-256 (FIPS 180-4) of its canonical JSON (RFC 8785), 32 bytes. */
export const digestOf = (yardId: string, { at, personId, deviceId, command, key, body }: Entry): Buffer =>
  sha256(canonicalJson({ yardId, at, personId, deviceId, command, key, body }));

/** The link of the entries that were kept together: SHA-256 of the link before it, their digests, and those of the facts written with them, 32 bytes. The database reckons the same. */
export const linkOf = (before: Buffer, digests: readonly Buffer[]): Buffer => sha256(before, ...digests);
