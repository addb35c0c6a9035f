import type { EpochS } from '../quantity/index.js';
import { ALARM_LIST, BAND_DEADBAND } from './list.js';

/** What a chamber's probes that are believed showed together at an instant. */
export interface ChamberSample {
  readonly at: EpochS;
  readonly tempC: number;
}
export type OutOfBand = 'above-band' | 'below-band';

/** So many of the last samples must lie outside: n of m is quicker and steadier than n in a row. Source: our own choice. */
const OUT_OF = { most: 6, least: 5 };
/** Older than this says nothing of now, s. */
const FRESH_S = 300;

/** What the band alarms of one pit are judged by. */
export interface BandAsk {
  readonly now: EpochS;
  /** The last minutes, in order of time; from probes that are believed. */
  readonly samples: readonly ChamberSample[];
  readonly lowC: number;
  readonly highC: number;
  /** Standard deviation of one sample, K. */
  readonly noiseK: number;
  /** The band alarm that stands. */
  readonly was?: OutOfBand | undefined;
}

/**
 * On which side of its band a chamber is: raised when 5 of the last 6 samples lie outside, over when all samples of the last minute
 * lie inside by the deadband. Between the two it stays as it was; with no fresh samples nothing is said.
 * Source: our own choice, after the comparison of n of m in the literature of alarm design. Held to band.test.ts
 */
export function outOfBand({ now, samples, lowC, highC, noiseK, was }: BandAsk): OutOfBand | undefined {
  const fresh = samples.filter(({ at }) => at <= now && now - at <= FRESH_S * OUT_OF.most);
  const last = fresh.at(-1);
  if (!last || now - last.at > FRESH_S) return undefined;
  const lastOnes = fresh.slice(-OUT_OF.most);
  if (lastOnes.filter(({ tempC }) => tempC > highC).length >= OUT_OF.least) return 'above-band';
  if (lastOnes.filter(({ tempC }) => tempC < lowC).length >= OUT_OF.least) return 'below-band';
  if (!was) return undefined;
  const deadbandK = Math.min(Math.max(BAND_DEADBAND.leastK, BAND_DEADBAND.noiseSds * noiseK), BAND_DEADBAND.mostFrac * (highC - lowC));
  const lately = fresh.filter(({ at }) => last.at - at <= ALARM_LIST[was].offDelayS);
  const isInside = lately.every(({ tempC }) => (was === 'above-band' ? tempC <= highC - deadbandK : tempC >= lowC + deadbandK));
  return isInside ? undefined : was;
}

/**
 * What several probes of one chamber showed together: the last of each with the last of the others, the one before with the one
 * before, and so on as far back as all of them go; at the latest of their times. In order of time.
 */
export function together(series: readonly (readonly ChamberSample[])[]): ChamberSample[] {
  const count = Math.min(...series.map((one) => one.length));
  if (series.length === 0 || count === 0) return [];
  return Array.from({ length: count }, (_, nth) => {
    const each = series.map((one) => one[one.length - count + nth]!);
    return { at: each.reduce((last, { at }) => (at > last ? at : last), each[0]!.at), tempC: each.reduce((sum, { tempC }) => sum + tempC, 0) / each.length };
  });
}
