/** A wall shows much the same all night: it walks around a small square, one step each three minutes, so that no edge burns in. */
const STEP_MS = 180_000;
const REACH_PX = 4;
const WALK = [[0, 0], [1, 0], [2, 0], [2, 1], [2, 2], [1, 2], [0, 2], [0, 1]] as const;

/** How far the whole picture stands from its place, px; never further than its own margins are wide. */
export function burnInShift(nowMs: number): { readonly xPx: number; readonly yPx: number } {
  const [x, y] = WALK[Math.floor(nowMs / STEP_MS) % WALK.length]!;
  return { xPx: (x - 1) * REACH_PX, yPx: (y - 1) * REACH_PX };
}
