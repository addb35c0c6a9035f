import { createHmac, randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeWholeFile } from '../platform/index.js';

const LENGTH_BYTES = 32;

/**
 * A key that lies in a file beside the database and never in it: six digits are too few for a hash alone, so a copy of
 * the database without this file must not be enough to try PINs or codes. Several processes share one file.
 */
export class SecretKey {
  private kept?: Buffer;

  constructor(private readonly folder: string) {}

  get path(): string {
    return join(this.folder, 'secret.key');
  }

  exists(): boolean {
    return existsSync(this.path);
  }

  /** The key; made at first use. */
  bytes(): Buffer {
    this.kept ??= this.read() ?? this.make();
    return this.kept;
  }

  /** What only a holder of the key can compute of `text`, for one purpose. */
  mac(purpose: 'device-code' | 'device-code-hash' | 'pin-in-command', text: string): Buffer {
    return createHmac('sha256', this.bytes()).update(`${purpose}\n${text}`).digest();
  }

  private read(): Buffer | undefined {
    if (!this.exists()) return undefined;
    const bytes = readFileSync(this.path);
    if (bytes.length !== LENGTH_BYTES) throw new Error(`${this.path} is not whole. Put it back from the last backup.`);
    return bytes;
  }

  private make(): Buffer {
    mkdirSync(this.folder, { recursive: true });
    makeWholeFile(this.path, randomBytes(LENGTH_BYTES));
    return readFileSync(this.path);
  }
}
