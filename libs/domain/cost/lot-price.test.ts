import fc from 'fast-check';
import { expect, it } from 'vitest';
import { cents, type LotId } from '../quantity/index.js';
import { priceOfPieces } from './index.js';

const lotId = 'lot' as LotId;

it('a lot of 100.00 and 97 splits: the first costs 1.03, all together 100.00', () => {
  expect(priceOfPieces({ lotId, priceCents: cents(10_000), boughtPieces: 97 }, 1)).toBe(103);
  expect(priceOfPieces({ lotId, priceCents: cents(10_000), boughtPieces: 97 }, 97)).toBe(10_000);
});
it('what trimming lost is carried by what burns: 90 of 100 splits come out of 90.00, 1.00 each', () => {
  expect(priceOfPieces({ lotId, priceCents: cents(9_000), boughtPieces: 100, lostPieces: 10 }, 5)).toBe(500);
});
it('burned night by night, however it is cut, the lot costs its price to the cent', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2_000_000 }), fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 20 }), (price, nights) => {
      const all = nights.reduce((sum, pieces) => sum + pieces, 0);
      let [before, spent] = [0, 0];
      for (const pieces of nights) {
        spent += priceOfPieces({ lotId, priceCents: cents(price), boughtPieces: Math.max(1, all), burnedBefore: before }, pieces);
        before += pieces;
      }
      expect(spent).toBe(all === 0 ? 0 : price);
    }),
  );
});
it('a lot that gave more splits than were bought costs no more than its price; one that was free costs nothing', () => {
  expect(priceOfPieces({ lotId, priceCents: cents(5_000), boughtPieces: 40 }, 44)).toBe(5_000);
  expect(priceOfPieces({ lotId, priceCents: cents(0), boughtPieces: 40 }, 12)).toBe(0);
});
