import type { EpochS } from '../quantity/index.js';
import { later } from '../quantity/index.js';

/** A forecast as it was kept when it was made; a fan as in `FireForecast`, °C. */
export interface KeptForecast {
  readonly from: EpochS;
  readonly stepS: number;
  readonly p10: readonly number[];
  readonly p50: readonly number[];
  readonly p90: readonly number[];
  /** How the chamber stood when it was made, and a quarter of an hour before: what persistence and trend go on from. */
  readonly tempC: number;
  readonly quarterBeforeTempC?: number;
}
/** A chamber temperature that was measured. */
export interface Happened {
  readonly at: EpochS;
  readonly tempC: number;
}
/** One lead of one forecast beside what came. Errors are forecast minus measured, K. */
export interface ForecastError {
  readonly from: EpochS;
  readonly leadS: number;
  readonly modelK: number;
  readonly persistenceK: number;
  readonly trendK?: number;
  readonly covered: boolean;
}
/** How good forecasts of one lead were. */
export interface LeadSkill {
  readonly leadS: number;
  readonly count: number;
  readonly rmseK: number;
  readonly persistenceRmseK: number;
  /** Absent where no forecast knew the quarter of an hour before it. */
  readonly trendRmseK?: number;
  /** 1 - rmse/rmse of the baseline: above 0 is better than it, 1 is perfect; absent where the baseline made no error. */
  readonly skillAgainstPersistenceFrac?: number;
  readonly skillAgainstTrendFrac?: number;
  /** Of all, so many lay inside p10 to p90: 0.80 is what the fan claims. */
  readonly coveredFrac: number;
}

/** A measurement this near to the lead's instant counts as of it, s. */
const NEAR_S = 120;
const QUARTER_S = 900;

/**
 * Errors of kept forecasts at the leads asked for. A forecast speaks of a fire that nobody touches: what came after the next
 * look is left out. Leads that nothing was measured at are left out too.
 *
 * @param told.forecasts  as kept, any order
 * @param told.happened   measured temperatures, in order of time
 * @param told.looks      instants at which somebody was at the fire
 */
export function forecastErrors(told: {
  readonly forecasts: readonly KeptForecast[];
  readonly happened: readonly Happened[];
  readonly looks: readonly EpochS[];
  readonly leadsS: readonly number[];
}): readonly ForecastError[] {
  const looks = [...told.looks].sort((a, b) => a - b);
  return told.forecasts.flatMap((kept) => {
    const nextLook = looks.find((at) => at > kept.from);
    return told.leadsS.flatMap((leadS) => {
      const at = later(kept.from, leadS);
      const came = nextLook !== undefined && at > nextLook ? undefined : nearest(told.happened, at);
      const fan = came === undefined ? undefined : fanAt(kept, leadS);
      return came === undefined || fan === undefined ? [] : [errorOf(kept, leadS, fan, came)];
    });
  });
}

function errorOf(kept: KeptForecast, leadS: number, fan: { p10: number; p50: number; p90: number }, came: number): ForecastError {
  const { tempC, quarterBeforeTempC } = kept;
  return {
    from: kept.from,
    leadS,
    modelK: fan.p50 - came,
    persistenceK: tempC - came,
    ...(quarterBeforeTempC !== undefined && { trendK: tempC + ((tempC - quarterBeforeTempC) * leadS) / QUARTER_S - came }),
    covered: came >= fan.p10 && came <= fan.p90,
  };
}

/** The fan at a lead, straight between its steps; undefined beyond its end. */
function fanAt({ stepS, p10, p50, p90 }: KeptForecast, leadS: number) {
  const place = leadS / stepS;
  const below = Math.floor(place);
  const part = place - below;
  const at = (line: readonly number[]) => {
    const low = line[below];
    const high = part === 0 ? low : line[below + 1];
    return low === undefined || high === undefined ? undefined : low + part * (high - low);
  };
  const [low, middle, high] = [at(p10), at(p50), at(p90)];
  return low === undefined || middle === undefined || high === undefined ? undefined : { p10: low, p50: middle, p90: high };
}

function nearest(happened: readonly Happened[], at: EpochS): number | undefined {
  let best: Happened | undefined;
  for (const one of happened) if (Math.abs(one.at - at) <= NEAR_S && (best === undefined || Math.abs(one.at - at) < Math.abs(best.at - at))) best = one;
  return best?.tempC;
}

