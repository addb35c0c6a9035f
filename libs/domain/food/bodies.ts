import { clamp } from '../quantity/index.js';
import type { Composition } from './cut.js';
import { satPressurePa } from './humid-air.js';
import { meatAt, waterHeldFrac } from './meat.js';

/** Cells from the core to the surface: with the time step below, the errors of tests/published/food-conduction.test.ts. */
export const CELLS = 14;
/** Time step as a share of the square of the half thickness over the diffusivity. */
const STEP_FOURIER = 0.0045;

/** Tables over temperature, so that a step looks up instead of reckoning, begin here, °C. Source: our choice. */
export const TABLE_FROM_C = -10;
/** And end here, °C. Source: our choice. */
export const TABLE_TO_C = 220;
/** Places a kelvin. Source: our choice. */
export const TABLE_PER_K = 4;
const PLACES = (TABLE_TO_C - TABLE_FROM_C) * TABLE_PER_K + 2;

/** What one kind of meat does at each temperature. */
export interface MeatTables {
  readonly densityKgPerM3: number;
  readonly waterFrac: number;
  readonly conductivityWPerMK: Float64Array;
  /** One over the heat capacity of a volume, m3 K/J. */
  readonly perHeat: Float64Array;
  /** Water still held, kg per kg of raw meat. */
  readonly heldFrac: Float64Array;
}
const overTemps = (value: (tempC: number) => number) => Float64Array.from({ length: PLACES }, (_, place) => value(TABLE_FROM_C + place / TABLE_PER_K));

/** Pressure of saturated vapour at each place of the tables, Pa. Source: humid-air.ts. */
export const SATURATED_PA = overTemps((tempC) => satPressurePa(clamp(tempC, -10, 200)));

/** The tables of a composition. Source: meat.ts, its fits held at their ends beyond 0 and 150 °C. */
export function meatTables(composition: Composition): MeatTables {
  const { waterFrac, proteinFrac, fatFrac, ashFrac } = composition;
  const water = waterFrac / (waterFrac + proteinFrac + fatFrac + ashFrac);
  const inFit = (tempC: number) => meatAt(composition, clamp(tempC, 0, 150));
  return {
    densityKgPerM3: inFit(20).densityKgPerM3,
    waterFrac: water,
    conductivityWPerMK: overTemps((tempC) => inFit(tempC).conductivityWPerMK),
    perHeat: overTemps((tempC) => 1 / (inFit(tempC).densityKgPerM3 * inFit(tempC).heatJPerKgK)),
    heldFrac: overTemps((tempC) => water * waterHeldFrac(tempC)),
  };
}
/** The same with one conductivity and one heat capacity at all temperatures: for checks against closed forms. Source: none needed. */
export const plainTables = (conductivityWPerMK: number, diffusivityM2PerS: number): MeatTables => ({
  densityKgPerM3: 1000, waterFrac: 0.7, conductivityWPerMK: overTemps(() => conductivityWPerMK), perHeat: overTemps(() => diffusivityM2PerS / conductivityWPerMK), heldFrac: overTemps(() => 0.7),
});

/** Many possible pieces side by side, each a row of cells from the core out. Plain numbers, changed in place by step.ts alone. */
export interface Bodies {
  readonly members: number;
  readonly tempC: Float64Array;
  /** Water in each cell, kg per kg of raw meat. */
  readonly waterFrac: Float64Array;
  /** For each member: */
  readonly surfaceC: Float64Array;
  readonly halfM: Float64Array;
  readonly exponent: Float64Array;
  /** Water standing on the surface, given off to the air, dripped: kg per m2 of surface. */
  readonly storedKgPerM2: Float64Array;
  readonly evaporatedKgPerM2: Float64Array;
  readonly dripKgPerM2: Float64Array;
  /** For each cell: face area over (volume x distance) towards the surface and towards the core, and volume, all for half thickness 1. */
  readonly outward: Float64Array;
  readonly inward: Float64Array;
  readonly volume: Float64Array;
}

/** Faces and nodes from the core (0) to the surface (1); a little finer outside. Source: our choice, held to tests/published/food-conduction.test.ts */
const FACES = Float64Array.from({ length: CELLS + 1 }, (_, i) => 1 - (1 - i / CELLS) ** 1.15);
const NODES = Float64Array.from({ length: CELLS }, (_, i) => (FACES[i]! + FACES[i + 1]!) / 2);
/** Distance from the last node to the surface, for half thickness 1. Source: the grid above. */
export const SKIN = 1 - NODES[CELLS - 1]!;
/** Weight of the second cell in the core's temperature: a parabola through the first two. Source: geometry. */
const CORE_CURVE = NODES[0]! ** 2 / (NODES[1]! ** 2 - NODES[0]! ** 2);

