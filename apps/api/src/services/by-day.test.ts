import { type EpochS, randomStream } from '@stokehold/domain/quantity';
import { expect, it } from 'vitest';
import { ByDay } from './by-day.js';

it('finds what a look at every stretch finds, whatever the stretches', () => {
  const random = randomStream(41);
  const stretch = (longest: number) => {
    const from = random.below(20 * 86_400);
    return { from: from as EpochS, until: (from + random.below(longest)) as EpochS };
  };
  const all = Array.from({ length: 300 }, () => stretch(3 * 86_400));
  const days = new ByDay(all);
  for (let nth = 0; nth < 200; nth += 1) {
    const { from, until } = stretch(2 * 86_400);
    const looked = all.filter((one) => one.from < until && one.until > from);
    expect(new Set(days.touching({ from, until }))).toEqual(new Set(looked));
  }
});
