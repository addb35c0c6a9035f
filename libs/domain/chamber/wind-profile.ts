import { requireRange } from '../quantity/index.js';

/** Roughness of open grass, m: a forecast is for open ground. Source: common practice, no source. */
export const OPEN_GRASS_M = 0.03;
/** A forecast's wind is for this height, m. Source: common practice, no source. */
export const FORECAST_HEIGHT_M = 10;
/** Where fireboxes and stacks stand, m. */
export const PIT_HEIGHT_M = 2;

/**
 * Wind at a height beside the wind at 10 m over the same ground.
 *
 *     u(z) / u10 = ln(z / z0) / ln(10 / z0)                                        [ASHRAE-F16]
 *
 * @param heightM  z, 0.5 to 100 m, above the roughness
 * @param roughnessM  z0, 0.001 to 0.5 m
 * @returns a fraction. Held to tests/published/chamber-wind.test.ts
 */
export function windAtHeightFrac(heightM: number, roughnessM: number): number {
  requireRange('heightM', heightM, 0.5, 100);
  requireRange('roughnessM', roughnessM, 0.001, 0.5);
  return Math.max(0, Math.log(heightM / roughnessM)) / Math.log(FORECAST_HEIGHT_M / roughnessM);
}
