import { epochS, HOUR_S, later, MINUTE_S, type EpochS } from '@stokehold/domain/quantity';
import type { PitSettings } from '@stokehold/domain/contract';

// What a night usually looks like. Suggestions only: whoever plans decides, and local rules on breaks go first.

/** From lighting until the coal bed is fit for the first split. Common practice, no source. */
export const BED_FIT_S = 45 * MINUTE_S;
/** Heavier steel takes longer to come up: half an hour for each 6.35 mm (a quarter of an inch). Common practice, no source. */
const HEAT_S_PER_M = (30 * MINUTE_S) / 0.00635;
const SHORTEST_HEAT_S = 20 * MINUTE_S;
const LONGEST_HEAT_S = 90 * MINUTE_S;
/** One person lays and lights one fire after the other. Common practice, no source. */
const BETWEEN_LIGHTINGS_S = 10 * MINUTE_S;

export interface LightUp {
  readonly lightAt: EpochS;
  readonly bedFitAt: EpochS;
  readonly hotAt: EpochS;
}

/** What lighting a pit at `lightAt` leads to: a bed fit for the first split, later a hot chamber. Estimates. */
export function lightUp(pit: Pick<PitSettings, 'steelThicknessM'>, lightAt: EpochS): LightUp {
  const heatS = Math.min(LONGEST_HEAT_S, Math.max(SHORTEST_HEAT_S, pit.steelThicknessM * HEAT_S_PER_M));
  const bedFitAt = later(lightAt, BED_FIT_S);
  return { lightAt, bedFitAt, hotAt: later(bedFitAt, heatS) };
}

/**
 * Light-up times so that every chamber is hot when the food goes on, one fire laid after the other, the slowest first.
 * To five minutes, never later than needed.
 */
export function suggestLightUps<P extends Pick<PitSettings, 'id' | 'steelThicknessM'>>(pits: readonly P[], foodOnAt: EpochS): ReadonlyMap<P['id'], EpochS> {
  const slowestFirst = [...pits].sort((a, b) => b.steelThicknessM - a.steelThicknessM);
  const step = 5 * MINUTE_S;
  let free = Infinity;
  const times = new Map<P['id'], EpochS>();
  for (const pit of slowestFirst.reverse()) {
    const needS = lightUp(pit, foodOnAt).hotAt - foodOnAt;
    const lightAt = Math.floor(Math.min(foodOnAt - needS, free - BETWEEN_LIGHTINGS_S) / step) * step;
    times.set(pit.id, epochS(lightAt));
    free = lightAt;
  }
  return times;
}

export interface SuggestedBreak {
  readonly lengthS: number;
  readonly earliestAt: EpochS;
  readonly latestAt: EpochS;
}
const LONG_BREAK_FROM_S = 5 * HOUR_S;
const LONG = { lengthS: 30 * MINUTE_S, aroundS: 45 * MINUTE_S };
const SHORT = { lengthS: 10 * MINUTE_S, aroundS: 30 * MINUTE_S };

/** Half an hour in the middle of a shift of five hours and more, and ten minutes for each four hours. Common practice, no source. */
export function suggestBreaks(startsAt: EpochS, endsAt: EpochS): readonly SuggestedBreak[] {
  const workS = endsAt - startsAt;
  const shorts = Math.floor(workS / (4 * HOUR_S));
  const hasLong = workS >= LONG_BREAK_FROM_S;
  const places = hasLong ? aroundTheMiddle(shorts) : evenly(shorts);
  const short = places.map((frac) => windowAround(later(startsAt, frac * workS), SHORT));
  const long = hasLong ? [windowAround(later(startsAt, workS / 2), LONG)] : [];
  return [...short, ...long].sort((a, b) => a.earliestAt - b.earliestAt);
}

const evenly = (count: number) => Array.from({ length: count }, (_, i) => (i + 1) / (count + 1));
const aroundTheMiddle = (count: number) => {
  const before = Math.ceil(count / 2);
  const half = (places: readonly number[], offset: number) => places.map((frac) => offset + frac / 2);
  return [...half(evenly(before), 0), ...half(evenly(count - before), 0.5)];
};

function windowAround(middle: EpochS, { lengthS, aroundS }: typeof LONG): SuggestedBreak {
  const step = 5 * MINUTE_S;
  const begin = Math.round((middle - lengthS / 2) / step) * step;
  return { lengthS, earliestAt: epochS(begin - aroundS), latestAt: epochS(begin + aroundS) };
}
