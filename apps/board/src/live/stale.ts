/** No beat for this long, and a board says that it has lost its server. Beats come each second. */
export const STALE_AFTER_MS = 4000;

export type Connection =
  /** The first answer is still on its way. */
  | { readonly kind: 'opening' }
  | { readonly kind: 'live' }
  /** The server is lost; what is shown is `ageS` seconds old, real seconds. */
  | { readonly kind: 'stale'; readonly ageS: number };

interface Signs {
  readonly openedMs: number;
  /** When the server was last heard in this page's life, and before it. */
  readonly atMs: number | undefined;
  readonly beforeMs: number | undefined;
  /** The device itself says that it has no network. */
  readonly isOffline: boolean;
}

/** How the board stands with its server, from its signs of life; all instants of the same steady clock, in ms. */
export function connectionAt(nowMs: number, { openedMs, atMs, beforeMs, isOffline }: Signs): Connection {
  // A device without network that remembers something need not wait to know that it hears nobody.
  const hopeless = isOffline && atMs === undefined && beforeMs !== undefined;
  if (!hopeless && nowMs - (atMs ?? openedMs) < STALE_AFTER_MS) return { kind: atMs === undefined ? 'opening' : 'live' };
  return { kind: 'stale', ageS: Math.floor((nowMs - (atMs ?? beforeMs ?? openedMs)) / 1000) };
}
