import type { YardClock } from '@stokehold/domain/contract';

/** The last sign of life from the server, and what it said of the yard's clock; ms of `performance.now()`. */
export interface Heard {
  readonly openedMs: number;
  readonly atMs: number | undefined;
  readonly clock: YardClock | undefined;
  readonly clockAtMs: number;
}

let heard: Heard = { openedMs: performance.now(), atMs: undefined, clock: undefined, clockAtMs: 0 };
const listeners = new Set<() => void>();

export const lastHeard = (): Heard => heard;

export function hear(clock: YardClock): void {
  const atMs = performance.now();
  heard = { ...heard, atMs, clock, clockAtMs: atMs };
  for (const listener of listeners) listener();
}

/** After signing in or out: nothing was heard yet on the new footing. */
export function forgetHeard(): void {
  heard = { openedMs: performance.now(), atMs: undefined, clock: undefined, clockAtMs: 0 };
}

export function whenHeard(listener: () => void): () => void {
  listeners.add(listener);
  return () => void listeners.delete(listener);
}

/** The yard's clock, ms since 1970: the server's word, carried on at the yard's speed; the device's own clock before that. */
export function yardNowMs(at: number = performance.now()): number {
  const { clock, clockAtMs } = heard;
  return clock ? Date.parse(clock.now) + (at - clockAtMs) * clock.speed : Date.now();
}
