import { volatileHeatJPerKg } from './burn.js';
import type { FireParameters } from './parameters.js';
import { GRAVITY_M_PER_S2 } from './parameters.js';
import type { FirePosition, Surroundings } from './pit.js';
import { requireSurroundings } from './pit.js';
import { seriesAreaM2 } from './pit-shape.js';

/** What is the same for every member during one step: made once a span, for the step is the innermost loop of the house. */
export interface StepInputs {
  stepS: number;
  perStepS: number;
  /** What of the attached char falls, and how far a gauge follows, within the step. */
  fallFrac: number;
  followFrac: number;
  /** Warming per watt within the step, K/W: firebox, bed, shell and grates of a third, food; 0 where there is none. */
  fireboxKPerW: number;
  bedKPerW: number;
  shellKPerW: number;
  innerKPerW: number;
  foodKPerW: number;
  readonly ambientK: number;
  readonly airKgPerM3: number;
  /** C_d A sqrt(2 rho), times sqrt(pressure) gives the flow. */
  readonly flowPerRootPa: number;
  readonly draftPa: number;
  readonly windPa: number;
  readonly outsideFilmWPerM2K: number;
  readonly wetFactor: number;
  readonly foodLoadFrac: number;
  /** Heat of the gases of a kilogram of wood, J per kg of dry wood. */
  readonly gasJPerKg: number;
  /** Conductances between gas and wall: firebox steel; shell, food and all together of one third, W/K. */
  readonly fireboxFilmWPerK: number;
  readonly shellFilmWPerK: number;
  readonly foodFilmWPerK: number;
  readonly thirdWPerK: number;
  /** Of the gas that does not enter the first third, so much enters the second. */
  readonly secondFrac: number;
  /** 0.5 by the door, 1 in the middle, 1.5 at the throat. */
  readonly nearness: number;
}

/** Density of air, rho = 353.05 / T at sea level: the gas law with 101 325 Pa and 287 J/kgK. Source: physics. */
const AIR_KG_K_PER_M3 = 353.05;
/** What a screen before the firebox lets through of the wind's push. Source: our fit. */
const SCREENED_FRAC = 0.25;
/** Less food than this is none: so little would warm through within one step. */
const LEAST_FOOD_FRAC = 1e-3;
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
  const share = alongMPerS > 0 ? p.windInFrac * (air.screened === true ? SCREENED_FRAC : 1) : -p.windBackFrac;
  const area = seriesAreaM2(air.doorGapM * p.doorWidthM + p.leakAreaM2, p.stackAreaM2 * air.damperFrac);
  const foodLoadFrac = around.foodLoadFrac < LEAST_FOOD_FRAC ? 0 : around.foodLoadFrac;
  const shellFilmWPerK = p.shellFilmWPerM2K * p.shellAreaM2;
  const foodFilmWPerK = p.foodWPerK * foodLoadFrac;
  const inputs = {
    stepS: 0, perStepS: 0, fallFrac: 0, followFrac: 0, fireboxKPerW: 0, bedKPerW: 0, shellKPerW: 0, innerKPerW: 0, foodKPerW: 0,
    ambientK,
    airKgPerM3,
    flowPerRootPa: p.orifice * area * Math.sqrt(2 * airKgPerM3),
    draftPa: airKgPerM3 * GRAVITY_M_PER_S2 * p.stackHeightM,
    windPa: 0.5 * airKgPerM3 * alongMPerS * alongMPerS * share,
    outsideFilmWPerM2K: p.outsideFilmWPerM2K + 0.8 * weather.windMPerS ** 0.7,
    wetFactor: 1 + p.rainFactor * weather.rainFrac,
    foodLoadFrac,
    gasJPerKg: (1 - p.charFrac) * volatileHeatJPerKg(p),
    fireboxFilmWPerK: p.fireboxFilmWPerM2K * p.fireboxAreaM2,
    shellFilmWPerK,
    foodFilmWPerK,
    thirdWPerK: shellFilmWPerK + p.innerWPerK + foodFilmWPerK,
    secondFrac: p.inletShare2 / (1 - p.inletShare1),
    nearness: NEARNESS[position],
  };
  setStep(p, inputs, stepS);
  return inputs;
}

/** The same surroundings for a step of another length: the first, and the last, shorter one of a span. */
export function setStep(p: FireParameters, inputs: StepInputs, stepS: number): void {
  inputs.stepS = stepS;
  inputs.perStepS = 1 / stepS;
  inputs.fallFrac = 1 - Math.exp(-stepS / p.fallS);
  inputs.followFrac = 1 - Math.exp(-stepS / p.gaugeLagS);
  inputs.fireboxKPerW = stepS / p.fireboxHeatJPerK;
  inputs.bedKPerW = stepS / p.bedHeatJPerK;
  inputs.shellKPerW = stepS / p.shellHeatJPerK;
  inputs.innerKPerW = stepS / p.innerHeatJPerK;
  inputs.foodKPerW = inputs.foodLoadFrac > 0 ? stepS / (p.foodHeatJPerK * inputs.foodLoadFrac) : 0;
}

/** What flows between the parts during one step: filled by one part, read by the next; and the running account of where the heat went. */
export interface Flows {
  airKgPerS: number;
  airRatio: number;
  /** sqrt(m/m0). */
  airRoot: number;
  /** e^aL: how much more heat the walls lose than the model says. */
  lossFactor: number;
  piecesBurning: number;
  volatileW: number;
  attachedW: number;
  evaporationW: number;
  bedFilmW: number;
  bedRadiantW: number;
  zoneRadiantW: number;
  /** Dry wood that went to gas and char in this step, kg/s. */
  woodKgPerS: number;
  /** Inlet gas and the gas of the three thirds, K. */
  inletK: number;
  readonly gasK: Float64Array;
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
  airKgPerS: 0, airRatio: 1, airRoot: 1, lossFactor: 1, piecesBurning: 0, volatileW: 0, attachedW: 0, evaporationW: 0, bedFilmW: 0, bedRadiantW: 0,
  zoneRadiantW: 0, woodKgPerS: 0, inletK: 0, gasK: new Float64Array(3), burntKg: 0, shellJ: 0, fireboxJ: 0, stackJ: 0, vapourJ: 0, unburntJ: 0,
});
