import type { Flows, StepInputs } from './flows.js';
import {
  ASH_KG, BED_K, BED_KG, LOG_BURN, PIECE_BURNT, PIECE_CHAR_KG, PIECE_DENSITY, PIECE_HALF_M, PIECE_HEATED, PIECE_KG, PIECE_MOISTURE, pieceAt,
} from './layout.js';
import { type FireParameters, STEFAN_BOLTZMANN } from './parameters.js';

/** Most of the bed's root that a piece lying on it feels. Source: our fit. */
const MOST_BED_ROOT = 1.15;
/** Burnt this far, a split breaks into coals. Source: our fit. */
export const BROKEN = 0.999;
/** Flux at which the rate of the fitted line equals eq. 18-2c, W/m2; line through red oak of [FPL-GTR-190] Table 18-3. */
const CHARRING_FLUX_W_PER_M2 = 33.8e3;

/**
 * Minutes in which white oak chars one millimetre in a standard fire: C = (0.001583 + 0.00318 M) rho + 0.594,
 * [FPL-GTR-190] eq. 18-2c.
 *
 * @param moisture  M, dry basis
 * @param dryKgPerM3  rho, dry mass over the volume at that moisture
 * @returns min/mm. Held to tests/published/fire-charring.test.ts
 */
export const charringMinPerMm = (moisture: number, dryKgPerM3: number) => (0.001583 + 0.00318 * moisture) * dryKgPerM3 + 0.594;

/**
 * Charring speed under another flux, beside that of the standard fire: 0.427 + 0.573 q / 33.8 kW/m2; through red oak of
 * [FPL-GTR-190] Table 18-3 (2.56 min/mm at 18 kW/m2, 1.38 at 55).
 */
export const fluxFactor = (fluxWPerM2: number) => 0.427 + (0.573 * fluxWPerM2) / CHARRING_FLUX_W_PER_M2;

/** Heat of the gases of a kilogram of wood after its char is left behind, (H_w - Y H_c)/(1 - Y), J per kg of gas. */
export const volatileHeatJPerKg = (p: FireParameters) => (p.woodHeatJPerKg - p.charFrac * p.charHeatJPerKg) / (1 - p.charFrac);

/** Share of a split's gases that burns: less when it is wet, less over a small bed. Source: our fit. */
const gasBurnoutFrac = (moisture: number, bedRoot: number) =>
  Math.max(0.55, 0.97 - 1.6 * Math.max(0, moisture - 0.17) - 0.25 * (1 - Math.min(1, bedRoot)));

/**
 * One step of every piece on the grate: heats up, chars, gives off gas and water, drops coals into the bed.
 *
 *     beta = e^aB k_s fluxFactor(q) (m/m0)^0.25 / C        ds/dt = beta theta / R        unburnt mass m_0 (1 - s)^n
 *     d theta/dt = (1 - theta) min(2, q / 40 kW/m2) / (tau_h (1 + 12 max(0, M - 0.08)))
 *
 * Source: our fit around the charring equations of [FPL-GTR-190] ch. 18.
 * Changes the pieces, the bed's mass and ash in `x`, and fills `f`.
 */
