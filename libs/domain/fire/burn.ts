import type { Flows, StepInputs } from './flows.js';
import {
  ASH_KG, BED_K, BED_KG, LOG_BURN, PIECE_BURNT, PIECE_CHAR_KG, PIECE_DENSITY, PIECE_HALF_M, PIECE_HEATED, PIECE_KG, PIECE_MOISTURE, PIECE_NUMBERS, pieceAt,
} from './layout.js';
import { type FireParameters, STEFAN_BOLTZMANN } from './parameters.js';

/** Most of the bed's root that a piece lying on it feels. Source: our fit. */
const MOST_BED_ROOT = 1.15;
/** Burnt this far, a split breaks into coals. Source: our fit. */
const BROKEN = 0.999;
/** Flux that heats a piece up in its time, per W/m2. Source: our fit. */
const PER_IGNITION_FLUX = 1 / 40e3;
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
export const fluxFactor = (fluxWPerM2: number) => 0.427 + (0.573 / CHARRING_FLUX_W_PER_M2) * fluxWPerM2;

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
  const { stepS, perStepS, gasJPerKg, fallFrac } = inputs;
  const { charFrac, heatUpS, neighbourWPerM2 } = p;
  const root = Math.sqrt(x[member + BED_KG]! / p.bedKg);
  const felt = Math.min(MOST_BED_ROOT, root);
  const bedFlux = p.bedViewFrac * felt * blackWPerM2(x[member + BED_K]!);
  const flameFlux = p.flameWPerM2 * (0.35 + 0.65 * felt);
  const charringM = Math.exp(x[member + LOG_BURN]!) * p.burnRateFactor * Math.sqrt(f.airRoot) * (stepS / 60_000);
  const charBurnFrac = (f.airRoot * stepS) / p.attachedBurnS;
  const heatedSum = countBurning(x, member, pieces, f);
  const end = pieceAt(member, pieces);
  let woodKg = 0, waterKg = 0, attachedKg = 0, volatileJ = 0;
  for (let at = pieceAt(member, 0); at < end; at += PIECE_NUMBERS) {
    const startKg = x[at + PIECE_KG]!;
    if (!(startKg > 0)) continue;
    const heated = x[at + PIECE_HEATED]!;
    const moisture = x[at + PIECE_MOISTURE]!;
    const burnt = x[at + PIECE_BURNT]!;
    const flux = bedFlux + flameFlux * Math.min(1, 1.2 * heated) + neighbourWPerM2 * (heatedSum - heated);
    const slowness = charringMinPerMm(moisture, x[at + PIECE_DENSITY]!) * x[at + PIECE_HALF_M]!;
    const burntNow = Math.min(1, burnt + (charringM * fluxFactor(flux) * heated) / slowness);
    const goneKg = startKg * (unburnt(p, burnt) - unburnt(p, burntNow));
    const charKg = x[at + PIECE_CHAR_KG]! + charFrac * goneKg;
    const burnedKg = charKg * Math.min(1, heated * charBurnFrac);
    const fallingKg = (charKg - burnedKg) * fallFrac;
    x[at + PIECE_HEATED] = Math.min(1, heated + ((1 - heated) * Math.min(2, flux * PER_IGNITION_FLUX) * stepS) / (heatUpS * dampness(moisture)));
    x[at + PIECE_BURNT] = burntNow;
    x[at + PIECE_CHAR_KG] = charKg - burnedKg - fallingKg;
    x[member + BED_KG] = x[member + BED_KG]! + fallingKg;
    woodKg += goneKg;
    waterKg += moisture * goneKg;
    attachedKg += burnedKg;
    volatileJ += goneKg * gasJPerKg * gasBurnoutFrac(moisture, root);
    if (burntNow >= BROKEN) breakIntoCoals(p, x, member, at);
  }
  x[member + ASH_KG] = x[member + ASH_KG]! + p.ashFrac * woodKg;
  f.woodKgPerS = woodKg * perStepS;
  f.burntKg += woodKg;
  f.volatileW = volatileJ * perStepS;
  f.attachedW = attachedKg * p.charHeatJPerKg * p.coalBurnoutFrac * perStepS;
  f.unburntJ += woodKg * gasJPerKg - volatileJ + attachedKg * p.charHeatJPerKg * (1 - p.coalBurnoutFrac);
  f.evaporationW = waterKg * p.evaporationJPerKg * perStepS;
  f.vapourJ += waterKg * p.evaporationJPerKg;
}

/** What a black body radiates, sigma T^4. [CODATA-2018] for sigma. */
export const blackWPerM2 = (bodyK: number) => STEFAN_BOLTZMANN * (bodyK * bodyK) * (bodyK * bodyK);

/** How much longer a damp piece takes to heat up. Source: our fit. */
const dampness = (moisture: number) => 1 + 12 * Math.max(0, moisture - 0.08);

/** Counts the pieces that burn into `f`. @returns how warm they are together: 1 for each that is aflame all round */
function countBurning(x: Float64Array, member: number, pieces: number, f: Flows): number {
  let burning = 0;
  let heatedSum = 0;
  const end = pieceAt(member, pieces);
  for (let at = pieceAt(member, 0); at < end; at += PIECE_NUMBERS) {
    if (!(x[at + PIECE_KG]! > 0)) continue;
    burning++;
    heatedSum += x[at + PIECE_HEATED]!;
  }
  f.piecesBurning = burning;
  return heatedSum;
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
