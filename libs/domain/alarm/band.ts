import { type EpochS, MINUTE_S } from '../quantity/index.js';
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

/** A chamber out of its band: where it stands now, and where the middle of the forecast has it when the time to act is over. */
export interface ComingBackAsk {
  readonly side: OutOfBand;
  readonly nowC: number;
  /** Undefined while nothing is forecast. */
  readonly thenC: number | undefined;
  readonly lowC: number;
  readonly highC: number;
  /** Whether it counted as coming back until now. */
  readonly was: boolean;
}
/** So far inside its band it counts as back, so far outside as not, K. Source: our own choice. */
const BACK_K = 0.5;

/**
 * Whether a chamber that counts as out of its band needs nobody: it lies inside and only the deadband is missing, or its fire brings
 * it back, untouched, in the time that there is to act. Source: our own choice, after [IEC62682]: an alarm needs a response. Held to band.test.ts
 */
export function comesBack({ side, nowC, thenC, lowC, highC, was }: ComingBackAsk): boolean {
  const isIn = (tempC: number) => (side === 'above-band' ? highC - tempC : tempC - lowC) >= (was ? -BACK_K : BACK_K);
  return isIn(nowC) || (thenC !== undefined && isIn(thenC));
}

/** Where a chamber stands now: mean of its samples of the last minute. */
export function lastMeanC(samples: readonly ChamberSample[]): number {
  const last = samples.filter(({ at }) => samples.at(-1)!.at - at < MINUTE_S);
  return last.reduce((sum, { tempC }) => sum + tempC, 0) / last.length;
}

/** What one probe of a chamber showed that is believed, in order of time, and by how much its place is hotter than the chamber's middle, K. */
export interface ProbeShowed {
  readonly samples: readonly ChamberSample[];
  readonly overK: number;
}

/**
 * What the probes of one chamber showed together: at the instants of the one that was read last, each as the middle of the chamber
 * would have it. One that fell silent or is not believed any more drops out after three of its readings, and the others speak for it.
 * Source: our own choice. In order of time. Held to band.test.ts
 */
export function together(probes: readonly ProbeShowed[]): ChamberSample[] {
  const heard = probes.filter(({ samples }) => samples.length > 0).sort((a, b) => b.samples.at(-1)!.at - a.samples.at(-1)!.at);
  return (heard[0]?.samples ?? []).map(({ at }) => {
    const each = heard.flatMap((probe) => middleBy(probe, at));
    return { at, tempC: each.reduce((sum, tempC) => sum + tempC, 0) / each.length };
  });
}

/** Readings after which a silence is one; a single reading stands for a minute, s. */
const HELD_READINGS = 3;
const LONE_GAP_S = 20;

/** The middle of the chamber at an instant by one probe; none where it had fallen silent. */
function middleBy({ samples, overK }: ProbeShowed, at: EpochS): readonly number[] {
  const last = samples.filter((sample) => sample.at <= at).at(-1);
  const gapS = samples.length > 1 ? (samples.at(-1)!.at - samples[0]!.at) / (samples.length - 1) : LONE_GAP_S;
  return last && at - last.at <= HELD_READINGS * gapS ? [last.tempC - overK] : [];
}
