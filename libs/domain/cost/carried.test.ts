import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cents, type CookId, type EpochS, type LotId, type PersonId, type PitId } from '../quantity/index.js';
import { costSheet, type CostNight } from './sheet.js';

const cook = (n: number) => `cook-${n}` as CookId;
const pit = (n: number) => `pit-${n}` as PitId;
const lot = 'lot-1' as LotId;
const at = (hours: number) => (hours * 3600) as EpochS;
const stay = (cookId: CookId, pitId: PitId, weightKg: number, from: number, until: number) => ({ cookId, pitId, weightKg, from: at(from), until: at(until) });
/** The lines of a night in which no meat is priced. */
const linesOf = (night: Omit<CostNight, 'cooks'>) => costSheet({ ...night, cooks: [] });
const lots = [{ lotId: lot, priceCents: cents(10_000), boughtPieces: 100 }];

describe('the lines of a night', () => {
  it('a split goes to what lay on its pit, by weight: 30 kg and 10 kg carry 3 and 1 of 4 splits', () => {
    const { wood } = linesOf({
      stays: [stay(cook(1), pit(1), 30, 0, 10), stay(cook(2), pit(1), 10, 0, 10)],
      burned: [{ pitId: pit(1), lotId: lot, pieces: 4, at: at(2) }],
      lots,
      paid: [],
    });
    expect(wood).toEqual([
      { cookId: cook(1), lotId: lot, pieces: 3, costCents: 300 },
      { cookId: cook(2), lotId: lot, pieces: 1, costCents: 100 },
    ]);
  });
  it('the light-up is carried by what the pit cooks next, the burn-down by what it cooked last', () => {
    const { wood } = linesOf({
      stays: [stay(cook(1), pit(1), 30, 2, 6), stay(cook(2), pit(1), 30, 6, 10)],
      burned: [
        { pitId: pit(1), lotId: lot, pieces: 2, at: at(1) },
        { pitId: pit(1), lotId: lot, pieces: 1, at: at(11) },
      ],
      lots,
      paid: [],
    });
    expect(wood.map(({ cookId, pieces }) => [cookId, pieces])).toEqual([[cook(1), 2], [cook(2), 1]]);
  });
  it('a fire that cooked nothing is carried by nobody, and is not lost', () => {
    const { wood } = linesOf({ stays: [], burned: [{ pitId: pit(1), lotId: lot, pieces: 3, at: at(1) }], lots, paid: [] });
    expect(wood).toEqual([{ cookId: null, lotId: lot, pieces: 3, costCents: 300 }]);
  });
  it('eight hours for 168 dollars are shared by weight and time on the pit', () => {
    const { crew } = linesOf({
      stays: [stay(cook(1), pit(1), 10, 0, 6), stay(cook(2), pit(2), 20, 0, 1)],
      burned: [],
      lots,
      paid: [{ personId: 'p' as PersonId, paidS: 8 * 3600, costCents: cents(16_800) }],
    });
    expect(crew.map(({ costCents }) => costCents)).toEqual([12_600, 4_200]); // 60 to 20 kilogram-hours of 168.00
  });
  it('whatever the night, the shares of a lot and of a person add up to their cents', () => {
    const stays = fc.array(fc.tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 3 }), fc.double({ min: 0.1, max: 80, noNaN: true }), fc.integer({ min: 0, max: 8 }), fc.integer({ min: 1, max: 6 })), { maxLength: 8 });
    const burned = fc.array(fc.tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 2 }), fc.integer({ min: 0, max: 14 })), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(stays, burned, fc.integer({ min: 0, max: 90_000 }), (s, b, price) => {
        const night = linesOf({
          stays: s.map(([c, p, kg, from, length]) => stay(cook(c), pit(p), kg, from, from + length)),
          burned: b.map(([p, pieces, hour]) => ({ pitId: pit(p), lotId: lot, pieces, at: at(hour) })),
          lots: [{ lotId: lot, priceCents: cents(price), boughtPieces: 97 }],
          paid: [{ personId: 'p' as PersonId, paidS: 12_345, costCents: cents(6_855) }],
        });
        const pieces = b.reduce((sum, [, n]) => sum + n, 0);
        expect(night.wood.reduce((sum, { costCents }) => sum + costCents, 0)).toBe(Math.round((price * pieces) / 97));
        expect(night.wood.reduce((sum, one) => sum + one.pieces, 0)).toBeCloseTo(pieces, 6);
        expect(night.crew.reduce((sum, { costCents }) => sum + costCents, 0)).toBe(6_855);
      }),
    );
  });
});
