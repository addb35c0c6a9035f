import { requireRange } from '../quantity/index.js';

/** Callendar and Van Dusen for platinum of 3.851e-3. [IEC60751] */
const [A, B, C] = [3.9083e-3, -5.775e-7, -4.183e-12];
/** Resistance at 0 °C, ohm. */
const R0_OHM = 100;
/** Where the equation holds, °C. */
const LEAST_C = -200;
const MOST_C = 850;
const MOST_STEPS = 20;

/**
 * Resistance of a Pt100 element.
 *
 *     R = 100 (1 + A t + B t^2 + C (t - 100) t^3), the last term below 0 °C only   [IEC60751]
 *
 * @param tempC  t, -200 to 850 °C
 * @returns R, ohm. Held to tests/published/reading-sensors.test.ts
 */
export function pt100Ohm(tempC: number): number {
  requireRange('tempC', tempC, LEAST_C, MOST_C);
  return R0_OHM * (1 + A * tempC + B * tempC ** 2 + (tempC < 0 ? C * (tempC - 100) * tempC ** 3 : 0));
}

/**
 * Temperature of a Pt100 element: the quadratic solved above 0 °C, Newton's steps from there below.
 *
 * @param resistanceOhm  R, without the leads
 * @returns t, °C; undefined outside -200 to 850 °C. Held to tests/published/reading-sensors.test.ts
 */
export function pt100TempC(resistanceOhm: number): number | undefined {
  if (!(resistanceOhm >= pt100Ohm(LEAST_C) && resistanceOhm <= pt100Ohm(MOST_C))) return undefined;
  let tempC = (-A + Math.sqrt(A * A - 4 * B * (1 - resistanceOhm / R0_OHM))) / (2 * B);
  if (resistanceOhm >= R0_OHM) return tempC;
  for (let step = 0; step < MOST_STEPS; step++) {
    const slope = R0_OHM * (A + 2 * B * tempC + C * (4 * tempC ** 3 - 300 * tempC ** 2));
    tempC -= (R0_OHM * (1 + A * tempC + B * tempC ** 2 + C * (tempC - 100) * tempC ** 3) - resistanceOhm) / slope;
  }
  return tempC;
}
