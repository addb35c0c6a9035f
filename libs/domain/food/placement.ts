import { ok, refuse, type Result } from '../quantity/index.js';

export interface Lying<P> {
  readonly pitId: P;
  /** Counted from the fire end, 0 first. */
  readonly zone: number;
  readonly pieces: number;
}
export type PlacementRefusal =
  | { readonly code: 'pieces-more-than-cook'; readonly placed: number; readonly pieces: number }
  | { readonly code: 'zone-unknown'; readonly zone: number; readonly zones: number };

/**
 * A placement that can be: every zone exists on its pit and no piece lies twice. Two entries of one zone become one.
 *
 * @param zonesOf  how many zones a pit has; undefined for a pit that does not stand here (its zones are refused too)
 */
export function placementOf<P>(
  lies: readonly Lying<P>[], cook: { readonly pieces: number }, zonesOf: (pitId: P) => number | undefined,
): Result<readonly Lying<P>[], PlacementRefusal> {
  const placed = lies.reduce((sum, { pieces }) => sum + pieces, 0);
  if (placed > cook.pieces) return refuse({ code: 'pieces-more-than-cook', placed, pieces: cook.pieces });
  for (const { pitId, zone } of lies) {
    const zones = zonesOf(pitId) ?? 0;
    if (zone >= zones) return refuse({ code: 'zone-unknown', zone, zones });
  }
  const merged: Lying<P>[] = [];
  for (const one of lies) {
    const at = merged.findIndex(({ pitId, zone }) => pitId === one.pitId && zone === one.zone);
    const before = merged[at];
    if (before) merged[at] = { ...before, pieces: before.pieces + one.pieces };
    else merged.push(one);
  }
  return ok(merged);
}