/** All members of one temperature through and through. Source: none needed. @param startC for each member */
export function bodiesAt(startC: ArrayLike<number>, meat: MeatTables): Bodies {
  const members = startC.length;
  const cells = () => new Float64Array(members * CELLS);
  const each = () => new Float64Array(members);
  const bodies: Bodies = {
    members, tempC: cells(), waterFrac: cells().fill(meat.waterFrac), surfaceC: Float64Array.from(startC), halfM: each(), exponent: each(),
    storedKgPerM2: each(), evaporatedKgPerM2: each(), dripKgPerM2: each(), outward: cells(), inward: cells(), volume: cells(),
  };
  for (let i = 0; i < members * CELLS; i++) bodies.tempC[i] = startC[Math.floor(i / CELLS)]!;
  return bodies;
}

const LOG_FACES = FACES.map(Math.log);

/** Gives a member its size and shape; area grows with r^exponent. Source: geometry. */
export function shapeMember(bodies: Bodies, member: number, halfM: number, exponent: number): void {
  bodies.halfM[member] = halfM;
  const row = member * CELLS;
  if (bodies.exponent[member] === exponent && bodies.volume[row]! > 0) return;
  bodies.exponent[member] = exponent;
  let volumeWithin = 0;
  let areaBelow = 0;
  for (let i = 0; i < CELLS; i++) {
    // Made whole for every member at every correction: one exponential a face.
    const area = Math.exp(exponent * LOG_FACES[i + 1]!);
    const volumeTo = (area * FACES[i + 1]!) / (exponent + 1);
    const volume = volumeTo - volumeWithin;
    bodies.volume[row + i] = volume;
    bodies.inward[row + i] = i === 0 ? 0 : areaBelow / (volume * (NODES[i]! - NODES[i - 1]!));
    bodies.outward[row + i] = area / (volume * (i === CELLS - 1 ? SKIN : NODES[i + 1]! - NODES[i]!));
    volumeWithin = volumeTo;
    areaBelow = area;
  }
}

/** Temperature at the very core, °C. Source: geometry, a parabola through the two innermost cells. */
export function coreC(bodies: Bodies, member: number): number {
  const first = bodies.tempC[member * CELLS]!;
  return first + CORE_CURVE * (first - bodies.tempC[member * CELLS + 1]!);
}

/** Temperature a share of the way from the core to the surface. Source: geometry, straight between nodes. @param placeFrac 0 to 1 */
export function tempAt(bodies: Bodies, member: number, placeFrac: number): number {
  const row = member * CELLS;
  if (placeFrac <= NODES[0]!) return coreC(bodies, member) + (bodies.tempC[row]! - coreC(bodies, member)) * (placeFrac / NODES[0]!) ** 2;
  for (let i = 1; i < CELLS; i++) {
    if (placeFrac > NODES[i]!) continue;
    const share = (placeFrac - NODES[i - 1]!) / (NODES[i]! - NODES[i - 1]!);
    return bodies.tempC[row + i - 1]! + share * (bodies.tempC[row + i]! - bodies.tempC[row + i - 1]!);
  }
  return bodies.tempC[row + CELLS - 1]! + ((placeFrac - NODES[CELLS - 1]!) / SKIN) * (bodies.surfaceC[member]! - bodies.tempC[row + CELLS - 1]!);
}

/** Mean over the volume, °C. Source: geometry. */
export function meanC(bodies: Bodies, member: number): number {
  let heat = 0;
  let volume = 0;
  for (let cell = member * CELLS; cell < (member + 1) * CELLS; cell++) {
    heat += bodies.volume[cell]! * bodies.tempC[cell]!;
    volume += bodies.volume[cell]!;
  }
  return heat / volume;
}

/** Share of the raw mass that has evaporated or dripped. Source: the balance of water of step.ts. */
export const lostFrac = (bodies: Bodies, member: number, meat: MeatTables) =>
  ((bodies.evaporatedKgPerM2[member]! + bodies.dripKgPerM2[member]!) * (bodies.exponent[member]! + 1)) / (meat.densityKgPerM3 * bodies.halfM[member]!);

/** Steps grow with the time that has passed since the food went on, as what happens inside becomes slower: this share of it. Source: our choice. */
const STEP_GROWTH = 1 / 40;
/** No step is longer, s: the fire changes within minutes. Source: our choice. */
export const LONGEST_STEP_S = 240;

/**
 * Ends of the steps of a cook, seconds from going on: the first `0.0045 L^2/alpha` long with alpha 1.3e-7 m2/s, later ones longer.
 * Source: our choice, held to tests/published/food-conduction.test.ts
 *
 * @param halfM  half thickness, m; @param lastS  how far they reach
 */
export function stepEnds(halfM: number, lastS: number): Float64Array {
  const first = clamp(Math.floor((STEP_FOURIER * halfM * halfM) / 1.3e-7), 2, LONGEST_STEP_S);
  const ends = [0];
  for (let at = 0; at < lastS; ) {
    at += clamp(Math.floor(at * STEP_GROWTH), first, LONGEST_STEP_S);
    ends.push(at);
  }
  return Float64Array.from(ends);
}
