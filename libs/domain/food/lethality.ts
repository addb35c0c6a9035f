import { requireRange } from '../quantity/index.js';
import type { FoodTemp } from './limits/limit.js';

/** What a temperature kills at, beside a reference: ten times as fast for each z above it. */
export interface Killing {
  readonly refC: number;
  readonly zK: number;
  /** Time at the reference for one tenth to be left, s. */
  readonly decimalS: number;
}

/**
 * Salmonella in meat as the 6.5-log and 5-log columns of [FSIS-A21] imply it: z 10 °F, D at 150 °F 10.29 s. The guideline states neither
 * and asks for a process authority where an integral is used; it does not hold on a dry surface. An integral supports a decision
 * and never replaces a row of the table. Source: our fit to the table, held to tests/published/food-lethality.test.ts
 */
export const SALMONELLA_IN_MEAT: Killing = { refC: (150 - 32) / 1.8, zK: 10 / 1.8, decimalS: 10.29 };
/** The column that the integral was read from goes no further: nothing beyond it is claimed. [FSIS-A21] tables 2 and 6. */
export const MOST_LOG = 6.5;

const rateAt = (tempC: number, { refC, zK }: Killing) => 10 ** ((tempC - refC) / zK);

/**
 * Time at the reference that a temperature history is worth, exact between readings that are straight on:
 *
 *     F = sum of dt z (L2 - L1) / (ln 10 (T2 - T1)),  L = 10^((T - Tref)/z);   dt L where T1 = T2
 *
 * @param temps  in order of time
 * @returns s. Held to tests/published/food-lethality.test.ts
 */
export function lethalityS(temps: readonly FoodTemp[], killing: Killing): number {
  requireRange('z (K)', killing.zK, 1, 50);
  let total = 0;
  for (let i = 1; i < temps.length; i++) {
    const [a, b] = [temps[i - 1]!, temps[i]!];
    const rise = b.tempC - a.tempC;
    const low = rateAt(a.tempC, killing);
    const mean = Math.abs(rise) < 1e-6 ? low : (killing.zK * (rateAt(b.tempC, killing) - low)) / (Math.LN10 * rise);
    total += (b.at - a.at) * mean;
  }
  return total;
}

/** The same by the colder end of each stretch: never more than the truth. Source: [FSIS-A21] p. 67. */
export function lethalityAtLeastS(temps: readonly FoodTemp[], killing: Killing): number {
  let total = 0;
  for (let i = 1; i < temps.length; i++) total += (temps[i]!.at - temps[i - 1]!.at) * rateAt(Math.min(temps[i]!.tempC, temps[i - 1]!.tempC), killing);
  return total;
}

/** Log reduction of a history, no more than the table behind it claims. Source: `F / D`. */
export function logReduction(temps: readonly FoodTemp[], killing: Killing = SALMONELLA_IN_MEAT, mostLog = MOST_LOG): { readonly log: number; readonly capped: boolean } {
  const log = lethalityS(temps, killing) / killing.decimalS;
  return { log: Math.min(log, mostLog), capped: log > mostLog };
}

/** What grows while meat cools: secondary model of one kind of meat. */
export interface Growing {
  readonly b: number;
  readonly leastC: number;
  readonly c: number;
  readonly mostC: number;
  readonly q0: number;
}
/** Clostridium perfringens in cooked uncured meat. [JUNEJA-2011]; rates in log10 an hour; q0 of beef 0.00699, by which the paper's predictions come out. */
export const PERFRINGENS: Readonly<Record<'beef' | 'chicken' | 'pork', Growing>> = {
  beef: { b: 0.05, leastC: 10.15, c: 0.238, mostC: 53, q0: 0.00699 },
  chicken: { b: 0.048, leastC: 9.74, c: 0.208, mostC: 52.1, q0: 0.0105 },
  pork: { b: 0.047, leastC: 10.69, c: 0.252, mostC: 52.8, q0: 0.0137 },
};

/** Growth rate, `b^2 (T - Tmin)^2 (1 - exp(c (T - Tmax)))` log10 an hour, none outside; [JUNEJA-2011]. */
export const growthPerHour = (tempC: number, { b, leastC, c, mostC }: Growing): number =>
  tempC <= leastC || tempC >= mostC ? 0 : b * b * (tempC - leastC) ** 2 * (1 - Math.exp(c * (tempC - mostC)));

/** Integral of the rate over temperature from its lower end, closed form. */
function rateIntegral(tempC: number, { b, leastC, c, mostC }: Growing): number {
  const x = Math.min(Math.max(tempC, leastC), mostC) - leastC;
  const grown = Math.exp(c * (x + leastC - mostC)) * ((x * x) / c - (2 * x) / (c * c) + 2 / c ** 3);
  return b * b * (x ** 3 / 3 - grown + (2 / c ** 3) * Math.exp(c * (leastC - mostC)));
}

/**
 * Growth over a temperature history with the lag of Baranyi, `log10((1 + q0 10^I) / (1 + q0))`, I the integral of the rate, exact
 * between readings that are straight on. A screen with a spread of up to 1 log, as large as the standard itself: it never
 * overrules a missed limit.
 *
 * [JUNEJA-2011]. @returns log10. Held to tests/published/food-lethality.test.ts
 */
export function growthLog(temps: readonly FoodTemp[], growing: Growing): number {
  let integral = 0;
  for (let i = 1; i < temps.length; i++) {
    const [a, b] = [temps[i - 1]!, temps[i]!];
    const hours = (b.at - a.at) / 3600;
    const rise = b.tempC - a.tempC;
    integral += Math.abs(rise) < 1e-6 ? hours * growthPerHour(a.tempC, growing) : (hours * (rateIntegral(b.tempC, growing) - rateIntegral(a.tempC, growing))) / rise;
  }
  return Math.log10((1 + growing.q0 * 10 ** integral) / (1 + growing.q0));
}
