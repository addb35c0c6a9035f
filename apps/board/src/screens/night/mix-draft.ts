import type { CookSettings } from '@stokehold/domain/contract';
import type { FormReading } from '../../parts/form-reading.js';

/** One wood of the kitchen's wish as it stands in its fields, in per cent of the fire's heat. */
export interface WishDraft {
  readonly species: CookSettings['mix'][number]['species'];
  readonly least: string;
  readonly most: string;
}

const percentOf = (frac: number) => String(Math.round(frac * 1000) / 10);
export const draftOfMix = (mix: CookSettings['mix']): readonly WishDraft[] => mix.map(({ species, leastFrac, mostFrac }) => ({ species, least: percentOf(leastFrac), most: percentOf(mostFrac) }));

/** The name under which a field of a wish is read. */
export const wishField = (nth: number, end: 'least' | 'most') => `mix.${nth}.${end}`;

/** The mix of a draft; undefined, with what is wrong kept by the reading, where no fire could be fed so. An empty least is none, an empty most is all. */
export function mixOfDraft(draft: readonly WishDraft[], reading: FormReading): CookSettings['mix'] | undefined {
  let left = 100;
  const mix = draft.map(({ species, least, most }, nth) => {
    const low = reading.optionalNumber(wishField(nth, 'least'), least, { min: 0, max: left }) ?? 0;
    left = Math.round((left - low) * 10) / 10;
    const high = reading.optionalNumber(wishField(nth, 'most'), most, { min: low, max: 100 }) ?? 100;
    return { species, leastFrac: low / 100, mostFrac: Math.max(low, high) / 100 };
  });
  return draft.every((_, nth) => !(wishField(nth, 'least') in reading.wrongs) && !(wishField(nth, 'most') in reading.wrongs)) ? mix : undefined;
}
