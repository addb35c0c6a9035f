import { expect, it } from 'vitest';
import type { FairnessView } from '@stokehold/domain/contract';
import { fairPeople } from './fair-shares.js';

const share = (thereS: number, workedS: number, unpleasantS: number, walkedS: number) => ({ thereS, workedS, unpleasantS, walkedS });
const view = {
  people: [
    { personId: 'ana', nights: 2, before: share(72_000, 18_000, 3600, 1200), tonight: share(36_000, 7200, 0, 600) },
    { personId: 'bo', nights: 0, before: null, tonight: share(18_000, 7200, 900, 300) },
  ],
} as unknown as FairnessView;

it('work is told by the hour there, the rest by the night, on one scale for each', () => {
  const [ana, bo] = fairPeople(view);
  // by hand: 18 000 of 72 000 s are 900 s an hour; 7200 of 36 000 are 720; Bo's 7200 of 18 000 are 1440, the most
  expect(ana?.bars[0]).toEqual({ what: 'work', beforeS: 900, tonightS: 720, beforeFrac: 0.625, tonightFrac: 0.5 });
  expect(bo?.bars[0]).toEqual({ what: 'work', beforeS: undefined, tonightS: 1440, beforeFrac: 0, tonightFrac: 1 });
  // by hand: 3600 s in two nights are 1800 a night, the most
  expect(ana?.bars[1]).toMatchObject({ beforeS: 1800, beforeFrac: 1, tonightS: 0, tonightFrac: 0 });
  expect(bo?.bars[2]).toMatchObject({ tonightS: 300, tonightFrac: 0.5 });
});
it('of nobody is nothing', () => expect(fairPeople({ people: [] })).toEqual([]));