const rms = (values: readonly number[]) => Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
const beside = (model: number, baseline: number) => (baseline > 0 ? 1 - model / baseline : undefined);

/** Skill per lead, shortest first: root mean squares of the same cases for model and baselines. */
export function skillOf(errors: readonly ForecastError[]): readonly LeadSkill[] {
  const leads = [...new Set(errors.map(({ leadS }) => leadS))].sort((a, b) => a - b);
  return leads.map((leadS) => {
    const mine = errors.filter((error) => error.leadS === leadS);
    const rmseK = rms(mine.map(({ modelK }) => modelK));
    const persistenceRmseK = rms(mine.map(({ persistenceK }) => persistenceK));
    const withTrend = mine.filter(({ trendK }) => trendK !== undefined);
    const trendRmseK = withTrend.length > 0 ? rms(withTrend.map(({ trendK }) => trendK ?? 0)) : undefined;
    const againstPersistence = beside(rmseK, persistenceRmseK);
    const againstTrend = trendRmseK === undefined ? undefined : beside(rms(withTrend.map(({ modelK }) => modelK)), trendRmseK);
    return {
      leadS,
      count: mine.length,
      rmseK,
      persistenceRmseK,
      ...(trendRmseK !== undefined && { trendRmseK }),
      ...(againstPersistence !== undefined && { skillAgainstPersistenceFrac: againstPersistence }),
      ...(againstTrend !== undefined && { skillAgainstTrendFrac: againstTrend }),
      coveredFrac: mine.filter(({ covered }) => covered).length / mine.length,
    };
  });
}

/** What one check was told would come, and what came until the next one. */
export interface CheckOutcome {
  readonly from: EpochS;
  readonly until: EpochS;
  /** At the next check: forecast, measured; absent where nothing was measured. */
  readonly forecastTempC?: number;
  readonly cameTempC?: number;
  readonly covered?: boolean;
  /** When the band was to be left, and when it was; absent where it was to hold, or held, until the next check. */
  readonly leavesAt?: EpochS;
  readonly leftAt?: EpochS;
  /** Kelvin-minutes outside the band that were measured. */
  readonly outOfBandKMin: number;
}

/**
 * The two sides of one check: the forecast kept right after it, and what was measured until the next one.
 *
 * @param told.kept      the forecast made with the check's wood on the fire
 * @param told.until     the next check, or now
 * @param told.happened  measured temperatures, in order of time
 */
export function checkOutcome(told: {
  readonly kept: KeptForecast;
  readonly until: EpochS;
  readonly happened: readonly Happened[];
  readonly band: { readonly lowC: number; readonly highC: number };
}): CheckOutcome {
  const { kept, until, band } = told;
  const outside = (tempC: number) => tempC < band.lowC || tempC > band.highC;
  const came = told.happened.filter(({ at }) => at >= kept.from && at <= until);
  const fan = fanAt(kept, until - kept.from);
  const cameTempC = nearest(came, until);
  const leaves = kept.p50.findIndex((tempC, nth) => outside(tempC) && nth * kept.stepS <= until - kept.from);
  const left = came.find(({ tempC }) => outside(tempC));
  return {
    from: kept.from,
    until,
    ...(fan && { forecastTempC: fan.p50 }),
    ...(cameTempC !== undefined && { cameTempC }),
    ...(fan && cameTempC !== undefined && { covered: cameTempC >= fan.p10 && cameTempC <= fan.p90 }),
    ...(leaves >= 0 && { leavesAt: later(kept.from, leaves * kept.stepS) }),
    ...(left && { leftAt: left.at }),
    outOfBandKMin: outOfBand(came, band),
  };
}

/** By trapezoids between measurements. */
function outOfBand(came: readonly Happened[], band: { readonly lowC: number; readonly highC: number }): number {
  const outK = (tempC: number) => Math.max(0, band.lowC - tempC, tempC - band.highC);
  let sum = 0;
  for (let i = 1; i < came.length; i++) sum += (0.5 * (outK(came[i - 1]!.tempC) + outK(came[i]!.tempC)) * (came[i]!.at - came[i - 1]!.at)) / 60;
  return sum;
}
