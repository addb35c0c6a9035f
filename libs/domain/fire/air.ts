import type { Flows, StepInputs } from './flows.js';
import { GAUGE_K, LOG_AIR, SHELL_K } from './layout.js';
import type { FireParameters } from './parameters.js';

/** A gauge shows three parts gas and one part steel. Source: our fit. */
export const GAUGE_GAS_FRAC = 0.75;

/**
 * Air through the pit: m = e^aA C_d A sqrt(2 rho dp), at least a leak. The stack gas is read back from what the last
 * third's gauge shows: it lags by a minute and a half, which is as long as the gas takes anyway.
 *
 * @returns nothing; fills flow (kg/s) and its ratio to the reference flow in `f`
 */
export function drawAir(p: FireParameters, x: Float64Array, member: number, inputs: StepInputs, f: Flows): void {
  const stackK = (x[member + GAUGE_K + 2]! - (1 - GAUGE_GAS_FRAC) * x[member + SHELL_K + 2]!) / GAUGE_GAS_FRAC;
  const draftPa = stackK > inputs.ambientK ? inputs.draftPa * (1 - inputs.ambientK / stackK) : 0;
  const drivingPa = Math.max(0, draftPa + inputs.windPa);
  f.airKgPerS = Math.max(p.leastAirKgPerS, Math.exp(x[member + LOG_AIR]!) * inputs.flowPerRootPa * Math.sqrt(drivingPa));
  f.airRatio = f.airKgPerS / p.airKgPerS;
  f.airRoot = Math.sqrt(f.airRatio);
}

/**
 * Draft of a stack of hot gas, Pa: dp = 0.0342 p H (1/To - 1/Ti). [ASHRAE-F16]
 *
 * @param stack.heightM    H, 0 to 100 m
 * @param stack.outsideK   To
 * @param stack.insideK    Ti
 * @param stack.pressurePa p, 101 325 unless said
 * @returns Pa. Held to tests/published/fire-draft.test.ts
 */
export function draftPa(stack: { readonly heightM: number; readonly outsideK: number; readonly insideK: number; readonly pressurePa?: number }): number {
  const GRAVITY_OVER_GAS_CONSTANT = 9.80665 / 287.05;
  return GRAVITY_OVER_GAS_CONSTANT * (stack.pressurePa ?? 101_325) * stack.heightM * (1 / stack.outsideK - 1 / stack.insideK);
}

/**
 * Flow through an opening, kg/s: m = C_d A sqrt(2 rho dp), rho of the gas that passes it. [ASHRAE-F16]
 *
 * @returns kg/s. Held to tests/published/fire-draft.test.ts
 */
export function openingFlowKgPerS(opening: { readonly orifice: number; readonly areaM2: number; readonly gasKgPerM3: number; readonly pressurePa: number }): number {
  return opening.orifice * opening.areaM2 * Math.sqrt(2 * opening.gasKgPerM3 * opening.pressurePa);
}
