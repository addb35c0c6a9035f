import { expect, it } from 'vitest';
import { heldForMs } from './held-back.js';

it.each([
  // recorded at, now, held for: ten seconds (board-and-reliability 3, "undo for 10 s")
  { keptAtMs: 5000, nowMs: 5000, heldMs: 10_000, what: 'just recorded' },
  { keptAtMs: 5000, nowMs: 14_999, heldMs: 1, what: 'nearly over' },
  { keptAtMs: 5000, nowMs: 15_000, heldMs: 0, what: 'over' },
  { keptAtMs: 5000, nowMs: 4000, heldMs: 0, what: 'the clock was set back' },
  { keptAtMs: undefined as never, nowMs: 4000, heldMs: 0, what: 'kept by an older board, which noted no time' },
])('what was recorded is held back for ten seconds: $what', ({ keptAtMs, nowMs, heldMs }) => {
  expect(heldForMs(keptAtMs, nowMs)).toBe(heldMs);
});
