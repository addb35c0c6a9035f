import type { WoodyardView } from '@stokehold/domain/contract';

export interface LoadBox {
  /** Of the night, 0 to 1. */
  readonly from: number;
  readonly width: number;
  readonly fromAt: string;
  readonly untilAt: string;
  /** Wood to haul and wood that lies there already. */
  readonly haul: readonly { readonly lotId: string; readonly pieces: number; readonly isTrimmed: boolean }[];
  readonly there: readonly { readonly lotId: string; readonly pieces: number }[];
  /** Offcuts that whoever lights or tends takes along. */
  readonly offcuts: readonly { readonly lotId: string; readonly pieces: number }[];
  /** Part of the need that is not covered. */
  readonly shortFrac: number;
  /** Part of the wood that is other than the kitchen wants. */
  readonly mixOffFrac: number;
}
export interface PullRow {
  readonly pitId: string;
  readonly loads: readonly LoadBox[];
}
export interface PullPicture {
  readonly rows: readonly PullRow[];
  readonly hours: readonly { readonly at: number; readonly frac: number }[];
  readonly nowFrac: number | undefined;
}
const HOUR_MS = 3_600_000;

/** Wood per pit and hour: a row per pit, a box per load, hours written every second one. */
export function pullPicture(pull: NonNullable<WoodyardView['pull']>, nowMs: number): PullPicture {
  const from = Math.min(...pull.loads.map((load) => Date.parse(load.from)));
  const until = Math.max(...pull.loads.map((load) => Date.parse(load.until)));
  const frac = (ms: number) => (ms - from) / Math.max(1, until - from);
  const pits = [...new Set(pull.loads.map(({ pitId }) => pitId as string))];
  const first = Math.ceil(from / (2 * HOUR_MS)) * 2 * HOUR_MS;
  return {
    rows: pits.map((pitId) => ({
      pitId,
      loads: pull.loads.filter((load) => load.pitId === pitId).map((load) => ({
        from: frac(Date.parse(load.from)), width: frac(Date.parse(load.until)) - frac(Date.parse(load.from)), fromAt: load.from, untilAt: load.until,
        haul: load.wood.filter(({ isOnCart, isOffcut }) => !isOnCart && !isOffcut), offcuts: load.wood.filter(({ isOffcut }) => isOffcut), there: load.wood.filter(({ isOnCart }) => isOnCart), mixOffFrac: load.heatJ > 0 ? Math.min(1, load.mixOffJ / load.heatJ) : 0, shortFrac: load.needJ > 0 ? Math.min(1, load.shortJ / load.needJ) : 0,
      })),
    })),
    hours: Array.from({ length: Math.max(0, Math.ceil((until - first) / (2 * HOUR_MS))) }, (_, i) => ({ at: first + i * 2 * HOUR_MS, frac: frac(first + i * 2 * HOUR_MS) })),
    nowFrac: nowMs >= from && nowMs <= until ? frac(nowMs) : undefined,
  };
}
