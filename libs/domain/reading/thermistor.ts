import { type Result, ok, refuse, requireRange } from '../quantity/index.js';

const ZERO_C_K = 273.15;

/** Coefficients of one kind of thermistor, 1/K. */
export interface Thermistor {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}
/** A row of a maker's table. */
export interface ThermistorRow {
  readonly tempC: number;
  readonly resistanceOhm: number;
}

/**
 * Temperature of an NTC thermistor.
 *
 *     1/T = A + B ln R + C (ln R)^3, T in kelvin                                   [STEINHART-1968]
 *
 * @param resistanceOhm  R, 1 to 10 million ohm
 * @returns t, °C. Held to tests/published/reading-sensors.test.ts
 */
export function thermistorTempC({ a, b, c }: Thermistor, resistanceOhm: number): number {
  requireRange('resistanceOhm', resistanceOhm, 1, 1e7);
  const ln = Math.log(resistanceOhm);
  return 1 / (a + b * ln + c * ln ** 3) - ZERO_C_K;
}

/**
 * The coefficients through three rows of a maker's table: three linear equations, by elimination.
 *
 * @param rows  three rows with differing temperatures; warmer means less resistance
 * @returns the coefficients, or `not-a-thermistor` where the rows do not fall. Held to tests/published/reading-sensors.test.ts
 */
export function thermistorOf(rows: readonly [ThermistorRow, ThermistorRow, ThermistorRow]): Result<Thermistor, 'not-a-thermistor'> {
  const [low, middle, high] = [...rows].sort((x, y) => x.tempC - y.tempC) as [ThermistorRow, ThermistorRow, ThermistorRow];
  const falls = low.resistanceOhm > middle.resistanceOhm && middle.resistanceOhm > high.resistanceOhm && high.resistanceOhm > 0;
  if (!falls || low.tempC === middle.tempC || middle.tempC === high.tempC) return refuse('not-a-thermistor');
  const [l1, l2, l3] = [low, middle, high].map(({ resistanceOhm }) => Math.log(resistanceOhm)) as [number, number, number];
  const [y1, y2, y3] = [low, middle, high].map(({ tempC }) => 1 / (tempC + ZERO_C_K)) as [number, number, number];
  const [g2, g3] = [(y2 - y1) / (l2 - l1), (y3 - y1) / (l3 - l1)];
  const c = (g3 - g2) / ((l3 - l2) * (l1 + l2 + l3));
  const b = g2 - c * (l1 * l1 + l1 * l2 + l2 * l2);
  return ok({ a: y1 - (b + c * l1 * l1) * l1, b, c });
}

/** How much the rate of fall of a row may differ from its neighbours', as a share. Source: our choice. */
const ODD_ROW_FRAC = 0.06;

/**
 * Rows of a maker's table that break the steady fall of their neighbours: very likely misprints. Looked at is B ln(R1/R2) between
 * rows, which changes slowly with temperature. The first and the last row are not judged.
 *
 * @param rows  in order of temperature, at least five
 */
export function oddRows(rows: readonly ThermistorRow[]): readonly ThermistorRow[] {
  const fall = (x: ThermistorRow, y: ThermistorRow) => Math.log(x.resistanceOhm / y.resistanceOhm) / (1 / (x.tempC + ZERO_C_K) - 1 / (y.tempC + ZERO_C_K));
  return rows.filter((row, nth) => {
    const [before, after] = [rows[nth - 1], rows[nth + 1]];
    return before && after && Math.abs(fall(before, row) / fall(row, after) - 1) > ODD_ROW_FRAC;
  });
}
