import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cents } from '../quantity/index.js';
import { shareCents } from './share.js';

describe('sharing an amount', () => {
  it('a hundred cents in three even parts are 34, 33 and 33', () => {
    expect(shareCents(cents(100), [1, 1, 1])).toEqual([34, 33, 33]);
  });
  it('the left-over cent goes to the largest remainder: 10 by 2, 3, 2 is 2.86, 4.29, 2.86', () => {
    expect(shareCents(cents(10), [2, 3, 2])).toEqual([3, 4, 3]);
  });
  it('nothing weighs anything: even parts', () => {
    expect(shareCents(cents(5), [0, 0])).toEqual([3, 2]);
  });
  it('no one to share with gives no shares', () => {
    expect(shareCents(cents(5), [])).toEqual([]);
  });
  it('shares add up to the cent and are within one cent of their part, whatever the weights', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5_000_000 }), fc.array(fc.double({ min: 0, max: 1000, noNaN: true }), { minLength: 1, maxLength: 30 }), (amount, weights) => {
        const shares = shareCents(cents(amount), weights);
        expect(shares.reduce((sum, share) => sum + share, 0)).toBe(amount);
        const sum = weights.reduce((a, b) => a + b, 0);
        if (sum > 1e-9) shares.forEach((share, i) => expect(Math.abs(share - (amount * (weights[i] ?? 0)) / sum)).toBeLessThanOrEqual(1 + 1e-6));
      }),
    );
  });
});
