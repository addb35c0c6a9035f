import { blackWPerM2 } from './burn.js';
import type { Flows, StepInputs } from './flows.js';
import { ASH_KG, BED_K, BED_KG, FIREBOX_K, LOG_COAL } from './layout.js';
import type { FireParameters } from './parameters.js';

/** A bed colder than this goes out, one clearly hotter burns on; width of the change, K. Source: our fit. */
const GLOW_K = 680;
const GLOW_WIDTH_K = 30;

/**
 * One step of the loose coal bed.
 *
 *     r_c = e^aC R_c (m_b/m_b0)^(2/3) sqrt(m/m0) / (1 + m_ash/3 kg) / (1 + e^-((T_b - 680)/30))
 *     C_g dT_b/dt = eta_c H_c r_c - E_b - h_b sqrt(m/m0) (A_b + 0.01 m2)(T_b - T_a)
 *     E_b = eps sigma A_b (T_b^4 - T_fb^4),   A_b = A_b0 (m_b/m_b0)^(2/3)
 *
 * Source: our fit; char burning in air at the rate that oxygen reaches it, heat of char 29 to 33 MJ/kg [FAO-41].
 * Changes the bed's mass and temperature in `x`; leaves its radiation and film heat in `f`.
 */
export function burnBed(p: FireParameters, x: Float64Array, member: number, inputs: StepInputs, f: Flows): void {
  const massKg = x[member + BED_KG]!;
  const bedK = x[member + BED_K]!;
  const fireboxK = x[member + FIREBOX_K]!;
  const root = Math.cbrt(massKg / p.bedKg);
  const size = p.bedExponent === 2 / 3 ? root * root : (massKg / p.bedKg) ** p.bedExponent;
  const airRoot = p.airExponent === 0.5 ? f.airRoot : f.airRatio ** p.airExponent;
  const glow = 1 / (1 + Math.exp(-(bedK - GLOW_K) / GLOW_WIDTH_K));
  const rate = (Math.exp(x[member + LOG_COAL]!) * p.bedBurnKgPerS * size * airRoot * glow) / (1 + x[member + ASH_KG]! / p.ashKg);
  const burnedKg = Math.min(rate * inputs.stepS, 0.5 * massKg);
  const heatW = (burnedKg * p.charHeatJPerKg) / inputs.stepS;
  const areaM2 = p.bedAreaM2 * size;
  f.bedRadiantW = p.bedEmissivity * areaM2 * (blackWPerM2(bedK) - blackWPerM2(fireboxK));
  f.bedFilmW = p.bedFilmWPerM2K * airRoot * (areaM2 + p.bedEdgeAreaM2) * (bedK - inputs.ambientK);
  x[member + BED_KG] = massKg - burnedKg;
  x[member + BED_K] = bedK + (p.coalBurnoutFrac * heatW - f.bedRadiantW - f.bedFilmW) * inputs.bedKPerW;
  f.unburntJ += (1 - p.coalBurnoutFrac) * heatW * inputs.stepS;
}
