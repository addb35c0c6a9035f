import { clamp } from '../quantity/index.js';
import { bodiesAt, type Bodies, coreC, LONGEST_STEP_S, lostFrac, type MeatTables, shapeMember, stepEnds } from './bodies.js';
import { halfThicknessM } from './cut.js';
import type { FoodCook } from './cook.js';
import { SEA_LEVEL_PA, vapourPressurePa, vapourTransfer } from './humid-air.js';
import { drawTraits, REFERENCE, TRAIT_PLACE, TRAITS, type Trait } from './prior.js';
import { settleSurface, STEFAN_BOLTZMANN, stepMember, type Surface } from './step.js';
import { tablesOf } from './tables.js';

/** No cook is followed longer than this, s. */
export const LONGEST_COOK_S = 36 * 3600;
/** Cooler than this the tenderness dose does not count, °C: below it is a thousandth of the rate at 90 °C. */
const DOSE_FROM_C = 42;
/** Rise that makes tenderness come ten times as fast, K. Source: our fit to two reported cooks (85 °C with 3 h standing, 95 °C without); plausible from 10 to 20. */
export const TENDER_Z_K = 16;

/** All members of one cook on their way; changed in place by the functions of this file and by corrections. */
export interface Roll {
  readonly cook: FoodCook;
  readonly meat: MeatTables;
  readonly bodies: Bodies;
  readonly traits: Float64Array;
  readonly steps: number;
  /** Ends of the steps, seconds from going on; the first is 0. */
  readonly endS: Float64Array;
  /** Air at the middle of each step, and how far it may be off. */
  readonly airC: Float64Array;
  readonly airSdK: Float64Array;
  /** Kept core temperatures after each step, a row of `steps + 1` for each member. */
  readonly kept: Float32Array;
  /** Seconds from going on until each rule was met; Infinity while not. */
  readonly coreDoneS: Float64Array;
  readonly tenderDoneS: Float64Array;
  readonly doseS: Float64Array;
  readonly wrappedS: Float64Array;
  /** Share of the raw mass lost as vapour and drip when done. */
  readonly lostFrac: Float64Array;
  readonly lastCoreC: Float64Array;
}

const traitOf = (roll: Roll, member: number, trait: Trait) => roll.traits[member * TRAITS.length + TRAIT_PLACE[trait]]!;

/** The air at an instant, the nearest value before the first and after the last. Source: none needed. */
export function airAt(air: FoodCook['air'], at: number, of: ArrayLike<number> = air.tempC): number {
  const place = clamp((at - air.from) / air.stepS, 0, of.length - 1);
  const below = Math.floor(place);
  const above = Math.min(of.length - 1, below + 1);
  return of[below]! + (place - below) * (of[above]! - of[below]!);
}

/** Middle half thickness of a cook's pieces, m. Source: cut.ts. */
export const halfOf = (cook: FoodCook) => (cook.thicknessM === undefined ? halfThicknessM(cook.cut.body, cook.pieceKg) : cook.thicknessM / 2);

/** Size and shape of a member from its traits. Source: prior.ts. */
export function shapeFromTraits(roll: Roll, member: number): void {
  const exponent = clamp(roll.cook.cut.body.exponent + traitOf(roll, member, 'shape'), 0, 2);
  shapeMember(roll.bodies, member, halfOf(roll.cook) * Math.exp(traitOf(roll, member, 'thick')), exponent);
}

