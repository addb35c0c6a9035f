import { drawAir } from './air.js';
import { burnBed } from './bed.js';
import { burnPieces, unburnt } from './burn.js';
import type { Flows, StepInputs } from './flows.js';
import {
  BED_K, BED_KG, FIREBOX_K, FOOD_K, INNER_K, PIECE_BURNT, PIECE_CHAR_KG, PIECE_KG, pieceAt, SHELL_K, THIRDS,
} from './layout.js';
import type { FireParameters } from './parameters.js';
import { heatFirebox, heatThirds, solveGas } from './steel.js';

/** Step of estimator and forecast, s: against 2 s it changes the chamber by less than 0.6 °F rms, see fire-energy.test.ts. */
export const STEP_S = 60;

/**
 * One step of one fire: air, pieces, bed, firebox, gas, steel, in the order in which the heat goes.
 * Changes the member that begins at `member` in `x`; allocates nothing.
 */
export function stepFire(p: FireParameters, x: Float64Array, member: number, pieces: number, inputs: StepInputs, f: Flows): void {
  drawAir(p, x, member, inputs, f);
  burnPieces(p, x, member, pieces, inputs, f);
  burnBed(p, x, member, inputs, f);
  heatFirebox(p, x, member, inputs, f);
  solveGas(p, x, member, inputs, f);
  heatThirds(p, x, member, inputs, f);
}

/** Energy held in a fire beside that of its parts at ambient temperature, J: fuel, bed, steel, food. For the balance. */
export function storedJ(p: FireParameters, x: Float64Array, member: number, pieces: number, ambientK: number, foodLoadFrac: number): number {
  let stored = x[member + BED_KG]! * p.charHeatJPerKg + p.bedHeatJPerK * (x[member + BED_K]! - ambientK);
  stored += p.fireboxHeatJPerK * (x[member + FIREBOX_K]! - ambientK);
  for (let third = 0; third < THIRDS; third++) {
    stored += p.shellHeatJPerK * (x[member + SHELL_K + third]! - ambientK);
    stored += p.innerHeatJPerK * (x[member + INNER_K + third]! - ambientK);
    stored += p.foodHeatJPerK * foodLoadFrac * (x[member + FOOD_K + third]! - ambientK);
  }
  for (let i = 0; i < pieces; i++) {
    const at = pieceAt(member, i);
    stored += x[at + PIECE_KG]! * unburnt(p, x[at + PIECE_BURNT]!) * p.woodHeatJPerKg + x[at + PIECE_CHAR_KG]! * p.charHeatJPerKg;
  }
  return stored;
}
