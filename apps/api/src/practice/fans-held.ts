import type { FireView } from '@stokehold/domain/contract';
import { type ForecastError, forecastErrors, type Happened, skillOf } from '@stokehold/domain/fire';
import { type EpochS, fromIso, MINUTE_S } from '@stokehold/domain/quantity';

/** A fire that nobody touched: where its chamber truly was, minute by minute, filled in as the night goes on. */
export type LeftAlone = ReadonlyMap<EpochS, number>;

/** How far ahead fans are held against what came. */
const LEADS_S = [15, 30, 60, 90].map((minutes) => minutes * MINUTE_S);

/** Of the fans that a wall showed, how many held what would have come if nobody had touched the fire; 0.80 is what they claim. */
export interface FansReport {
  readonly fans: readonly { readonly leadMinutes: number; readonly count: number; readonly insideFrac: number }[];
}

/** Fans as they were shown, each beside the same fire left alone from then on. */
export class FansHeld {
  private readonly shown: { readonly fan: FireView['forecast']; readonly came: LeftAlone }[] = [];

  note(fan: FireView['forecast'], came: LeftAlone): void {
    this.shown.push({ fan, came });
  }

  report(): FansReport {
    const errors = this.shown.flatMap(({ fan, came }) => errorsOf(fan, came));
    return { fans: skillOf(errors).map(({ leadS, count, coveredFrac }) => ({ leadMinutes: leadS / MINUTE_S, count, insideFrac: Math.round(coveredFrac * 1000) / 1000 })) };
  }
}

function errorsOf(fan: FireView['forecast'], came: LeftAlone): readonly ForecastError[] {
  const happened = [...came].map(([at, tempC]): Happened => ({ at, tempC }));
  return forecastErrors({ forecasts: [{ ...fan, from: fromIso(fan.from), tempC: fan.p50[0]! }], happened, looks: [], leadsS: LEADS_S });
}
