import { requireRange } from '../quantity/index.js';
import type { Composition } from './cut.js';

/** Coefficients of a + b t + c t^2, t in °C. */
type Fit = readonly [a: number, b: number, c: number];
interface Fits {
  readonly conductivity: Fit;
  readonly density: Fit;
  /** kJ/kgK, as printed. */
  readonly heat: Fit;
}

/** What a food is made of, each with its own properties. */
export type FoodPart = 'water' | 'protein' | 'fat' | 'carbohydrate' | 'fibre' | 'ash';

/**
 * Choi and Okos 1986, -40 to 150 °C, as in [ASHRAE-R06] ch. 9 tables 1 and 2. The heat of water has the original constant 4.1762
 * (above 0 °C): the 4.1289 of that print does not give water its known 4.18 kJ/kgK at 25 °C.
 */
const FITS: Readonly<Record<FoodPart, Fits>> = {
  water: { conductivity: [0.57109, 1.7625e-3, -6.7036e-6], density: [997.18, 3.1439e-3, -3.7574e-3], heat: [4.1762, -9.0864e-5, 5.4731e-6] },
  protein: { conductivity: [0.17881, 1.1958e-3, -2.7178e-6], density: [1329.9, -0.5184, 0], heat: [2.0082, 1.2089e-3, -1.3129e-6] },
  fat: { conductivity: [0.18071, -2.7604e-4, -1.7749e-7], density: [925.59, -0.41757, 0], heat: [1.9842, 1.4733e-3, -4.8008e-6] },
  carbohydrate: { conductivity: [0.20141, 1.3874e-3, -4.3312e-6], density: [1599.1, -0.31046, 0], heat: [1.5488, 1.9625e-3, -5.9399e-6] },
  fibre: { conductivity: [0.18331, 1.2497e-3, -3.1683e-6], density: [1311.5, -0.36589, 0], heat: [1.8459, 1.8306e-3, -4.6509e-6] },
  ash: { conductivity: [0.32962, 1.4011e-3, -2.9069e-6], density: [2423.8, -0.28063, 0], heat: [1.0926, 1.8896e-3, -3.6817e-6] },
};
const at = ([a, b, c]: Fit, tempC: number) => a + b * tempC + c * tempC * tempC;

/** How a material carries and stores heat. */
export interface HeatProperties {
  readonly conductivityWPerMK: number;
  readonly densityKgPerM3: number;
  readonly heatJPerKgK: number;
}

/**
 * One part by itself, above freezing. [ASHRAE-R06] ch. 9 tables 1 and 2. Held to tests/published/food-properties.test.ts
 *
 * @param tempC  0 to 150 °C
 */
export function partAt(part: FoodPart, tempC: number): HeatProperties {
  requireRange('temperature (°C)', tempC, 0, 150);
  const fits = FITS[part];
  return { conductivityWPerMK: at(fits.conductivity, tempC), densityKgPerM3: at(fits.density, tempC), heatJPerKgK: 1000 * at(fits.heat, tempC) };
}

/**
 * Meat of a composition, above freezing.
 *
 *     rho = 1 / sum(x/rho)     cp = sum(x cp)     v = rho x/rho_i     k = sum(v k) along, 1 / sum(v/k) across the parts
 *
 * [ASHRAE-R06] ch. 9. Muscle lies between the two; heat on its way to the core is nearer the first.
 * Held to tests/published/food-properties.test.ts
 *
 * @param composition  brought to a sum of 1
 * @param tempC        0 to 150 °C
 */
export function meatAt(composition: Composition, tempC: number): HeatProperties & { readonly acrossWPerMK: number } {
  const { waterFrac, proteinFrac, fatFrac, ashFrac } = composition;
  const sum = waterFrac + proteinFrac + fatFrac + ashFrac;
  requireRange('sum of the composition', sum, 0.5, 1.5);
  const parts = ([['water', waterFrac], ['protein', proteinFrac], ['fat', fatFrac], ['ash', ashFrac]] as const).map(([part, frac]) => ({ frac: frac / sum, ...partAt(part, tempC) }));
  const densityKgPerM3 = 1 / parts.reduce((total, { frac, densityKgPerM3: rho }) => total + frac / rho, 0);
  const total = (value: (part: (typeof parts)[number], volumeFrac: number) => number) =>
    parts.reduce((all, part) => all + value(part, (densityKgPerM3 * part.frac) / part.densityKgPerM3), 0);
  return {
    densityKgPerM3,
    heatJPerKgK: total(({ frac, heatJPerKgK }) => frac * heatJPerKgK),
    conductivityWPerMK: total(({ conductivityWPerMK }, volumeFrac) => volumeFrac * conductivityWPerMK),
    acrossWPerMK: 1 / total(({ conductivityWPerMK }, volumeFrac) => volumeFrac / conductivityWPerMK),
  };
}

/** Water that raw beef holds in that fit, kg for each kg of meat. [FEYISSA-2009]. */
const HELD_RAW_FRAC = 0.745;

/**
 * Share of its own water that meat still holds at a temperature, 1 raw. Its steepest fall is at 65.6 °C.
 *
 *     C = 0.745 - 0.345 / (1 + 30 exp(-0.25 (T - 52)))     over 0.745       beef, [FEYISSA-2009]
 *
 * @param tempC  -5 to 200 °C
 * @returns 0.53 to 1. Held to tests/published/food-properties.test.ts
 */
export const waterHeldFrac = (tempC: number) => (HELD_RAW_FRAC - 0.345 / (1 + 30 * Math.exp(-0.25 * (tempC - 52)))) / HELD_RAW_FRAC;
