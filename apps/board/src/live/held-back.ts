/** So long what was recorded stays on the device first, to be taken back with one touch. */
export const UNDO_MS = 10_000;

/** How much longer something is held back, ms of the device's clock. A clock that was set back meanwhile holds nothing longer. */
export function heldForMs(keptAtMs: number, nowMs: number): number {
  const leftMs = keptAtMs + UNDO_MS - nowMs;
  return leftMs > 0 && leftMs <= UNDO_MS ? leftMs : 0;
}
