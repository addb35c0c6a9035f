import type { EpochS } from '../quantity/index.js';

/** The wind as somebody saw it. */
export interface WindTold {
  readonly seenAt: EpochS;
  readonly windMPerS: number;
  readonly gustMPerS: number;
  /** Compass heading that it comes from. */
  readonly fromDeg: number;
}

/** A burst blows over: so long after it was told a third of it is still believed, s. Source: our fit, on simulated nights. */
const BLOWS_OVER_S = 1800;
const RAD_PER_DEG = Math.PI / 180;

const eastOf = ({ windMPerS, fromDeg }: WindTold) => windMPerS * Math.sin(fromDeg * RAD_PER_DEG);
const northOf = ({ windMPerS, fromDeg }: WindTold) => windMPerS * Math.cos(fromDeg * RAD_PER_DEG);

/**
 * The wind to reckon with: as it was seen last, drawn back as that ages to the mean of what was seen on this night, as vectors.
 *
 *     w = mean + (w_last - mean) e^(-age / 30 min)                                                      Source: our rule
 *
 * @param told  the night's, oldest first; one alone is believed as it is
 * @returns undefined where nobody told anything
 */
export function believedWind(told: readonly WindTold[], now: EpochS): Omit<WindTold, 'seenAt'> | undefined {
  const last = told[told.length - 1];
  if (last === undefined) return undefined;
  const keeps = Math.exp(-Math.max(0, now - last.seenAt) / BLOWS_OVER_S);
  const drawn = (of: (one: WindTold) => number) => {
    const mean = told.reduce((sum, one) => sum + of(one), 0) / told.length;
    return mean + keeps * (of(last) - mean);
  };
  const [east, north] = [drawn(eastOf), drawn(northOf)];
  const windMPerS = Math.hypot(east, north);
  const fromDeg = windMPerS > 0 ? (Math.atan2(east, north) / RAD_PER_DEG + 360) % 360 : last.fromDeg;
  return { windMPerS, gustMPerS: Math.max(windMPerS, drawn(({ gustMPerS }) => gustMPerS)), fromDeg };
}
