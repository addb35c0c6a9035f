import { randomStream } from '../quantity/index.js';
import { type FoodCook } from './cook.js';
import type { LearnedKey } from './learn.js';

/** What differs from piece to piece and from pit to pit; each member of the ensemble holds one guess of every one. */
export const TRAITS = ['pace', 'thick', 'shape', 'wet', 'draught', 'radiant', 'humid', 'store', 'airBias', 'airLean', 'start', 'probe', 'wrapAt', 'wrapBlack'] as const;
export type Trait = (typeof TRAITS)[number];
/** Place of each trait in a member's row. Source: none needed. */
export const TRAIT_PLACE = Object.fromEntries(TRAITS.map((trait, place) => [trait, place])) as Readonly<Record<Trait, number>>;

/**
 * How far each may be off before anything is read: standard deviation of the log of a factor, or of a shift where the name says K
 * or C. Together they give a finish within about +-15 % four times in five, the honesty that the model's thin evidence allows.
 * Source: our choice; ranges of the parameters as in the docstring of `REFERENCE`.
 */
export const SPREAD: Readonly<Record<Trait, number>> = {
  pace: 0.08, thick: 0.045, shape: 0.07, wet: 0.2, draught: 0.25, radiant: 0.06, humid: 0.4, store: 0.5, airBias: 2, airLean: 1, start: 1.2, probe: 0.6, wrapAt: 1.5, wrapBlack: 0.2,
};
/** Thickness measured with a ruler is better known than thickness from a weight. Source: our choice. */
const MEASURED_THICK = 0.02;

/**
 * The middle of each: draught h_c 8 W/m2K (5 to 15), emissivity 0.9 (0.8 to 0.95), wetted share 0.17 (0.12 to 0.25), humidity ratio of
 * pit air 0.03 (0.01 to 0.15), water that stands on the surface 0.5 kg/m2 (0.1 to 2), a probe 0.14 of the half thickness off the core,
 * paper lets through 0.1 of the vapour (0.05 to 0.15), foil none and takes radiation as a body of emissivity 0.65 (0.4 to 0.9).
 * Source: our fit to logged cooks of the trade's literature; held to tests/published/food-plateau.test.ts
 */
export const REFERENCE = {
  draughtWPerM2K: 8, emissivityFrac: 0.9, wetFrac: 0.17, humidityRatio: 0.03, storeKgPerM2: 0.5, probeSquared: 0.02, paperVapourFrac: 0.1, foilVapourFrac: 0, foilEmissivityFrac: 0.65,
  paperEmissivityFrac: 0.9,
} as const;

/** Mean and variance of the log factor that learning gives for a cook: the cut's effect and the pit's together. */
const taught = (cook: FoodCook, key: LearnedKey) => {
  if (!cook.learned) return undefined;
  const { cut, pit } = cook.learned;
  return { mean: cut.of[key].mean + pit.of[key].mean, variance: cut.of[key].variance + pit.of[key].variance };
};
/** Share of a trait's variance that is this piece's own and stays however many cooks have been seen. Source: our choice. */
export const OWN_SHARE = 0.5;

/** What a trait is thought to be before the first reading. Source: `SPREAD`, and what earlier cooks taught. */
export function priorOf(cook: FoodCook, trait: Trait): { readonly mean: number; readonly sd: number } {
  const usual = trait === 'thick' && cook.thicknessM !== undefined ? MEASURED_THICK : SPREAD[trait];
  const lesson = trait === 'pace' || trait === 'wet' || trait === 'thick' ? taught(cook, trait) : undefined;
  if (!lesson) return { mean: 0, sd: usual };
  return { mean: lesson.mean, sd: Math.sqrt(OWN_SHARE * usual * usual + lesson.variance) };
}

/**
 * Guesses of every trait for all members, in mirrored pairs so that their mean is right at any number of members. Source: our choice.
 *
 * @returns rows of `TRAITS.length`
 */
export function drawTraits(cook: FoodCook, members: number): Float64Array {
  const random = randomStream(cook.seed);
  const traits = new Float64Array(members * TRAITS.length);
  TRAITS.forEach((trait, place) => {
    const { mean, sd } = priorOf(cook, trait);
    for (let m = 0; m < members; m += 2) {
      const z = random.normal();
      traits[m * TRAITS.length + place] = mean + sd * z;
      if (m + 1 < members) traits[(m + 1) * TRAITS.length + place] = mean - sd * z;
    }
  });
  return traits;
}
