import { Injectable } from '@nestjs/common';
import { type Route, routes } from '@stokehold/domain/contract';
import { RefusalError } from '../platform/index.js';
import { tokenHash } from './tokens.js';

/** So many seconds' worth may come at once: a screen that opens, a phone that sends what it kept. */
const BURST_S = 2;
/** A gateway sends a batch for each probe or for many, as it is built: it has a measure of its own, so many times as large. */
const READINGS_TIMES = 3;
const SWEEP_MS = 10_000;

interface Bucket {
  left: number;
  atMs: number;
}

/** How many requests a device may send: a measure that fills up steadily, so that one that runs wild does not take the house from the others. */
@Injectable()
export class DeviceRates {
  /** Requests a second; undefined while the house has set none. */
  perS: number | undefined;
  private readonly buckets = new Map<string, Bucket>();
  private sweptMs = 0;

  /** Counts a request of whoever holds this token; throws `device-too-fast` with the seconds to wait. It asks no database: that is what it spares. */
  take(token: string | undefined, route: Route | undefined, nowMs = performance.now()): void {
    if (this.perS === undefined || token === undefined) return;
    const isBatch = route === routes.recordReadings;
    const perS = isBatch ? this.perS * READINGS_TIMES : this.perS;
    this.sweep(nowMs);
    const key = `${isBatch ? 'readings' : 'all'} ${tokenHash(token).toString('base64')}`;
    const left = leftNow(this.buckets.get(key), perS, nowMs);
    this.buckets.set(key, { left: left >= 1 ? left - 1 : left, atMs: nowMs });
    if (left >= 1) return;
    const seconds = Math.max(1, Math.ceil((1 - left) / perS));
    throw new RefusalError(
      { code: 'device-too-fast', detail: `This device sends more than ${perS} requests a second. Nothing of this one was done: send it again in ${seconds} s, under the same key.`, values: { seconds } },
      { retryAfterS: seconds },
    );
  }

  /** Forgets those that were quiet long enough to have all of their measure again. */
  private sweep(nowMs: number): void {
    if (nowMs - this.sweptMs < SWEEP_MS) return;
    this.sweptMs = nowMs;
    for (const [key, { atMs }] of this.buckets) if (nowMs - atMs >= BURST_S * 1000) this.buckets.delete(key);
  }
}

const leftNow = (bucket: Bucket | undefined, perS: number, nowMs: number): number =>
  bucket ? Math.min(perS * BURST_S, bucket.left + ((nowMs - bucket.atMs) / 1000) * perS) : perS * BURST_S;
