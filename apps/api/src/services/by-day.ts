import type { EpochS } from '@stokehold/domain/quantity';

interface Stretch {
  readonly from: EpochS;
  readonly until: EpochS;
}
const DAY_S = 86_400;
const dayOf = (at: number) => Math.floor(at / DAY_S);

/** Stretches of time by the days that they touch, UTC: those of one night of a year are found without looking at all of them. */
export class ByDay<T extends Stretch> {
  private readonly days = new Map<number, T[]>();

  constructor(all: readonly T[]) {
    for (const one of all) {
      for (let day = dayOf(one.from); day <= dayOf(one.until); day += 1) {
        const there = this.days.get(day);
        if (there) there.push(one);
        else this.days.set(day, [one]);
      }
    }
  }

  /** Those that share more than an instant with a stretch, in order of their beginning. */
  touching({ from, until }: Stretch): readonly T[] {
    const found = new Set<T>();
    for (let day = dayOf(from); day <= dayOf(until); day += 1) for (const one of this.days.get(day) ?? []) if (one.from < until && one.until > from) found.add(one);
    return [...found].sort((a, b) => a.from - b.from);
  }
}