export function burnPieces(p: FireParameters, x: Float64Array, member: number, pieces: number, inputs: StepInputs, f: Flows): void {
  const root = Math.sqrt(x[member + BED_KG]! / p.bedKg);
  const bedRoot = Math.min(MOST_BED_ROOT, root);
  f.bedRoot = bedRoot;
  const bedK2 = x[member + BED_K]! * x[member + BED_K]!;
  const bedFlux = p.bedViewFrac * bedRoot * STEFAN_BOLTZMANN * bedK2 * bedK2;
  const flame = p.flameWPerM2 * (0.35 + 0.65 * bedRoot);
  const rate = (Math.exp(x[member + LOG_BURN]!) * p.burnRateFactor * Math.sqrt(Math.sqrt(f.airRatio))) / 60_000;
  const charBurnFrac = (Math.sqrt(f.airRatio) * inputs.stepS) / p.attachedBurnS;
  const gasJPerKg = volatileHeatJPerKg(p);
  let burning = 0;
  let heatedSum = 0;
  for (let i = 0; i < pieces; i++) {
    if (x[pieceAt(member, i) + PIECE_KG]! > 0) {
      burning++;
      heatedSum += x[pieceAt(member, i) + PIECE_HEATED]!;
    }
  }
  f.piecesBurning = burning;
  let woodKg = 0, volatileJ = 0, charBurnKg = 0, waterKg = 0;
  for (let i = 0; burning > 0 && i < pieces; i++) {
    const at = pieceAt(member, i);
    const startKg = x[at + PIECE_KG]!;
    if (!(startKg > 0)) continue;
    const heated = x[at + PIECE_HEATED]!;
    const moisture = x[at + PIECE_MOISTURE]!;
    const flux = bedFlux + flame * Math.min(1, 1.2 * heated) + p.neighbourWPerM2 * (heatedSum - heated);
    const beta = (rate * fluxFactor(flux)) / charringMinPerMm(moisture, x[at + PIECE_DENSITY]!);
    const burnt = x[at + PIECE_BURNT]!;
    const burntNow = Math.min(1, burnt + (beta * heated * inputs.stepS) / x[at + PIECE_HALF_M]!);
    const gone = startKg * (unburnt(p, burnt) - unburnt(p, burntNow));
    const warming = ((1 - heated) * Math.min(2, flux / 40e3) * inputs.stepS) / (p.heatUpS * (1 + 12 * Math.max(0, moisture - 0.08)));
    x[at + PIECE_HEATED] = Math.min(1, heated + warming);
    x[at + PIECE_BURNT] = burntNow;
    const gasJ = gone * (1 - p.charFrac) * gasJPerKg;
    const burnout = gasBurnoutFrac(moisture, root);
    volatileJ += gasJ * burnout;
    f.unburntJ += gasJ * (1 - burnout);
    waterKg += moisture * gone;
    woodKg += gone;
    const char = x[at + PIECE_CHAR_KG]! + p.charFrac * gone;
    const burned = Math.min(char, char * heated * charBurnFrac);
    charBurnKg += burned;
    const falling = (char - burned) * inputs.fallFrac;
    x[at + PIECE_CHAR_KG] = char - burned - falling;
    x[member + BED_KG] = x[member + BED_KG]! + falling;
    if (burntNow >= BROKEN) breakIntoCoals(p, x, member, at);
  }
  x[member + ASH_KG] = x[member + ASH_KG]! + p.ashFrac * woodKg;
  f.woodKgPerS = woodKg / inputs.stepS;
  f.burntKg += woodKg;
  f.volatileW = volatileJ / inputs.stepS;
  f.attachedW = (charBurnKg * p.charHeatJPerKg * p.coalBurnoutFrac) / inputs.stepS;
  f.unburntJ += charBurnKg * p.charHeatJPerKg * (1 - p.coalBurnoutFrac);
  f.evaporationW = (waterKg * p.evaporationJPerKg) / inputs.stepS;
  f.vapourJ += waterKg * p.evaporationJPerKg;
}

/** Share of a piece that is not yet burnt, (1 - s)^n; the reference exponent 1.5 without a power. */
export function unburnt(p: FireParameters, burntFrac: number): number {
  const left = Math.max(0, 1 - burntFrac);
  return p.shrinkExponent === 1.5 ? left * Math.sqrt(left) : left ** p.shrinkExponent;
}

/** What is left of a piece falls into the bed, heat for heat, and its place is free. */
export function breakIntoCoals(p: FireParameters, x: Float64Array, member: number, at: number): void {
  const leftJ = x[at + PIECE_KG]! * unburnt(p, x[at + PIECE_BURNT]!) * p.woodHeatJPerKg;
  x[member + BED_KG] = x[member + BED_KG]! + x[at + PIECE_CHAR_KG]! + leftJ / p.charHeatJPerKg;
  x[at + PIECE_KG] = 0;
  x[at + PIECE_CHAR_KG] = 0;
  x[at + PIECE_BURNT] = 1;
}
