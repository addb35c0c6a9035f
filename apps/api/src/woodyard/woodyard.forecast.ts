import type { SeasoningView, WoodyardView } from '@stokehold/domain/contract';
import { dryBasis, type EpochS, toIso } from '@stokehold/domain/quantity';
import { forecastSeasoning, openingOrder, type Seasoning, stackAir, type YardClimate } from '@stokehold/domain/wood';
import type { KeptReading, Lot } from '../wood/index.js';
import { READY_AT } from './pull-facts.js';

/** Stands in until somebody says what the air of the yard is: mild, inland, four seasons. Source: common practice, no source. */
export const ASSUMED_CLIMATE: WoodyardView['climate'] = [
  [1, 0.7], [3, 0.68], [8, 0.65], [14, 0.62], [19, 0.64], [23, 0.65], [26, 0.65], [25, 0.66], [21, 0.67], [15, 0.65], [8, 0.68], [3, 0.71],
].map(([tempC, humidityFrac]) => ({ tempC: tempC!, humidityFrac: humidityFrac! }));

/** Deviation of what was written down when a lot was bought, where no meter was used since. */
const BOUGHT_DEVIATION = 0.03;
const CURVE_WEEKS = 78;

/** A lot with how it dries. */
export interface DryingLot {
  readonly lot: Lot;
  readonly readings: readonly KeptReading[];
  readonly seasoning: Seasoning;
  readonly state: SeasoningView['state'];
}

/** The lots that are left, in the order in which to open them: first in, first ready. */
export function dryingLots(lots: readonly Lot[], readings: readonly KeptReading[], climate: YardClimate, now: EpochS): readonly DryingLot[] {
  const air = stackAir(climate);
  const dried = lots.filter(({ inStack, onCarts }) => inStack + onCarts > 0).map((lot) => {
    const own = readings.filter(({ lotId }) => lotId === lot.id);
    const all = own.length > 0 ? own : [{ at: lot.boughtAt, moisture: lot.moisture, deviation: BOUGHT_DEVIATION }];
    const seasoning = forecastSeasoning(
      { species: lot.species, thicknessM: lot.thicknessM, readings: all, ...(lot.cutAt !== null && { cutAt: lot.cutAt }), ...(lot.splitAt !== null && { splitAt: lot.splitAt }) },
      air, now, dryBasis(READY_AT),
    );
    return { lot, readings: own, seasoning };
  });
  return openingOrder(dried.map((one) => ({ id: one.lot.id, boughtAt: one.lot.boughtAt, seasoning: one.seasoning }))).map(({ id, state }) => ({ ...dried.find(({ lot }) => lot.id === id)!, state }));
}

const isoOf = (at: EpochS | undefined) => (at === undefined ? null : toIso(at));

export const seasoningView = ({ lot, readings, seasoning, state }: DryingLot): SeasoningView => ({
  lotId: lot.id, state, moisture: seasoning.now.moisture, deviationFrac: seasoning.now.deviation, readyFrac: Math.min(1, Math.max(0, seasoning.readyFrac)),
  earliestAt: isoOf(seasoning.earliestAt), readyAt: isoOf(seasoning.readyAt), latestAt: isoOf(seasoning.latestAt),
  readings: readings.map(({ at, moisture, atLeast }) => ({ at: toIso(at), moisture, atLeast })),
  curve: seasoning.curve.slice(0, CURVE_WEEKS).filter((_, i) => i % 2 === 0).map(({ at, moisture, lowMoisture, highMoisture }) => ({ at: toIso(at), moisture, low: lowMoisture, high: highMoisture })),
});
