import { Injectable } from '@nestjs/common';
import { timingSafeEqual } from 'node:crypto';
import { IdentityStore } from './identity.store.js';
import { newToken, tokenHash } from './tokens.js';

/** Opens the first run, once: made at the start of a house without a manager, shown in the server's window, kept as a hash in memory. */
@Injectable()
export class FirstRunToken {
  private hash: Buffer | undefined;

  constructor(private readonly store: IdentityStore) {}

  /** A new token in place of the old one; undefined when a manager exists already. */
  async issue(): Promise<string | undefined> {
    if (await this.store.hasManager()) return undefined;
    const token = newToken();
    this.hash = tokenHash(token);
    return token;
  }

  isRight(token: string): boolean {
    return this.hash !== undefined && timingSafeEqual(this.hash, tokenHash(token));
  }

  spend(): void {
    this.hash = undefined;
  }
}
