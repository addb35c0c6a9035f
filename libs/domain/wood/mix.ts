import { ok, refuse, requireRange, type Result } from '../quantity/index.js';
import type { Species } from './species.js';

/** The kitchen's wish for one species: of a fire's heat, so much of it. */
export interface SpeciesWish {
  readonly species: Species;
  readonly leastFrac: number;
  readonly mostFrac: number;
}
/** Why no fire can be fed so. */
export type MixRefusal = { readonly code: 'species-twice' | 'least-above-most' | 'leasts-above-whole' };
/** What lies on one fire, with its wish; an empty mix takes any wood. */
export interface CookOnFire {
  readonly massKg: number;
  readonly mix: readonly SpeciesWish[];
}

/** Shares that come of adding fractions. */
const NEARLY = 1e-9;

/** A mix that a fire can be fed with: each species once, no least above its most, the leasts no more than the whole. Held to mix.test.ts. */
export function possibleMix(mix: readonly SpeciesWish[]): Result<readonly SpeciesWish[], MixRefusal> {
  if (new Set(mix.map(({ species }) => species)).size < mix.length) return refuse({ code: 'species-twice' });
  if (mix.some(({ leastFrac, mostFrac }) => leastFrac > mostFrac)) return refuse({ code: 'least-above-most' });
  if (mix.reduce((sum, { leastFrac }) => sum + leastFrac, 0) > 1 + NEARLY) return refuse({ code: 'leasts-above-whole' });
  return ok(mix);
}

/**
 * The wish for one fire from those of all that lie on it: of each species the mean of least and most, weighed by mass, over the cooks
 * that have a wish; one that does not speak of a species takes any of it. Always possible where each wish is. Source: common practice,
 * no source.
 *
 * @param cooks  mass on this pit, 0 or more kg; mixes of `possibleMix`
 * @returns wishes by species. Held to mix.test.ts
 */
export function mixOfFire(cooks: readonly CookOnFire[]): readonly SpeciesWish[] {
  for (const { massKg } of cooks) requireRange('mass (kg)', massKg, 0, 1e5);
  const asking = cooks.filter(({ mix, massKg }) => mix.length > 0 && massKg > 0);
  const allKg = asking.reduce((sum, { massKg }) => sum + massKg, 0);
  const named = [...new Set(asking.flatMap(({ mix }) => mix.map(({ species }) => species)))].sort();
  return named.map((species) => {
    const mean = (bound: 'leastFrac' | 'mostFrac', free: number) =>
      asking.reduce((sum, { massKg, mix }) => sum + massKg * (mix.find((wish) => wish.species === species)?.[bound] ?? free), 0) / allKg;
    const leastFrac = Math.min(1, mean('leastFrac', 0));
    return { species, leastFrac, mostFrac: Math.min(1, Math.max(leastFrac, mean('mostFrac', 1))) };
  });
}
