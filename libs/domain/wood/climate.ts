import { clamp, type DryBasis, dryBasis, type EpochS, requireRange } from '../quantity/index.js';
import { equilibriumMoisture } from './moisture.js';

/** Mean air of the twelve months, January first. */
export interface YardClimate {
  readonly months: readonly { readonly tempC: number; readonly humidityFrac: number }[];
}

/** Mean year of the Gregorian calendar, s: 365.2425 days. */
const YEAR_S = 365.2425 * 86_400;
const MONTHS = 12;

/** Where the equation of equilibrium moisture holds; drier, damper and colder air is taken at the edge. [FPL-RN-0268] */
const TEMP_C: readonly [number, number] = [-5, 50];
const HUMIDITY: readonly [number, number] = [0.02, 0.95];

/** The year's moisture and drying speed as seen by a stack, ready to be asked for any day. */
export interface StackAir {
  /** Moisture that wood would take on, at any instant. */
  readonly equilibriumAt: (at: EpochS) => DryBasis;
  /** Drying speed over that at 20 °C, at any instant. */
  readonly speedAt: (at: EpochS) => number;
}

/** Diffusion in wood grows with temperature as exp(-B / T); B of red oak is 4000 to 5300 K. Source: from memory, weak. */
const DIFFUSION_B_K = 4600;
const REFERENCE_K = 293.15;

/**
 * A yard's air through the year: month means stand at the middle of their months, straight lines between them.
 *
 *     Xe = EMC(T, h)   [FPL-RN-0268]          speed = exp(-B (1/T - 1/293))
 *
 * @param climate  twelve months, -40 to 50 °C, humidity 0 to 1
 * @returns functions of time. Held to libs/domain/wood/seasoning.test.ts
 */
export function stackAir(climate: YardClimate): StackAir {
  requireRange('months of a climate', climate.months.length, MONTHS, MONTHS);
  const months = climate.months.map(({ tempC, humidityFrac }) => {
    requireRange('month temperature (°C)', tempC, -40, 50);
    requireRange('month humidity', humidityFrac, 0, 1);
    const air = { tempC: clamp(tempC, ...TEMP_C), humidityFrac: clamp(humidityFrac, ...HUMIDITY) };
    return { equilibrium: equilibriumMoisture(air), speed: Math.exp(-DIFFUSION_B_K * (1 / (tempC + 273.15) - 1 / REFERENCE_K)) };
  });
  const between = (of: 'equilibrium' | 'speed') => (at: EpochS) => {
    const turn = ((((at % YEAR_S) + YEAR_S) % YEAR_S) / YEAR_S) * MONTHS - 0.5;
    const left = Math.floor(turn);
    const [a, b] = [months[(left + MONTHS) % MONTHS]!, months[(left + 1) % MONTHS]!];
    return a[of] + (b[of] - a[of]) * (turn - left);
  };
  const equilibrium = between('equilibrium');
  return { equilibriumAt: (at) => dryBasis(equilibrium(at)), speedAt: between('speed') };
}
