import { HOUR_S } from '@stokehold/domain/quantity';
import type { FairnessView, ShareView } from '@stokehold/domain/contract';

/** One line of the picture: how much of one thing somebody had, a night or an hour, and how far that is of the most. */
export interface FairBar {
  readonly what: 'work' | 'unpleasant' | 'walk';
  readonly beforeS: number | undefined;
  readonly tonightS: number | undefined;
  /** Parts of the greatest of all, 0 to 1. */
  readonly beforeFrac: number;
  readonly tonightFrac: number;
}
export interface FairPerson {
  readonly personId: string;
  readonly nights: number;
  readonly bars: readonly FairBar[];
}

type Of = (share: ShareView, nights: number) => number;
/** Work is told by the hour somebody was there, so that a short shift is no small share; the rest by the night. */
const OF: { readonly [W in FairBar['what']]: Of } = {
  work: ({ workedS, thereS }) => (thereS > 0 ? (workedS / thereS) * HOUR_S : 0),
  unpleasant: ({ unpleasantS }, nights) => unpleasantS / Math.max(1, nights),
  walk: ({ walkedS }, nights) => walkedS / Math.max(1, nights),
};
const WHATS = ['work', 'unpleasant', 'walk'] as const;

/** What each had, as bars that can be held against each other: one scale for each kind of share. */
export function fairPeople({ people }: Pick<FairnessView, 'people'>): readonly FairPerson[] {
  const valueOf = (what: FairBar['what'], share: ShareView | null, nights: number) => (share ? OF[what](share, nights) : undefined);
  const greatest = new Map(WHATS.map((what) => [what, Math.max(1, ...people.flatMap(({ before, tonight, nights }) => [valueOf(what, before, nights) ?? 0, valueOf(what, tonight, 1) ?? 0]))] as const));
  return people.map(({ personId, nights, before, tonight }) => ({
    personId,
    nights,
    bars: WHATS.map((what) => {
      const [beforeS, tonightS] = [valueOf(what, before, nights), valueOf(what, tonight, 1)];
      const most = greatest.get(what) ?? 1;
      return { what, beforeS, tonightS, beforeFrac: (beforeS ?? 0) / most, tonightFrac: (tonightS ?? 0) / most };
    }),
  }));
}
