import { type EpochS, requireRange } from '../quantity/index.js';
import { type Ahead, lookAhead } from './ahead.js';
import { type FireBelief, MEMBERS } from './belief.js';
import type { Band, Surroundings } from './pit.js';
import { quantile } from './quantile.js';

/** Stretch of the fan about its mean, so that 80 % of what comes lies within p10 and p90. Source: our fit, tests/bench/fire-skill.mjs. */
const STRETCH = 1.08;
/** Wider when nothing was seen for an hour. Source: our fit. */
const STRETCH_BLIND = 1.3;
const BLIND_S = 3600;
/** A fan reaches no further, s. */
export const LONGEST_HORIZON_S = 6 * 3600;

/** The coming hours if nobody touches the fire. */
export interface FireForecast {
  readonly from: EpochS;
  readonly stepS: number;
  /** Middle of both ends' gauges, °C, at `from` and every `stepS` after it. */
  readonly chamberTempC: { readonly p10: readonly number[]; readonly p50: readonly number[]; readonly p90: readonly number[] };
  /** Loose coals, p50, kg. */
  readonly bedKg: readonly number[];
  /** Seconds from `from` until the middle of the fan is outside the band; 0 when it is already; absent when it stays inside. */
  readonly leavesBandAfterS?: number;
}

/**
 * Rolls all members ahead without wood: a fan of the chamber's temperature.
 *
 * @param ask.horizonS  how far, 0 to 6 h; @param ask.stepS  spacing, whole minutes of 60 s
 * @throws OutOfRangeError for another horizon or step, or weather, air or load that cannot be
 */
export function forecast(
  belief: FireBelief,
  ask: Surroundings & { readonly horizonS: number; readonly stepS: number; readonly band: Band },
): FireForecast {
  requireRange('horizon (s)', ask.horizonS, 0, LONGEST_HORIZON_S);
  requireRange('step (s)', ask.stepS, 60, LONGEST_HORIZON_S);
  return fanOf(belief, ask, lookAhead(belief, ask, Math.floor(ask.horizonS / 60)));
}

/** The fan of a look ahead that reaches at least to the horizon. */
export function fanOf(belief: FireBelief, ask: { readonly horizonS: number; readonly stepS: number; readonly band: Band }, ahead: Ahead): FireForecast {
  const everyMin = Math.round(ask.stepS / 60);
  const minutes = Math.floor(ask.horizonS / 60);
  const blind = belief.lastSeenAt === undefined || belief.at - belief.lastSeenAt >= BLIND_S;
  const fan = { p10: [] as number[], p50: [] as number[], p90: [] as number[] };
  const bedKg: number[] = [];
  let leavesBandAfterS: number | undefined;
  for (let minute = 0; minute <= minutes; minute++) {
    const temps = ahead.tempC.slice(minute * MEMBERS, (minute + 1) * MEMBERS);
    const mean = temps.reduce((sum, tempC) => sum + tempC / MEMBERS, 0);
    temps.sort();
    const middle = quantile(temps, 0.5);
    if (leavesBandAfterS === undefined && (middle < ask.band.lowC || middle > ask.band.highC)) leavesBandAfterS = minute * 60;
    if (minute % everyMin !== 0) continue;
    const stretched = (frac: number) => mean + (blind ? STRETCH_BLIND : STRETCH) * (quantile(temps, frac) - mean);
    fan.p10.push(stretched(0.1));
    fan.p50.push(middle);
    fan.p90.push(stretched(0.9));
    bedKg.push(quantile(ahead.bedKg.slice(minute * MEMBERS, (minute + 1) * MEMBERS).sort(), 0.5));
  }
  return { from: belief.at, stepS: everyMin * 60, chamberTempC: fan, bedKg, ...(leavesBandAfterS === undefined ? {} : { leavesBandAfterS }) };
}