/** All members as they go on, with guessed traits or given ones. Source: prior.ts. */
export function startRoll(cook: FoodCook, given?: Float64Array): Roll {
  const members = cook.members ?? 200;
  const traits = given ?? drawTraits(cook, members);
  const endS = stepEnds(halfOf(cook), LONGEST_COOK_S);
  const steps = endS.length - 1;
  const startC = cook.startTempC ?? cook.cut.startTempC;
  const startOf = Float64Array.from({ length: members }, (_, m) => startC + traits[m * TRAITS.length + TRAIT_PLACE.start]!);
  const meat = tablesOf(cook.cut.composition);
  const over = (of: ArrayLike<number> | undefined) =>
    Float64Array.from({ length: steps }, (_, step) => (of ? airAt(cook.air, cook.onAt + 0.5 * (endS[step]! + endS[step + 1]!), of) : 1.5));
  const each = (value: number) => new Float64Array(members).fill(value);
  const roll: Roll = {
    cook, meat, bodies: bodiesAt(startOf, meat), traits, steps, endS, airC: over(cook.air.tempC), airSdK: over(cook.air.sdK), kept: new Float32Array(members * (steps + 1)),
    coreDoneS: each(Infinity), tenderDoneS: each(Infinity), doseS: each(0), wrappedS: each(Infinity), lostFrac: each(0), lastCoreC: startOf,
  };
  const surface = emptySurface();
  for (let m = 0; m < members; m++) {
    shapeFromTraits(roll, m);
    actOn(roll, m, surface, 0);
    settleSurface(roll.bodies, meat, m, surface);
    roll.kept[m * (steps + 1)] = startOf[m]!;
  }
  return roll;
}

const emptySurface = (): Surface => ({ airC: 0, draughtWPerM2K: 0, radiantWPerM2K4: 0, fireWPerM2: 0, vapourKgPerSM2Pa: 0, vapourPa: 0, storeKgPerM2: 0, paceFactor: 1 });

/** A flat side that sees the fire is about a quarter of a piece's surface. Source: geometry. */
const SIDE_FRAC = 0.25;

/** What acts on a member now, wrapped or not. */
function actOn(roll: Roll, member: number, surface: Surface, step: number): void {
  const pressurePa = roll.cook.pressurePa ?? SEA_LEVEL_PA;
  const factor = (trait: Trait) => Math.exp(traitOf(roll, member, trait));
  const kind = roll.wrappedS[member]! < Infinity ? (roll.cook.wrap?.how === 'at' ? roll.cook.wrap.kind : roll.cook.cut.wrap?.kind) : undefined;
  const vapourFrac = kind === 'foil' ? REFERENCE.foilVapourFrac : kind === 'paper' ? REFERENCE.paperVapourFrac : 1;
  const emissivity = kind === 'foil' ? REFERENCE.foilEmissivityFrac * factor('wrapBlack') : REFERENCE.emissivityFrac * factor('radiant');
  const draught = REFERENCE.draughtWPerM2K * factor('draught');
  surface.draughtWPerM2K = draught;
  surface.radiantWPerM2K4 = clamp(emissivity, 0.05, 1) * STEFAN_BOLTZMANN;
  surface.fireWPerM2 = SIDE_FRAC * (roll.cook.fireWPerM2 ?? 0);
  surface.vapourKgPerSM2Pa = vapourFrac * clamp(REFERENCE.wetFrac * factor('wet'), 0.02, 1) * vapourTransfer(draught, pressurePa);
  surface.vapourPa = vapourPressurePa(clamp(REFERENCE.humidityRatio * factor('humid'), 0.001, 0.5), pressurePa);
  surface.storeKgPerM2 = REFERENCE.storeKgPerM2 * factor('store');
  surface.paceFactor = factor('pace');
  surface.airC = roll.airC[step]!;
}

/** When a member is wrapped, seconds after it went on: at a time, or when its core gets there; Infinity never. */
function wrapRuleOf(roll: Roll, member: number): { readonly atS: number; readonly atCoreC: number } {
  const { wrap, onAt, cut } = roll.cook;
  if (wrap?.how === 'never' || (wrap?.how !== 'at' && !cut.wrap)) return { atS: Infinity, atCoreC: Infinity };
  if (wrap?.how === 'at') return { atS: wrap.at - onAt, atCoreC: Infinity };
  return { atS: Infinity, atCoreC: cut.wrap!.atCoreC + traitOf(roll, member, 'wrapAt') };
}

