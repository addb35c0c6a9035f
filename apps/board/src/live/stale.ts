/** No beat for this long, and a board says that it has lost its server. Beats come each second. */
export const STALE_AFTER_MS = 4000;

export type Connection =
  /** The first answer is still on its way. */
  | { readonly kind: 'opening' }
  | { readonly kind: 'live' }
  /** The server is lost; what is shown is `ageS` seconds old, real seconds. */
  | { readonly kind: 'stale'; readonly ageS: number };

/** How the board stands with its server, from the last sign of life; both instants of the same steady clock, in ms. */
export function connectionAt(nowMs: number, lastHeardMs: number | undefined, openedMs: number): Connection {
  const silentMs = nowMs - (lastHeardMs ?? openedMs);
  if (silentMs < STALE_AFTER_MS) return { kind: lastHeardMs === undefined ? 'opening' : 'live' };
  return { kind: 'stale', ageS: Math.floor(silentMs / 1000) };
}
