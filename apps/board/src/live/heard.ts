import type { YardClock } from '@stokehold/domain/contract';

/** The last sign of life from the server, and what it said of the yard's clock; ms of `performance.now()`. */
export interface Heard {
  readonly openedMs: number;
  /** In this page's life; undefined when the server has not been heard since it was opened. */
  readonly atMs: number | undefined;
  /** Before this page was opened, where the device remembers it: negative. */
  readonly beforeMs: number | undefined;
  readonly clock: YardClock | undefined;
  readonly clockAtMs: number;
}

const nothingHeard = (): Heard => ({ openedMs: performance.now(), atMs: undefined, beforeMs: undefined, clock: undefined, clockAtMs: 0 });

let heard = nothingHeard();

export const lastHeard = (): Heard => heard;

export function hear(clock: YardClock): void {
  const atMs = performance.now();
  heard = { ...heard, atMs, clock, clockAtMs: atMs };
}

/** What was heard before this page was opened, as the device remembers it; the server itself has the later word. */
export function hearAgain(clock: YardClock, beforeMs: number): void {
  if (heard.atMs === undefined) heard = { ...heard, beforeMs, clock, clockAtMs: beforeMs };
}

/** After signing in or out: nothing was heard yet on the new footing. */
export function forgetHeard(): void {
  heard = nothingHeard();
}

/** The yard's clock, ms since 1970: the server's word, carried on at the yard's speed; the device's own clock before that. */
export function yardNowMs(at: number = performance.now()): number {
  const { clock, clockAtMs } = heard;
  return clock ? Date.parse(clock.now) + (at - clockAtMs) * clock.speed : Date.now();
}
