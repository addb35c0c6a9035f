import type { FireParameters } from './parameters.js';
import { GRAVITY_M_PER_S2 } from './parameters.js';
import type { FirePosition, Surroundings } from './pit.js';
import { requireSurroundings } from './pit.js';
import { seriesAreaM2 } from './pit-shape.js';

/** What is the same for every member during one step. */
export interface StepInputs {
  stepS: number;
  /** What of the attached char falls, and how far a gauge follows, within the step. */
  fallFrac: number;
  followFrac: number;
  readonly ambientK: number;
  readonly airKgPerM3: number;
  /** C_d A sqrt(2 rho), times sqrt(pressure) gives the flow. */
  readonly flowPerRootPa: number;
  readonly draftPa: number;
  readonly windPa: number;
  readonly outsideFilmWPerM2K: number;
  readonly wetFactor: number;
  readonly foodLoadFrac: number;
  /** 0.5 by the door, 1 in the middle, 1.5 at the throat. */
  readonly nearness: number;
}

/** Density of air, rho = 353.05 / T at sea level: the gas law with 101 325 Pa and 287 J/kgK. Source: physics. */
const AIR_KG_K_PER_M3 = 353.05;
const NEARNESS: Readonly<Record<FirePosition, number>> = { door: 0.5, middle: 1, throat: 1.5 };

/**
 * Draft and wind outside of a pit, once per span instead of once per member.
 *
 *     dp = rho g H (1 - Ta/Tstack) + 1/2 rho u^2 (0.20 onto the firebox, -0.12 onto the stack),   u = w cos(phi)
 *
 * Draft of the stack: [ASHRAE-F16]; the two shares of wind pressure: our fit, within the range of [SWAMI-1987].
 */
export function stepInputsOf(p: FireParameters, around: Surroundings, position: FirePosition, stepS: number): StepInputs {
  requireSurroundings(around);
  const { weather, air } = around;
  const ambientK = weather.ambientTempC + 273.15;
  const airKgPerM3 = AIR_KG_K_PER_M3 / ambientK;
  const alongMPerS = weather.windMPerS * Math.cos(weather.fromFireEndRad);
  const share = alongMPerS > 0 ? p.windInFrac : -p.windBackFrac;
  const area = seriesAreaM2(air.doorGapM * p.doorWidthM + p.leakAreaM2, p.stackAreaM2 * air.damperFrac);
  return {
    stepS,
    fallFrac: 1 - Math.exp(-stepS / p.fallS),
    followFrac: 1 - Math.exp(-stepS / p.gaugeLagS),
    ambientK,
    airKgPerM3,
    flowPerRootPa: p.orifice * area * Math.sqrt(2 * airKgPerM3),
    draftPa: airKgPerM3 * GRAVITY_M_PER_S2 * p.stackHeightM,
    windPa: 0.5 * airKgPerM3 * alongMPerS * alongMPerS * share,
    outsideFilmWPerM2K: p.outsideFilmWPerM2K + 0.8 * weather.windMPerS ** 0.7,
    wetFactor: 1 + p.rainFactor * weather.rainFrac,
    foodLoadFrac: around.foodLoadFrac,
    nearness: NEARNESS[position],
  };
}

/** The same surroundings for a step of another length: the last, shorter one of a span. */
export function setStep(p: FireParameters, inputs: StepInputs, stepS: number): void {
  inputs.stepS = stepS;
  inputs.fallFrac = 1 - Math.exp(-stepS / p.fallS);
  inputs.followFrac = 1 - Math.exp(-stepS / p.gaugeLagS);
}

/** What flows between the parts during one step: filled by one part, read by the next; and the running account of where the heat went. */
export interface Flows {
  airKgPerS: number;
  airRatio: number;
  /** sqrt(m_b / m_b0), capped at 1.15. */
  bedRoot: number;
  piecesBurning: number;
  volatileW: number;
  attachedW: number;
  evaporationW: number;
  bedFilmW: number;
  bedRadiantW: number;
  zoneRadiantW: number;
  /** Dry wood that went to gas and char in this step, kg/s. */
  woodKgPerS: number;
  /** Inlet gas and the three gas nodes, K. */
  inletK: number;
  gas1K: number;
  gas2K: number;
  gas3K: number;
  /** Running account: dry wood burnt, kg; what left the pit, J. */
  burntKg: number;
  shellJ: number;
  fireboxJ: number;
  stackJ: number;
  vapourJ: number;
  unburntJ: number;
}

/** Nothing flows yet, and nothing has left. */
export const newFlows = (): Flows => ({
  airKgPerS: 0, airRatio: 1, bedRoot: 1, piecesBurning: 0, volatileW: 0, attachedW: 0, evaporationW: 0, bedFilmW: 0, bedRadiantW: 0,
  zoneRadiantW: 0, woodKgPerS: 0, burntKg: 0, inletK: 0, gas1K: 0, gas2K: 0, gas3K: 0, shellJ: 0, fireboxJ: 0, stackJ: 0, vapourJ: 0, unburntJ: 0,
});
