import { clamp } from '../quantity/index.js';
import { CELLS, coreC, tempAt } from './bodies.js';
import { priorOf, REFERENCE, TRAIT_PLACE, TRAITS } from './prior.js';
import { doneS, type Roll, shapeFromTraits } from './roll.js';

/** A trait never becomes surer than this share of what was thought at first: the model leaves out more than its traits say. Source: our choice. */
const SUREST_SHARE = 0.4;
/** A reading pulls no further than this many standard deviations of what was expected. Source: our choice. */
const FURTHEST_SD = 3;

/** What a probe in one member shows, °C: it sits a little off the core. Source: prior.ts. */
export function probeC({ bodies, traits }: Roll, member: number): number {
  const squared = REFERENCE.probeSquared * Math.exp(traits[member * TRAITS.length + TRAIT_PLACE.probe]!);
  return tempAt(bodies, member, Math.sqrt(clamp(squared, 0, 0.5)));
}

/** What each member expects a probe to show, °C. Source: prior.ts. */
export const expectedC = (roll: Roll): Float64Array => Float64Array.from({ length: roll.bodies.members }, (_, m) => probeC(roll, m));

/** Mean and variance of what the members expect. Source: statistics. */
export function momentsOf(values: Float64Array): { readonly mean: number; readonly variance: number } {
  let mean = 0;
  for (const value of values) mean += value / values.length;
  let variance = 0;
  for (const value of values) variance += (value - mean) ** 2 / (values.length - 1);
  return { mean, variance };
}

/** One column of numbers, a row a member, moved by what it has to do with what was seen. */
function moveColumn(values: Float64Array, stride: number, place: number, deviation: Float64Array, gain: number, shrink: number): void {
  const members = deviation.length;
  let mean = 0;
  for (let m = 0; m < members; m++) mean += values[m * stride + place]! / members;
  let cov = 0;
  for (let m = 0; m < members; m++) cov += (values[m * stride + place]! - mean) * deviation[m]!;
  cov /= members - 1;
  for (let m = 0; m < members; m++) values[m * stride + place] = values[m * stride + place]! + cov * (gain - shrink * deviation[m]!);
}

/** Opens a trait that has become surer than it may be. */
function keepOpen(roll: Roll, place: number): void {
  const { members } = roll.bodies;
  const column = Float64Array.from({ length: members }, (_, m) => roll.traits[m * TRAITS.length + place]!);
  const { mean, variance } = momentsOf(column);
  const least = SUREST_SHARE * priorOf(roll.cook, TRAITS[place]!).sd;
  const sd = Math.sqrt(variance);
  if (sd >= least || sd < 1e-9) return;
  for (let m = 0; m < members; m++) roll.traits[m * TRAITS.length + place] = mean + (column[m]! - mean) * (least / sd);
}

/**
 * A reading taken into all members: ensemble square-root filter, without perturbed observations, for the traits, the temperatures
 * inside, the water and the dose alike.
 *
 *     K = cov(x, Hx) / (P + R)      mean += K (y - H mean)      each deviation -= alpha K times its own,
 *     alpha = 1 / (1 + sqrt(R / (P + R)))                                     [WHITAKER-2002] eq. 10 and 13
 *
 * @param seenC  what the probe showed; @param sdK  how far it may be off
 */
export function correct(roll: Roll, step: number, seenC: number, sdK: number): void {
  const { bodies } = roll;
  const expected = expectedC(roll);
  const { mean, variance } = momentsOf(expected);
  if (!(variance > 1e-10)) return;
  const total = variance + sdK * sdK;
  const innovation = clamp(seenC - mean, -FURTHEST_SD * Math.sqrt(total), FURTHEST_SD * Math.sqrt(total));
  const deviation = expected.map((value) => value - mean);
  const gain = innovation / total;
  const shrink = 1 / (1 + Math.sqrt((sdK * sdK) / total)) / total;
  for (let place = 0; place < TRAITS.length; place++) moveColumn(roll.traits, TRAITS.length, place, deviation, gain, shrink);
  for (let cell = 0; cell < CELLS; cell++) {
    moveColumn(bodies.tempC, CELLS, cell, deviation, gain, shrink);
    moveColumn(bodies.waterFrac, CELLS, cell, deviation, gain, shrink);
  }
  for (const column of [bodies.surfaceC, bodies.storedKgPerM2, roll.doseS]) moveColumn(column, 1, 0, deviation, gain, shrink);
  for (let place = 0; place < TRAITS.length; place++) keepOpen(roll, place);
  for (let m = 0; m < bodies.members; m++) keepPhysical(roll, m, step);
}

/** Physical ranges; a member that a reading shows to be short of done is not done. */
function keepPhysical(roll: Roll, member: number, step: number): void {
  const { bodies, meat } = roll;
  for (let place = 0; place < TRAITS.length; place++) {
    const { mean, sd } = priorOf(roll.cook, TRAITS[place]!);
    const at = member * TRAITS.length + place;
    roll.traits[at] = clamp(roll.traits[at]!, mean - 4 * sd, mean + 4 * sd);
  }
  for (let cell = member * CELLS; cell < (member + 1) * CELLS; cell++) {
    bodies.tempC[cell] = clamp(bodies.tempC[cell]!, -2, 180);
    bodies.waterFrac[cell] = clamp(bodies.waterFrac[cell]!, 0.05, meat.waterFrac);
  }
  bodies.surfaceC[member] = clamp(bodies.surfaceC[member]!, -2, 200);
  bodies.storedKgPerM2[member] = clamp(bodies.storedKgPerM2[member]!, 0, 3);
  roll.doseS[member] = Math.max(0, roll.doseS[member]!);
  shapeFromTraits(roll, member);
  const core = coreC(bodies, member);
  roll.lastCoreC[member] = core;
  const { coreTempC, tenderHoursAt90 } = roll.cook.cut.done;
  if (coreTempC !== undefined && core < coreTempC) roll.coreDoneS[member] = Infinity;
  if (tenderHoursAt90 !== undefined && roll.doseS[member]! < tenderHoursAt90 * 3600) roll.tenderDoneS[member] = Infinity;
  if (doneS(roll, member) > roll.endS[step]!) roll.lostFrac[member] = 0;
}
