import { requireRange } from '../quantity/index.js';
import { polynomial } from './polynomial.js';

/** Where the reference function begins to hold, °C. [IEC60584] */
export const TYPE_K_LEAST_C = -270;
/** Where it ends, °C. [IEC60584] */
export const TYPE_K_MOST_C = 1372;

/** E in millivolts, as printed: from -270 to 0 °C. [IEC60584] = NIST ITS-90 */
const BELOW_ZERO = [
  0, 0.394501280250e-1, 0.236223735980e-4, -0.328589067840e-6, -0.499048287770e-8, -0.675090591730e-10, -0.574103274280e-12,
  -0.310888728940e-14, -0.104516093650e-16, -0.198892668780e-19, -0.163226974860e-22,
];
/** E in millivolts, as printed: from 0 to 1372 °C, beside the bell. [IEC60584] = NIST ITS-90 */
const ABOVE_ZERO = [
  -0.176004136860e-1, 0.389212049750e-1, 0.185587700320e-4, -0.994575928740e-7, 0.318409457190e-9, -0.560728448890e-12,
  0.560750590590e-15, -0.320207200030e-18, 0.971511471520e-22, -0.121047212750e-25,
];
/** The bell a0 exp(a1 (t - a2)^2), in millivolts. */
const [BELL, BELL_WIDTH, BELL_AT_C] = [0.1185976, -0.1183432e-3, 126.9686];
const MILLI = 1e-3;

/** How near the inverse comes, K, and after how many steps it must have. */
const NEAR_K = 1e-7;
const MOST_STEPS = 40;
/** Slope of the function at room temperature, V/K: where the search for the inverse begins. */
const USUAL_V_PER_K = 40e-6;

function emfAndSlope(tempC: number): { readonly value: number; readonly slope: number } {
  if (tempC < 0) return polynomial(BELOW_ZERO, tempC);
  const { value, slope } = polynomial(ABOVE_ZERO, tempC);
  const bell = BELL * Math.exp(BELL_WIDTH * (tempC - BELL_AT_C) ** 2);
  return { value: value + bell, slope: slope + 2 * BELL_WIDTH * (tempC - BELL_AT_C) * bell };
}

/**
 * Voltage of a type K thermocouple whose cold junction lies at 0 °C.
 *
 *     E = sum c_i t^i + a_0 exp(a_1 (t - a_2)^2), the bell above 0 °C only        [IEC60584]
 *
 * @param tempC  t, -270 to 1372 °C
 * @returns E, V. Held to tests/published/reading-sensors.test.ts
 */
export function typeKEmfV(tempC: number): number {
  requireRange('tempC', tempC, TYPE_K_LEAST_C, TYPE_K_MOST_C);
  return emfAndSlope(tempC).value * MILLI;
}

/**
 * Temperature of the hot junction: the voltages are added, never the temperatures.
 *
 *     t = E^-1(E_measured + E(t_cold))                                             [IEC60584]
 *
 * @param measured.emfV  E_measured, V
 * @param measured.coldJunctionTempC  t_cold, -40 to 125 °C, what a converter can be
 * @returns t, °C; undefined where no temperature gives this voltage. Held to tests/published/reading-sensors.test.ts
 */
export function typeKTempC({ emfV, coldJunctionTempC }: { readonly emfV: number; readonly coldJunctionTempC: number }): number | undefined {
  requireRange('coldJunctionTempC', coldJunctionTempC, -40, 125);
  const wantV = emfV + typeKEmfV(coldJunctionTempC);
  if (!(wantV >= typeKEmfV(TYPE_K_LEAST_C) && wantV <= typeKEmfV(TYPE_K_MOST_C))) return undefined;
  let tempC = wantV / USUAL_V_PER_K;
  for (let step = 0; step < MOST_STEPS; step++) {
    const at = Math.min(TYPE_K_MOST_C, Math.max(TYPE_K_LEAST_C, tempC));
    const { value, slope } = emfAndSlope(at);
    // Near -270 °C the function is flat: a step may not leave the range.
    const next = at - (value * MILLI - wantV) / Math.max(slope * MILLI, 1e-7);
    if (Math.abs(next - tempC) < NEAR_K) return next;
    tempC = next;
  }
  return tempC;
}
