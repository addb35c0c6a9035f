import { type Bodies, CELLS as CELLS_OF, type MeatTables, SATURATED_PA as SATURATED, SKIN as SKIN_OF, TABLE_FROM_C as FROM_C, TABLE_PER_K as PER_K, TABLE_TO_C } from './bodies.js';

// Numbers that the innermost loop reads stand here as constants of this file: some runners look an import up each time.
const CELLS = CELLS_OF;
const SKIN = SKIN_OF;
const SATURATED_PA = SATURATED;
const TABLE_FROM_C = FROM_C;
const TABLE_PER_K = PER_K;

/** What acts on one member's surface during a step. Plain and reused: the innermost loop makes no objects. */
export interface Surface {
  airC: number;
  /** Convection, W/m2K. */
  draughtWPerM2K: number;
  /** Radiation to walls at the air's temperature, times sigma: W/m2K4. */
  radiantWPerM2K4: number;
  /** Heat from a fire in sight, W/m2. */
  fireWPerM2: number;
  /** Evaporation for each pascal, already times the wetted share: kg/(s m2 Pa). */
  vapourKgPerSM2Pa: number;
  /** Vapour pressure of the air, Pa. */
  vapourPa: number;
  /** Most water the surface holds, kg/m2. */
  storeKgPerM2: number;
  /** Heat capacity beside that of the tables: what learning adjusts. */
  paceFactor: number;
}

/** Stefan-Boltzmann constant, W/m2K4. [CODATA-2018] */
export const STEFAN_BOLTZMANN = 5.670374e-8;
/** Time in which water that meat no longer holds comes out, s. Source: our choice; has little effect. */
const SUPPLY_S = 3600;
/** Weight of the new instant in a step: near the middle, so that a step of minutes has no first-order error. Source: our choice. */
const NEW = 0.55;
const OLD_OVER_NEW = (1 - NEW) / NEW;
const ZERO_C_K = 273.15;

/** Elimination on the way out: x[i] = fixed[i] + follow[i] x[i+1]. */
const follow = new Float64Array(CELLS);
const fixed = new Float64Array(CELLS);

const LAST_PLACE = (TABLE_TO_C - TABLE_FROM_C) * TABLE_PER_K;
const placeOf = (tempC: number) => {
  const place = ((tempC - TABLE_FROM_C) * TABLE_PER_K + 0.5) | 0;
  return place < 0 ? 0 : place > LAST_PLACE ? LAST_PLACE : place;
};

/** Conduction inside, eliminated from the core outwards. Gives back the conductivity at the skin. */
function inside(bodies: Bodies, meat: MeatTables, member: number, stepS: number, paceFactor: number): number {
  const { tempC, outward, inward, surfaceC } = bodies;
  const { conductivityWPerMK, perHeat } = meat;
  const halfM = bodies.halfM[member]!;
  const scale = (NEW * stepS) / (halfM * halfM * paceFactor);
  const row = member * CELLS;
  let here = tempC[row]!;
  let place = placeOf(here);
  let conductivity = conductivityWPerMK[place]!;
  let below = 0;
  let flowIn = 0;
  let followBelow = 0;
  let fixedBelow = 0;
  for (let i = 0; i < CELLS; i++) {
    const last = i === CELLS - 1;
    const above = last ? surfaceC[member]! : tempC[row + i + 1]!;
    const placeAbove = last ? place : placeOf(above);
    const conductivityAbove = conductivityWPerMK[placeAbove]!;
    const face = last ? conductivity : 0.5 * (conductivity + conductivityAbove);
    const capacity = scale * perHeat[place]!;
    const up = capacity * face * outward[row + i]!;
    const down = capacity * flowIn * inward[row + i]!;
    const right = here + OLD_OVER_NEW * (up * (above - here) - down * (here - below));
    const over = 1 / (1 + up + down - down * followBelow);
    followBelow = up * over;
    fixedBelow = (right + down * fixedBelow) * over;
    follow[i] = followBelow;
    fixed[i] = fixedBelow;
    below = here;
    here = above;
    place = placeAbove;
    if (!last) conductivity = conductivityAbove;
    flowIn = face;
  }
  return conductivity;
}

/** Heat that the surface takes and its slope, W/m2 and W/m2K, without evaporation; the slope is kept beside it. */
let slope = 0;
function dryHeat(surface: Surface, tempC: number): number {
  const airK = surface.airC + ZERO_C_K;
  const k = tempC + ZERO_C_K;
  const k3 = k * k * k;
  slope = surface.draughtWPerM2K + 4 * surface.radiantWPerM2K4 * k3;
  return surface.draughtWPerM2K * (surface.airC - tempC) + surface.radiantWPerM2K4 * (airK * airK * airK * airK - k3 * k) + surface.fireWPerM2;
}

const latent = (tempC: number) => 1000 * (2500.9 - 2.3719 * tempC - 0.0005 * tempC * tempC);

