import { type EpochS, later } from '../quantity/index.js';
import type { FoodTemp } from './limits/limit.js';

/** Fahrenheit of a printed limit in Celsius, once and unrounded. Exact by definition. */
export const fToC = (tempF: number) => (tempF - 32) / 1.8;

/** Readings in order of time, the impossible left out; of two at one instant the colder stands first. Source: none needed. */
export const inOrder = (temps: readonly FoodTemp[]): readonly FoodTemp[] =>
  temps.filter(({ tempC }) => Number.isFinite(tempC)).sort((a, b) => a.at - b.at || a.tempC - b.tempC);

/**
 * Of several pieces or probes the coldest (warmest) at every instant at which any was read; a probe counts from its first to its last reading.
 * The record of a lot is its worst part, never its mean: [FSIS-A21] p. 22.
 */
export function worstOf(probes: readonly (readonly FoodTemp[])[], which: 'coldest' | 'warmest'): readonly FoodTemp[] {
  const lines = probes.map(inOrder).filter((line) => line.length > 0);
  const instants = [...new Set(lines.flatMap((line) => line.map(({ at }) => at)))].sort((a, b) => a - b);
  return instants.flatMap((at) => {
    const values = lines.map((line) => valueAt(line, at)).filter((value) => value !== undefined);
    return values.length === 0 ? [] : [{ at, tempC: which === 'coldest' ? Math.min(...values) : Math.max(...values) }];
  });
}

/** Straight between two readings; undefined outside. Source: [FSIS-A21] p. 73 allows it. */
export function valueAt(line: readonly FoodTemp[], at: EpochS): number | undefined {
  const after = line.findIndex((temp) => temp.at >= at);
  if (after < 0) return undefined;
  const b = line[after]!;
  if (b.at === at) return b.tempC;
  const a = line[after - 1];
  return a && a.tempC + ((at - a.at) / (b.at - a.at)) * (b.tempC - a.tempC);
}

/** A stretch of time, seconds kept to the fraction so that a limit is compared unrounded. */
export interface Stretch {
  readonly fromS: number;
  readonly toS: number;
}

/** All stretches in which the line lies at or above a temperature, straight between readings. Source: none needed. */
export function stretchesAtOrAbove(line: readonly FoodTemp[], tempC: number): readonly Stretch[] {
  const found: { fromS: number; toS: number }[] = [];
  const add = (fromS: number, toS: number) => {
    const last = found.at(-1);
    if (last && fromS <= last.toS + 1e-6) last.toS = Math.max(last.toS, toS);
    else found.push({ fromS, toS });
  };
  line.forEach((b, i) => {
    const a = line[i - 1];
    if (!a) {
      if (b.tempC >= tempC) add(b.at, b.at);
      return;
    }
    const crossing = a.at + ((tempC - a.tempC) / (b.tempC - a.tempC)) * (b.at - a.at);
    if (a.tempC >= tempC && b.tempC >= tempC) add(a.at, b.at);
    else if (b.tempC >= tempC) add(crossing, b.at);
    else if (a.tempC >= tempC) add(a.at, crossing);
  });
  return found;
}

/** Longest such stretch, s; 0 for a touch, undefined when never there. Source: none needed. */
export function longestAtOrAboveS(line: readonly FoodTemp[], tempC: number): number | undefined {
  const stretches = stretchesAtOrAbove(line, tempC);
  return stretches.length === 0 ? undefined : Math.max(...stretches.map(({ fromS, toS }) => toS - fromS));
}

/** Total time between two temperatures, s: on the way up only, or all of it. Source: none needed. */
export function timeBetweenS(line: readonly FoodTemp[], fromC: number, toC: number): number {
  let total = 0;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const [low, high] = [Math.min(a.tempC, b.tempC), Math.max(a.tempC, b.tempC)];
    if (high === low) total += low >= fromC && low < toC ? b.at - a.at : 0;
    else total += ((b.at - a.at) * Math.max(0, Math.min(high, toC) - Math.max(low, fromC))) / (high - low);
  }
  return total;
}

/** When the line last came down through a temperature for good, s since 1970 with its fraction; undefined while it has not. Source: none needed. */
export function lastFallS(line: readonly FoodTemp[], tempC: number): number | undefined {
  const end = line.at(-1);
  if (!end || end.tempC > tempC) return undefined;
  for (let i = line.length - 1; i > 0; i--) {
    const [a, b] = [line[i - 1]!, line[i]!];
    if (a.tempC > tempC) return a.at + ((a.tempC - tempC) / (a.tempC - b.tempC)) * (b.at - a.at);
  }
  return undefined;
}

/**
 * Where a falling line is heading: with the air it stands in, by its last readings, `T = Ta + (T0 - Ta) exp(-t/tau)`.
 *
 * Source: Newton's law of cooling, tau from the last half hour of readings at least; the core of a thick piece lags at first, so an
 * early look is too gloomy rather than too hopeful.
 *
 * @returns seconds from the last reading until `tempC`, undefined when that air never brings it there or the line does not fall
 */
export function fallsAfterS(line: readonly FoodTemp[], airC: number, tempC: number): number | undefined {
  const last = line.at(-1);
  if (!last) return undefined;
  if (last.tempC <= tempC) return 0;
  const before = [...line].reverse().find(({ at }) => at <= last.at - 1800) ?? line[0]!;
  if (airC >= tempC || before.at >= last.at || before.tempC <= last.tempC || last.tempC <= airC) return undefined;
  const tau = (last.at - before.at) / Math.log((before.tempC - airC) / (last.tempC - airC));
  return tau * Math.log((last.tempC - airC) / (tempC - airC));
}

/** The instant of a second count, rounded up: a limit is never given time it does not have. Source: none needed. */
export const instantOf = (atS: number): EpochS => later(0 as EpochS, Math.floor(atS));
