import { MINUTE_S, requireRange, type PersonId } from '../quantity/index.js';

/** What one person had of one night, or of several together. */
export interface Share {
  readonly personId: PersonId;
  /** Time there and not on break, s. */
  readonly thereS: number;
  readonly workedS: number;
  /** Of it, work that nobody likes, s. */
  readonly unpleasantS: number;
  readonly walkedS: number;
}
export interface LongShare extends Share {
  readonly nights: number;
}
/** What somebody has ahead of the others, s. */
export interface AheadOf {
  readonly workedS: number;
  readonly unpleasantS: number;
}

/** More than this is not carried into a night: it would be unfair in the other direction. Source: common practice, no source. */
const MOST_CARRIED_S = 30 * MINUTE_S;

/**
 * What each had of several nights, by person's id. A night in which somebody was not there counts for nothing.
 *
 * @param nights  the shares of each night; times 0 s or more
 * @returns sums, and over how many nights. Held to libs/domain/shift/fairness.test.ts
 */
export function sharesTogether(nights: readonly (readonly Share[])[]): readonly LongShare[] {
  const sums = new Map<PersonId, LongShare>();
  for (const { personId, thereS, workedS, unpleasantS, walkedS } of nights.flat()) {
    requireRange('time there', thereS, 0, 48 * 3600);
    if (thereS === 0) continue;
    const sum = sums.get(personId) ?? { personId, nights: 0, thereS: 0, workedS: 0, unpleasantS: 0, walkedS: 0 };
    sums.set(personId, {
      personId, nights: sum.nights + 1, thereS: sum.thereS + thereS, workedS: sum.workedS + workedS, unpleasantS: sum.unpleasantS + unpleasantS, walkedS: sum.walkedS + walkedS,
    });
  }
  return [...sums.values()].sort((one, other) => (one.personId < other.personId ? -1 : 1));
}

/**
 * How much more each of these people has done than their share, so that a night can begin with it and even it out:
 *
 *     excess(i) = worked(i) - there(i) x (sum of worked / sum of there)        each against the mean of those who come tonight
 *     carried(i) = min(30 min, excess(i) - least excess)
 *
 * and the same for unpleasant work. Somebody without other nights has an excess of 0. Source: common practice, no source.
 *
 * @param shares  what each had of the last nights
 * @param ids     those who work tonight
 * @returns whole seconds, 0 for whoever has done least. Held to libs/domain/shift/fairness.test.ts
 */
export function carriedOver(shares: readonly Share[], ids: readonly PersonId[]): ReadonlyMap<PersonId, AheadOf> {
  const own = shares.filter(({ personId }) => ids.includes(personId));
  const [worked, unpleasant] = [aheadBy(own, ids, ({ workedS }) => workedS), aheadBy(own, ids, ({ unpleasantS }) => unpleasantS)];
  return new Map(ids.map((id) => [id, { workedS: worked.get(id) ?? 0, unpleasantS: unpleasant.get(id) ?? 0 }]));
}

function aheadBy(shares: readonly Share[], ids: readonly PersonId[], of: (share: Share) => number): ReadonlyMap<PersonId, number> {
  const sum = (value: (share: Share) => number) => shares.reduce((all, share) => all + value(share), 0);
  const mean = sum(of) / Math.max(1, sum(({ thereS }) => thereS));
  const excess = new Map(ids.map((id) => {
    const share = shares.find(({ personId }) => personId === id);
    return [id, share ? of(share) - mean * share.thereS : 0] as const;
  }));
  const least = Math.min(...excess.values());
  return new Map([...excess].map(([id, more]) => [id, Math.min(MOST_CARRIED_S, Math.round(more - least))]));
}
