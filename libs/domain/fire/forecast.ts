import { type EpochS, requireRange } from '../quantity/index.js';
import { type Ahead, lookAhead, ZONE_STEP_MIN } from './ahead.js';
import { type FireBelief, MEMBERS } from './belief.js';
import { PROBED_S, STRETCH, widthOf } from './candour.js';
import { zonesOf } from './estimate.js';
import { THIRDS } from './layout.js';
import type { Band, Surroundings } from './pit.js';
import { quantile, sortFew } from './quantile.js';

/** Stretch of the fan about its mean where the temperatures come from looks alone: between them the members spread more than the truth does. Source: our fit. */
const STRETCH_BY_HAND = 0.92;
/** Wider when nothing was seen for an hour. Source: our fit. */
const STRETCH_BLIND = 1.3;
const BLIND_S = 3600;
/** A fan reaches no further, s. */
const LONGEST_HORIZON_S = 6 * 3600;

/** The coming hours if nobody touches the fire. */
export interface FireForecast {
  readonly from: EpochS;
  readonly stepS: number;
  /** Middle of both ends' gauges, °C, at `from` and every `stepS` after it. */
  readonly chamberTempC: { readonly p10: readonly number[]; readonly p50: readonly number[]; readonly p90: readonly number[] };
  /** Loose coals, p50, kg. */
  readonly bedKg: readonly number[];
  /** A fan for each zone of the pit, fire end first, at `from` and every ten minutes after it, °C. */
  readonly zones: { readonly stepS: number; readonly tempC: readonly { readonly p10: readonly number[]; readonly p50: readonly number[]; readonly p90: readonly number[] }[] };
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
  const probed = belief.lastTempAt !== undefined && belief.at - belief.lastTempAt <= PROBED_S;
  const stretch = widthOf(belief) * (blind ? STRETCH_BLIND : probed ? STRETCH : STRETCH_BY_HAND);
  const temps = new Float64Array(MEMBERS);
  const row = (of: Float64Array, minute: number) => {
    for (let m = 0; m < MEMBERS; m++) temps[m] = of[minute * MEMBERS + m]!;
    return sortFew(temps);
  };
  for (let minute = 0; minute <= minutes; minute++) {
    const drawn = minute % everyMin === 0;
    if (!drawn && leavesBandAfterS !== undefined) continue;
    row(ahead.tempC, minute);
    const middle = quantile(temps, 0.5);
    if (leavesBandAfterS === undefined && (middle < ask.band.lowC || middle > ask.band.highC)) leavesBandAfterS = minute * 60;
    if (!drawn) continue;
    let mean = 0;
    for (let m = 0; m < MEMBERS; m++) mean += temps[m]! / MEMBERS;
    fan.p10.push(mean + stretch * (quantile(temps, 0.1) - mean));
    fan.p50.push(middle);
    fan.p90.push(mean + stretch * (quantile(temps, 0.9) - mean));
    bedKg.push(quantile(row(ahead.bedKg, minute), 0.5));
  }
  return { from: belief.at, stepS: everyMin * 60, chamberTempC: fan, bedKg, zones: zoneFansOf(belief, ahead, minutes, stretch), ...(leavesBandAfterS === undefined ? {} : { leavesBandAfterS }) };
}

/** Fans of the zones, from those of the thirds at each quantile. */
function zoneFansOf(belief: FireBelief, { thirdC }: Ahead, minutes: number, stretch: number): FireForecast['zones'] {
  const steps = Math.floor(minutes / ZONE_STEP_MIN) + 1;
  const tempC = Array.from({ length: belief.shape.zones }, () => ({ p10: [] as number[], p50: [] as number[], p90: [] as number[] }));
  for (let step = 0; step < steps; step++) {
    const thirds = Array.from({ length: THIRDS }, (_, third) => {
      const from = (step * THIRDS + third) * MEMBERS;
      const sorted = sortFew(thirdC.slice(from, from + MEMBERS));
      const middle = quantile(sorted, 0.5);
      return { p10: middle + stretch * (quantile(sorted, 0.1) - middle), p50: middle, p90: middle + stretch * (quantile(sorted, 0.9) - middle) };
    });
    for (const line of ['p10', 'p50', 'p90'] as const) zonesOf(thirds.map((third) => third[line]), belief.shape.zones).forEach((zoneC, zone) => tempC[zone]?.[line].push(zoneC));
  }
  return { stepS: ZONE_STEP_MIN * 60, tempC };
}
