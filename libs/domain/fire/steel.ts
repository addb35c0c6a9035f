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
  const filmW = inputs.fireboxFilmWPerK;
  const steelK = x[member + FIREBOX_K]!;
  f.inletK = (throughW * ambientK + gasW + filmW * steelK) / (throughW + filmW);
  f.lossFactor = Math.exp(x[member + LOG_LOSS]!);
  const lossW = f.lossFactor * outsideWPerM2K(p, steelK, inputs) * p.fireboxAreaM2 * (steelK - ambientK);
  x[member + FIREBOX_K] = steelK + (toSteelW + filmW * (f.inletK - steelK) - lossW) * inputs.fireboxKPerW;
  f.fireboxJ += lossW * stepS;
}

/**
 * Gas in the three thirds: what flows in by share, what flows on, mixing between neighbours, exchange with shell, grates and
 * food; steady within the step because the gas stays a minute only. One tridiagonal solve. Source: heat balance; shares our fit.
 */
export function solveGas(p: FireParameters, x: Float64Array, member: number, inputs: StepInputs, f: Flows): void {
  const through = f.airKgPerS * GAS_HEAT_J_PER_KG_K;
  const mix = p.mixingWPerK * f.airRoot;
  const share1 = Math.min(0.7, Math.max(0.2, p.inletShare1 + p.weakDraftShare * (1 - f.airRatio)));
  const share2 = (1 - share1) * inputs.secondFrac;
  const on2 = share1 * through;
  const on3 = (share1 + share2) * through;
  const walls = mix + inputs.thirdWPerK;
  const low2 = on2 + mix;
  const low3 = on3 + mix;
  const per1 = 1 / (on2 + walls);
  const per2 = 1 / (on3 + walls + mix - low2 * mix * per1);
  const per3 = 1 / (through + walls - low3 * mix * per2);
  const b1 = on2 * f.inletK + fromWalls(p, x, member, inputs);
  const b2 = share2 * through * f.inletK + fromWalls(p, x, member + 1, inputs) + low2 * b1 * per1;
  const b3 = (through - on3) * f.inletK + fromWalls(p, x, member + 2, inputs) + low3 * b2 * per2;
  const { gasK } = f;
  const gas3K = b3 * per3;
  const gas2K = (b2 + mix * gas3K) * per2;
  gasK[2] = gas3K;
  gasK[1] = gas2K;
  gasK[0] = (b1 + mix * gas2K) * per1;
  f.stackJ += through * (gas3K - inputs.ambientK) * inputs.stepS;
}

/** What the walls and the food of a third would give a gas at absolute zero, W: their part of its balance. */
const fromWalls = (p: FireParameters, x: Float64Array, third: number, inputs: StepInputs) =>
  inputs.shellFilmWPerK * x[third + SHELL_K]! + p.innerWPerK * x[third + INNER_K]! + inputs.foodFilmWPerK * x[third + FOOD_K]!;

/** Shell, grates, food and gauges of the thirds for one step. Source: heat balance. */
export function heatThirds(p: FireParameters, x: Float64Array, member: number, inputs: StepInputs, f: Flows): void {
  const { stepS, ambientK, shellFilmWPerK, foodFilmWPerK, shellKPerW, innerKPerW, foodKPerW, followFrac } = inputs;
  const { gasK: thirdsK } = f;
  const { innerWPerK } = p;
  const lossM2 = f.lossFactor * p.shellAreaM2;
  let shellW = 0, foodW = 0;
  let radiantW = f.zoneRadiantW;
  for (let third = 0; third < 3; third++) {
    const gasK = thirdsK[third]!;
    const at = member + third;
    const shellK = x[at + SHELL_K]!;
    const innerK = x[at + INNER_K]!;
    const gaugeK = x[at + GAUGE_K]!;
    const lossW = lossM2 * outsideWPerM2K(p, shellK, inputs) * (shellK - ambientK);
    shellW += lossW;
    x[at + SHELL_K] = shellK + (shellFilmWPerK * (gasK - shellK) - lossW) * shellKPerW;
    x[at + INNER_K] = innerK + (innerWPerK * (gasK - innerK) + radiantW) * innerKPerW;
    if (foodFilmWPerK > 0) {
      const intoFoodW = foodFilmWPerK * (gasK - x[at + FOOD_K]!);
      foodW += intoFoodW;
      x[at + FOOD_K] = x[at + FOOD_K]! + (1 - VAPOUR_FRAC) * intoFoodW * foodKPerW;
    }
    const shownK = GAUGE_GAS_FRAC * gasK + (1 - GAUGE_GAS_FRAC) * shellK + p.gaugeRadiantKPerW * radiantW;
    x[at + GAUGE_K] = gaugeK + (shownK - gaugeK) * followFrac;
    radiantW = 0;
  }
  f.shellJ += shellW * stepS;
  f.vapourJ += VAPOUR_FRAC * foodW * stepS;
}