/** Keeps the first instant at which the done rule is met, by a straight line within the stretch from `fromS`. */
function noteDone(roll: Roll, member: number, fromS: number, stepS: number, core: number): void {
  const { coreTempC, tenderHoursAt90 } = roll.cook.cut.done;
  const before = roll.lastCoreC[member]!;
  if (coreTempC !== undefined && core >= coreTempC && roll.coreDoneS[member] === Infinity)
    roll.coreDoneS[member] = fromS + stepS * (core > before ? clamp((coreTempC - before) / (core - before), 0, 1) : 1);
  if (tenderHoursAt90 !== undefined && core > DOSE_FROM_C) {
    const dose = stepS * 10 ** ((0.5 * (core + before) - 90) / TENDER_Z_K);
    const left = tenderHoursAt90 * 3600 - roll.doseS[member]!;
    if (dose >= left && roll.tenderDoneS[member] === Infinity) roll.tenderDoneS[member] = fromS + (stepS * Math.max(0, left)) / dose;
    roll.doseS[member] = roll.doseS[member]! + dose;
  }
}

/** Seconds after going on at which a member is done by its whole rule; Infinity while it is not. Source: the cut's rule. */
export function doneS(roll: Roll, member: number): number {
  const { coreTempC, tenderHoursAt90 } = roll.cook.cut.done;
  const core = coreTempC === undefined ? 0 : roll.coreDoneS[member]!;
  return Math.max(core, tenderHoursAt90 === undefined ? 0 : roll.tenderDoneS[member]!);
}

/** So many of the longest steps are one stride into the future: a forecast's air does not change within minutes as a fire does. Source: our choice; moves done times by less than a hundredth. */
const STRIDE_AHEAD = 2;

/**
 * Takes one member through steps `from` to `to`; ahead it stops when it is done. Source: step.ts.
 *
 * @param way  'seen': step by step, to meet what was read; 'ahead': into the future, in longer strides, until done
 * @returns the step it stopped before
 */
export function rollMember(roll: Roll, member: number, from: number, to: number, way: 'seen' | 'ahead', surface: Surface): number {
  const { bodies, meat, endS, airC, airSdK } = roll;
  actOn(roll, member, surface, from);
  const wrap = wrapRuleOf(roll, member);
  const biasK = traitOf(roll, member, 'airBias');
  const lean = traitOf(roll, member, 'airLean');
  let step = from;
  while (step < to && !(way === 'ahead' && doneS(roll, member) < Infinity)) {
    const next = Math.min(to, way === 'ahead' && endS[step + 1]! - endS[step]! >= LONGEST_STEP_S ? step + STRIDE_AHEAD : step + 1);
    const stepS = endS[next]! - endS[step]!;
    surface.airC = 0.5 * (airC[step]! + airC[next - 1]!) + biasK + lean * 0.5 * (airSdK[step]! + airSdK[next - 1]!);
    stepMember(bodies, meat, member, stepS, surface);
    const core = coreC(bodies, member);
    noteDone(roll, member, endS[step]!, stepS, core);
    keepCores(roll, member, step, next, core);
    if (roll.wrappedS[member] === Infinity && (core >= wrap.atCoreC || endS[next]! >= wrap.atS)) {
      roll.wrappedS[member] = endS[next]!;
      actOn(roll, member, surface, step);
    }
    step = next;
  }
  roll.lostFrac[member] = lostFrac(bodies, member, meat);
  return step;
}

/** The core at the ends of the steps of a stride, straight between. */
function keepCores({ lastCoreC, kept, endS, steps }: Roll, member: number, from: number, to: number, core: number): void {
  const before = lastCoreC[member]!;
  const row = member * (steps + 1);
  for (let step = from + 1; step < to; step++) kept[row + step] = before + ((core - before) * (endS[step]! - endS[from]!)) / (endS[to]! - endS[from]!);
  kept[row + to] = core;
  lastCoreC[member] = core;
}

/** The last step that ends at or before a time, seconds from going on; 0 to `steps`. Source: none needed. */
export function stepAt(roll: Roll, atS: number): number {
  let low = 0;
  let high = roll.steps;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (roll.endS[middle]! <= atS) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** A surface to work with; one serves a whole ensemble. Source: none needed. */
export const workSurface = emptySurface;