/**
 * The surface's own balance, `g ((1 - follow) Ts - fixed) = q(Ts) - m h_fg(Ts)`, by Newton steps. Evaporation takes what the
 * vapour pressure asks for, and no more than the water that stands on the surface. Leaves its rate in `evaporating`.
 */
let evaporating = 0;
function atSurface(surface: Surface, guessC: number, conduct: number, availableKgPerSM2: number): number {
  const keep = conduct * (1 - follow[CELLS - 1]!);
  const from = conduct * fixed[CELLS - 1]!;
  let tempC = guessC;
  for (let i = 0; i < 12; i++) {
    let heat = dryHeat(surface, tempC);
    const scaled = (tempC - TABLE_FROM_C) * TABLE_PER_K;
    const place = scaled < 0 ? 0 : scaled >= LAST_PLACE ? LAST_PLACE - 1 : scaled | 0;
    const rise = SATURATED_PA[place + 1]! - SATURATED_PA[place]!;
    const wanted = surface.vapourKgPerSM2Pa * (SATURATED_PA[place]! + rise * (scaled - place) - surface.vapourPa);
    const heatOf = latent(tempC);
    const wet = wanted < availableKgPerSM2;
    evaporating = wet ? wanted : availableKgPerSM2;
    heat -= evaporating * heatOf;
    const change = (heat + from - keep * tempC) / (keep + slope + (wet ? surface.vapourKgPerSM2Pa * rise * TABLE_PER_K * heatOf : 0));
    tempC += change;
    if (change < 0.01 && change > -0.01) break;
  }
  return tempC;
}

/** Brings the surface into balance with what now acts on it, at no time passing: before the first step, and after a change. Source: the balance above. */
export function settleSurface(bodies: Bodies, meat: MeatTables, member: number, surface: Surface): void {
  follow[CELLS - 1] = 0;
  fixed[CELLS - 1] = bodies.tempC[(member + 1) * CELLS - 1]!;
  const conductivity = meat.conductivityWPerMK[placeOf(fixed[CELLS - 1]!)]!;
  bodies.surfaceC[member] = atSurface(surface, bodies.surfaceC[member]!, conductivity / (bodies.halfM[member]! * SKIN), 0);
}

/** Water that meat no longer holds comes to the surface, kg/m2. */
function supply(bodies: Bodies, meat: MeatTables, member: number, shareOut: number): number {
  const { tempC, waterFrac, volume } = bodies;
  const { heldFrac } = meat;
  let out = 0;
  for (let cell = member * CELLS, end = cell + CELLS; cell < end; cell++) {
    const loose = waterFrac[cell]! - heldFrac[placeOf(tempC[cell]!)]!;
    if (loose <= 0) continue;
    waterFrac[cell] = waterFrac[cell]! - loose * shareOut;
    out += volume[cell]! * loose;
  }
  return out * shareOut * meat.densityKgPerM3 * bodies.halfM[member]!;
}

/**
 * One member, one step: conduction in a body whose area grows as r^n, a surface that takes heat by convection and radiation and
 * gives off water, and water that comes out as meat holds less of it.
 *
 *     rho cp dT/dt = r^-n d/dr (r^n k dT/dr)
 *     at the surface  k dT/dr = h_c (Ta - Ts) + eps sigma (Ta^4 - Ts^4) + fire - m h_fg(Ts)
 *     m = min( phi k_p [p_sat(Ts) - p_air], S/dt ),   dS/dt = R - m,  0 <= S <= S_max, the rest drips
 *     R = (1/A) sum rho V max(0, w - w_held(T)) / tau
 *
 * Finite volumes, nearly centred in time. Source: our model; the holding of water from [FEYISSA-2009].
 * Held to tests/published/food-conduction.test.ts and food-plateau.test.ts
 */
export function stepMember(bodies: Bodies, meat: MeatTables, member: number, stepS: number, surface: Surface): void {
  const { tempC, surfaceC, storedKgPerM2 } = bodies;
  const conductivity = inside(bodies, meat, member, stepS, surface.paceFactor);
  const stored = storedKgPerM2[member]!;
  const skinC = atSurface(surface, surfaceC[member]!, conductivity / (bodies.halfM[member]! * SKIN), stored / stepS);
  surfaceC[member] = skinC;
  const row = member * CELLS;
  let outer = skinC;
  for (let i = CELLS - 1; i >= 0; i--) {
    outer = fixed[i]! + follow[i]! * outer;
    tempC[row + i] = outer;
  }
  const gone = evaporating * stepS;
  const now = stored - gone + supply(bodies, meat, member, stepS < SUPPLY_S ? stepS / SUPPLY_S : 1);
  const kept = now > surface.storeKgPerM2 ? surface.storeKgPerM2 : now;
  bodies.evaporatedKgPerM2[member] = bodies.evaporatedKgPerM2[member]! + gone;
  bodies.dripKgPerM2[member] = bodies.dripKgPerM2[member]! + now - kept;
  storedKgPerM2[member] = kept;
}
