import { HOUR_S, requireRange } from '../quantity/index.js';

/** A mid-size pit burns one split of 1.72 kg dry per 45 min at about 255 °F. Source: common practice, no source. */
const USUAL_DRY_KG_PER_S = 1.72 / 2700;
/** Chamber wall of that pit, 30 in by 90 in, m2: pi d (l + d / 2). Source: geometry. */
const MID_SIZE_WALL_M2 = Math.PI * 0.762 * (2.28 + 0.381);

/**
 * What a pit of this size usually burns, as long as nothing is known of its fire tonight: with the wall that loses the heat.
 *
 * @param chamber.lengthM    inside length, 0.4 to 15 m
 * @param chamber.diameterM  inside diameter, 0.2 to 3 m
 * @returns dry wood, kg/s
 */
export function usualDryKgPerS(chamber: { readonly lengthM: number; readonly diameterM: number }): number {
  requireRange('chamber length (m)', chamber.lengthM, 0.4, 15);
  requireRange('chamber diameter (m)', chamber.diameterM, 0.2, 3);
  return (USUAL_DRY_KG_PER_S * Math.PI * chamber.diameterM * (chamber.lengthM + chamber.diameterM / 2)) / MID_SIZE_WALL_M2;
}

/** What is known of how fast a fire takes wood. */
export interface Pace {
  /** As pits of its size do, kg/s dry. */
  readonly usualDryKgPerS: number;
  /** As the last hour had it, kg/s; undefined while it is kindled or nothing is believed of it. */
  readonly recentDryKgPerS?: number;
  /** Dry wood that it took tonight since it was in fire, and the time since, kg and s. */
  readonly burnedDryKg: number;
  readonly burnedS: number;
}

/** From lighting until a fire burns as it will: what is put on before builds the bed. Source: common practice, no source. */
export const KINDLED_AFTER_S = 1.5 * HOUR_S;
/** What the usual pace weighs beside the night's own, in hours of it. Source: our choice, held to pace.test.ts. */
const USUAL_WEIGHS_S = 3 * HOUR_S;
/** A wind that rose an hour ago is half gone after so long. Source: our choice, held to pace.test.ts. */
const RECENT_FADES_S = 2 * HOUR_S;

/**
 * Dry wood that a fire is expected to take in a stretch of the hours to come: soon as in the last hour, later as in the whole night,
 * and that as usual until the night has shown otherwise.
 *
 *     mean = (usual w + burned) / (w + time)        taken = mean (b - a) + (recent - mean) f (e^(-a/f) - e^(-b/f))
 *
 * @param pace   rates 0 to 1 kg/s; burned 0 or more
 * @param fromS  a, from now on, 0 to 7 days
 * @param untilS b, a or later
 * @returns kg. Held to libs/domain/wood/pace.test.ts
 */
export function expectedDryKg(pace: Pace, fromS: number, untilS: number): number {
  requireRange('usual pace (kg/s)', pace.usualDryKgPerS, 0, 1);
  requireRange('pace of the last hour (kg/s)', pace.recentDryKgPerS ?? 0, 0, 1);
  requireRange('dry wood burned (kg)', pace.burnedDryKg, 0, 1e5);
  requireRange('time in fire (s)', pace.burnedS, 0, 30 * 86_400);
  requireRange('from (s)', fromS, 0, 7 * 86_400);
  requireRange('until (s)', untilS, fromS, 7 * 86_400);
  const mean = (pace.usualDryKgPerS * USUAL_WEIGHS_S + pace.burnedDryKg) / (USUAL_WEIGHS_S + pace.burnedS);
  const above = (pace.recentDryKgPerS ?? mean) - mean;
  return mean * (untilS - fromS) + above * RECENT_FADES_S * (Math.exp(-fromS / RECENT_FADES_S) - Math.exp(-untilS / RECENT_FADES_S));
}
