import { clamp, requireRange } from '../quantity/index.js';

/** Standard pressure at sea level, Pa. [ASHRAE-F17] ch. 1. */
export const SEA_LEVEL_PA = 101_325;
/** Mass of water over that of dry air, mole for mole. [ASHRAE-F17] ch. 1. */
const WATER_OVER_AIR = 0.621945;
const ZERO_C_K = 273.15;

/**
 * Pressure of saturated vapour over water.
 *
 *     ln p = -5.8002206e3/T + 1.3914993 - 4.8640239e-2 T + 4.1764768e-5 T^2 - 1.4452093e-8 T^3 + 6.5459673 ln T
 *
 * Hyland and Wexler, in [ASHRAE-F17] ch. 1. Held to tests/published/food-humid-air.test.ts
 *
 * @param tempC  -20 to 200 °C; below 0 °C over supercooled water
 * @returns Pa
 */
export function satPressurePa(tempC: number): number {
  requireRange('temperature (°C)', tempC, -20, 200);
  const t = tempC + ZERO_C_K;
  return Math.exp(-5.8002206e3 / t + 1.3914993 - 4.8640239e-2 * t + 4.1764768e-5 * t * t - 1.4452093e-8 * t ** 3 + 6.5459673 * Math.log(t));
}

/**
 * Heat that evaporates water, `2500.9 - 2.3719 t - 0.0005 t^2` kJ/kg. Source: our fit to steam tables (40 °C 2406, 60 °C 2358, 80 °C
 * 2308, 100 °C 2256 kJ/kg, from memory), within 0.15 % from 0 to 100 °C.
 *
 * @param tempC  0 to 150 °C
 * @returns J/kg. Held to tests/published/food-humid-air.test.ts
 */
export const latentHeatJPerKg = (tempC: number) => 1000 * (2500.9 - 2.3719 * tempC - 0.0005 * tempC * tempC);

/** Kilograms of vapour with each kilogram of dry air, from the vapour's pressure. `W = 0.621945 p/(P - p)`, [ASHRAE-F17] ch. 1. @param vapourPa below the air's pressure */
export function humidityRatio(vapourPa: number, pressurePa = SEA_LEVEL_PA): number {
  requireRange('vapour pressure (Pa)', vapourPa, 0, 0.999 * pressurePa);
  return (WATER_OVER_AIR * vapourPa) / (pressurePa - vapourPa);
}

/** The way back: `p = P W/(0.621945 + W)`, [ASHRAE-F17] ch. 1. @param ratio 0 to 5 */
export function vapourPressurePa(ratio: number, pressurePa = SEA_LEVEL_PA): number {
  requireRange('humidity ratio', ratio, 0, 5);
  return (pressurePa * ratio) / (WATER_OVER_AIR + ratio);
}

/** Where a falling function crosses zero between two temperatures, °C. */
function bisect(lowC: number, highC: number, excess: (tempC: number) => number): number {
  let low = lowC;
  let high = highC;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (excess(middle) > 0) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** Where water boils at this pressure, °C. Source: the vapour curve above. @param pressurePa 50 to 110 kPa */
export function boilingC(pressurePa = SEA_LEVEL_PA): number {
  requireRange('pressure (Pa)', pressurePa, 50_000, 110_000);
  return bisect(70, 110, (tempC) => satPressurePa(tempC) - pressurePa);
}

/** Temperature at which this air's vapour would condense, °C. Source: the vapour curve above. @param ratio above 0.0015 */
export function dewPointC(ratio: number, pressurePa = SEA_LEVEL_PA): number {
  const vapourPa = vapourPressurePa(ratio, pressurePa);
  return bisect(-20, boilingC(pressurePa), (tempC) => satPressurePa(tempC) - vapourPa);
}

/**
 * Thermodynamic wet bulb: the temperature t* that solves
 *
 *     W = [(2501 - 2.326 t*) Ws(t*) - 1.006 (t - t*)] / (2501 + 1.86 t - 4.186 t*)            [ASHRAE-F17] ch. 1
 *
 * Pit air is hotter than boiling water, so the search ends just below the boiling point: past it Ws turns negative and a
 * search runs to the wrong end.
 *
 * @param tempC  dry bulb, 0 to 200 °C; @param ratio  its humidity ratio
 * @returns °C. Held to tests/published/food-humid-air.test.ts
 */
export function wetBulbC(tempC: number, ratio: number, pressurePa = SEA_LEVEL_PA): number {
  requireRange('dry bulb (°C)', tempC, 0, 200);
  const ratioAt = (wetC: number) => {
    const sat = humidityRatio(satPressurePa(wetC), pressurePa);
    return ((2501 - 2.326 * wetC) * sat - 1.006 * (tempC - wetC)) / (2501 + 1.86 * tempC - 4.186 * wetC);
  };
  return bisect(-15, Math.min(tempC, boilingC(pressurePa) - 0.05), (wetC) => ratioAt(wetC) - ratio);
}

/** Heat of moist air, `1.006 t + W (2501 + 1.86 t)` kJ for each kilogram of dry air, [ASHRAE-F17] ch. 1; here in J. @param tempC -20 to 200 */
export const moistAirJPerKg = (tempC: number, ratio: number) => 1000 * (1.006 * tempC + ratio * (2501 + 1.86 * tempC));

/**
 * Pressure of the standard atmosphere, `101 325 (1 - 2.25577e-5 Z)^5.2559` Pa, [ASHRAE-F17] ch. 1.
 *
 * @param heightM  -400 to 4000 m above the sea
 */
export function standardPressurePa(heightM: number): number {
  requireRange('height (m)', heightM, -400, 4000);
  return SEA_LEVEL_PA * (1 - 2.25577e-5 * heightM) ** 5.2559;
}

/** Gas constant of air, J/kgK, its heat capacity, J/kgK, and molar values for water, from memory. */
const AIR_J_PER_KG_K = 287.05;
const AIR_HEAT_J_PER_KG_K = 1010;
const WATER_KG_PER_MOL = 0.018015;
const GAS_J_PER_MOL_K = 8.314;
/** Heat spreads in air 0.87 times as fast as vapour; to the power 2/3. [CENGEL-14]. */
const LEWIS_POWER = 0.87 ** (2 / 3);

/**
 * Vapour that leaves a wet surface for each pascal that it is over the air's, from the heat that the same air brings to it.
 *
 *     k_p = h_c M_w / (rho cp Le^(2/3) R T),  rho T = P / 287.05         Chilton and Colburn, [CENGEL-14]
 *
 * The film's temperature drops out: its density falls as it rises.
 *
 * @param draughtWPerM2K  h_c, 0 to 200
 * @returns kg/(s m2 Pa). Held to tests/published/food-humid-air.test.ts
 */
export const vapourTransfer = (draughtWPerM2K: number, pressurePa = SEA_LEVEL_PA) =>
  (clamp(draughtWPerM2K, 0, 200) * WATER_KG_PER_MOL * AIR_J_PER_KG_K) / (AIR_HEAT_J_PER_KG_K * LEWIS_POWER * GAS_J_PER_MOL_K * pressurePa);
