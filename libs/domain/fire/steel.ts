import { GAUGE_GAS_FRAC } from './air.js';
import type { Flows, StepInputs } from './flows.js';
import { FIREBOX_K, FOOD_K, GAUGE_K, INNER_K, LOG_LOSS, SHELL_K } from './layout.js';
import { type FireParameters, GAS_HEAT_J_PER_KG_K, STEFAN_BOLTZMANN } from './parameters.js';

/** Half of the heat into food boils its juices off instead of warming it. Source: our fit. */
const VAPOUR_FRAC = 0.5;

/** Outside loss of a wall, W/m2K: film with wind and linearised radiation, wet by rain. Radiation is exact: (T^2 + Ta^2)(T + Ta). */
const outsideWPerM2K = (p: FireParameters, wallK: number, inputs: StepInputs) =>
  inputs.wetFactor *
  (inputs.outsideFilmWPerM2K + p.outsideEmissivity * STEFAN_BOLTZMANN * (wallK * wallK + inputs.ambientK * inputs.ambientK) * (wallK + inputs.ambientK));

/**
 * Firebox for one step: splits the radiation of bed and flame, warms gas and steel; leaves the inlet gas temperature and
 * the radiant heat on zone 1 in `f`. Source: heat balance; shares our fit.
 */
export function heatFirebox(p: FireParameters, x: Float64Array, member: number, inputs: StepInputs, f: Flows): void {
  const { stepS, ambientK } = inputs;
  const flameRadiantW = p.flameRadiantFrac * f.volatileW;
  const toSplitsW = 0.3 * Math.min(1, 0.5 * f.piecesBurning) * f.bedRadiantW;
  const flameToZoneW = p.flameToZoneFrac * inputs.nearness * flameRadiantW;
  const bedToZoneW = p.bedToZoneFrac * inputs.nearness * f.bedRadiantW;
  f.zoneRadiantW = flameToZoneW + bedToZoneW;
  const toSteelW = f.bedRadiantW + flameRadiantW - toSplitsW - f.zoneRadiantW;
  const gasW = f.volatileW - flameRadiantW + f.attachedW - f.evaporationW + f.bedFilmW + toSplitsW;
  const throughW = f.airKgPerS * GAS_HEAT_J_PER_KG_K;
  const filmW = p.fireboxFilmWPerM2K * p.fireboxAreaM2;
  const steelK = x[member + FIREBOX_K]!;
  f.inletK = (throughW * ambientK + gasW + filmW * steelK) / (throughW + filmW);
  const lossW = Math.exp(x[member + LOG_LOSS]!) * outsideWPerM2K(p, steelK, inputs) * p.fireboxAreaM2 * (steelK - ambientK);
  x[member + FIREBOX_K] = steelK + ((toSteelW + filmW * (f.inletK - steelK) - lossW) * stepS) / p.fireboxHeatJPerK;
  f.fireboxJ += lossW * stepS;
}

/**
 * Gas in the three thirds: what flows in by share, what flows on, mixing between neighbours, exchange with shell, grates and
 * food; steady within the step because the gas stays a minute only. One tridiagonal solve. Source: heat balance; shares our fit.
 */
export function solveGas(p: FireParameters, x: Float64Array, member: number, inputs: StepInputs, f: Flows): void {
  const through = f.airKgPerS * GAS_HEAT_J_PER_KG_K;
  const mix = p.mixingWPerK * Math.sqrt(f.airRatio);
  const share1 = Math.min(0.7, Math.max(0.2, p.inletShare1 + p.weakDraftShare * (1 - f.airRatio)));
  const share2 = ((1 - share1) * p.inletShare2) / (1 - p.inletShare1);
  const share3 = 1 - share1 - share2;
  const film = p.shellFilmWPerM2K * p.shellAreaM2;
  const food = p.foodWPerK * inputs.foodLoadFrac;
  const exchange = film + p.innerWPerK + food;
  const source = (third: number) =>
    film * x[member + SHELL_K + third]! + p.innerWPerK * x[member + INNER_K + third]! + food * x[member + FOOD_K + third]!;
  const on2 = share1 * through;
  const on3 = (share1 + share2) * through;
  const d1 = share1 * through + mix + exchange;
  const d2 = on2 + share2 * through + 2 * mix + exchange;
  const d3 = on3 + share3 * through + mix + exchange;
  const b1 = share1 * through * f.inletK + source(0);
  const b2 = share2 * through * f.inletK + source(1);
  const b3 = share3 * through * f.inletK + source(2);
  const low2 = on2 + mix;
  const low3 = on3 + mix;
  const e2 = d2 - (low2 * mix) / d1;
  const c2 = b2 + (low2 * b1) / d1;
  const e3 = d3 - (low3 * mix) / e2;
  f.gas3K = (b3 + (low3 * c2) / e2) / e3;
  f.gas2K = (c2 + mix * f.gas3K) / e2;
  f.gas1K = (b1 + mix * f.gas2K) / d1;
  f.stackJ += through * (f.gas3K - inputs.ambientK) * inputs.stepS;
}

/** Shell, grates, food and gauges of the thirds for one step. Source: heat balance. */
export function heatThirds(p: FireParameters, x: Float64Array, member: number, inputs: StepInputs, f: Flows): void {
  const { stepS, ambientK } = inputs;
  const film = p.shellFilmWPerM2K * p.shellAreaM2;
  const food = p.foodWPerK * inputs.foodLoadFrac;
  const lossFactor = Math.exp(x[member + LOG_LOSS]!) * p.shellAreaM2;
  for (let third = 0; third < 3; third++) {
    const gasK = third === 0 ? f.gas1K : third === 1 ? f.gas2K : f.gas3K;
    const shell = member + SHELL_K + third;
    const inner = member + INNER_K + third;
    const foodAt = member + FOOD_K + third;
    const gauge = member + GAUGE_K + third;
    const radiantW = third === 0 ? f.zoneRadiantW : 0;
    const shellK = x[shell]!;
    const lossW = lossFactor * outsideWPerM2K(p, shellK, inputs) * (shellK - ambientK);
    f.shellJ += lossW * stepS;
    x[shell] = shellK + ((film * (gasK - shellK) - lossW) * stepS) / p.shellHeatJPerK;
    x[inner] = x[inner]! + ((p.innerWPerK * (gasK - x[inner]!) + radiantW) * stepS) / p.innerHeatJPerK;
    if (food > 0) {
      const intoFoodW = food * (gasK - x[foodAt]!);
      const vapourW = intoFoodW * VAPOUR_FRAC;
      f.vapourJ += vapourW * stepS;
      x[foodAt] = x[foodAt]! + ((intoFoodW - vapourW) * stepS) / (p.foodHeatJPerK * inputs.foodLoadFrac);
    }
    const shownK = GAUGE_GAS_FRAC * gasK + (1 - GAUGE_GAS_FRAC) * shellK + p.gaugeRadiantKPerW * radiantW;
    x[gauge] = x[gauge]! + (shownK - x[gauge]!) * inputs.followFrac;
  }
}
