import { Injectable } from '@nestjs/common';
import { type EpochS, later, MINUTE_S } from '@stokehold/domain/quantity';
import { ipKeyGenerator } from 'express-rate-limit';
import { Clock, RefusalError } from '../platform/index.js';

const PER_MINUTE = 10;

/** Keeps strangers from guessing codes and PINs: so many tries a minute from one address, for each of the ways in. */
@Injectable()
export class RateLimit {
  private readonly tries = new Map<string, EpochS[]>();
  private sweptAt = 0;

  constructor(private readonly clock: Clock) {}

  /** @param way  the way in; each has a count of its own. Throws `too-many-requests` with the seconds to wait. */
  take(way: string, address: string | undefined): void {
    const now = this.clock.real();
    const since = later(now, -MINUTE_S);
    this.sweep(now, since);
    const key = `${way} ${ipKeyGenerator(address ?? '0.0.0.0', 64)}`;
    const recent = (this.tries.get(key) ?? []).filter((at) => at > since);
    if (recent.length >= PER_MINUTE) {
      const seconds = Math.max(1, (recent[0] ?? now) - since);
      throw new RefusalError(
        { code: 'too-many-requests', detail: `Too many tries from this address. Try again in ${seconds} seconds.`, values: { seconds } },
        { retryAfterS: seconds },
      );
    }
    this.tries.set(key, [...recent, now]);
  }

  /** Forgets the addresses that were quiet, so that many of them do not fill the memory. */
  private sweep(now: EpochS, since: EpochS): void {
    if (now - this.sweptAt < MINUTE_S) return;
    this.sweptAt = now;
    for (const [key, at] of this.tries) if ((at.at(-1) ?? 0) <= since) this.tries.delete(key);
  }
}
