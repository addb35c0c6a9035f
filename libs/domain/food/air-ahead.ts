import { type EpochS, later, requireRange } from '../quantity/index.js';
import type { AirTemps } from './cook.js';

/** A chamber's temperature at an instant. */
export interface AirSeen {
  readonly at: EpochS;
  readonly tempC: number;
  /** The zone's temperature beside the chamber's mean then; absent: as now. */
  readonly zoneShiftK?: number;
}

/** A stretch of time in one place, with what was seen of the chamber there, also before and after it. */
export interface Stay {
  readonly from: EpochS;
  /** Absent: it lies there still. */
  readonly until?: EpochS;
  readonly seen: readonly AirSeen[];
}

/**
 * What a cook that was moved had round it: of each place what was seen while it lay there, from the moment on at which it came. What
 * was last seen before holds for that moment; between two places the one before holds. Source: none needed.
 *
 * @param stays  in order of time
 */
export const seenAlong = (stays: readonly Stay[]): readonly AirSeen[] =>
  stays.flatMap(({ from, until, seen }, nth) => {
    const end = until ?? stays[nth + 1]?.from ?? Infinity;
    const inTime = [...seen].sort((a, b) => a.at - b.at);
    const before = inTime.filter(({ at }) => at <= from).at(-1);
    return [...(before ? [{ ...before, at: from }] : []), ...inTime.filter(({ at }) => at > from && at < end)];
  });

/** From where it stands the air comes to the middle of its band with this time constant, s. Source: our choice: a crew that holds its fires. */
const BACK_TO_BAND_S = 2400;
/** A held fire runs this far off the middle of its band, and what is measured may be off where the food lies, K. Source: our choice. */
const HELD_SD_K = 4;
const MEASURED_SD_K = 1.5;
const STEP_S = 300;
/** How far ahead the series reaches; the last value holds beyond, s. Source: our choice. */
const AHEAD_S = 4 * 3600;

/**
 * The air of a zone for a forecast: what it was, then back to the middle of the band as a crew holds it, shifted to the zone. What has
 * been does not change with what comes, so that a forecast can go on from an earlier one.
 *
 * Source: our choice. @param ask.zoneShiftK  zone's temperature beside the chamber's mean now
 */
export function airFor(ask: { readonly seen: readonly AirSeen[]; readonly onAt: EpochS; readonly now: EpochS; readonly bandMiddleC: number; readonly zoneShiftK: number }): AirTemps {
  requireRange('band (°C)', ask.bandMiddleC, 40, 200);
  const from = Math.min(ask.onAt, ask.now) as EpochS;
  const seen = [...ask.seen].sort((a, b) => a.at - b.at);
  const measured = Math.ceil((ask.now - from) / STEP_S);
  const points = measured + Math.ceil(AHEAD_S / STEP_S);
  const tempC = new Float64Array(points);
  const sdK = new Float64Array(points);
  let nth = 0;
  for (let i = 0; i < points; i++) {
    const at = later(from, i * STEP_S);
    while (nth + 1 < seen.length && seen[nth + 1]!.at <= at) nth++;
    const last = seen[nth];
    const held = at <= ask.now && last !== undefined;
    const start = seen.at(-1)?.tempC ?? ask.bandMiddleC;
    tempC[i] = held ? last.tempC + (last.zoneShiftK ?? ask.zoneShiftK) : ask.bandMiddleC + (start - ask.bandMiddleC) * Math.exp(-Math.max(0, at - ask.now) / BACK_TO_BAND_S) + ask.zoneShiftK;
    sdK[i] = held ? MEASURED_SD_K : HELD_SD_K;
  }
  return { from, stepS: STEP_S, tempC, sdK };
}
