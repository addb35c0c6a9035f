import { costSheet, drawnNight, shareByParts, shareCents } from '@stokehold/domain/cost';
import { cents } from '@stokehold/domain/quantity';
import fc from 'fast-check';
import { expect, it } from 'vitest';

// Shares against exact rational arithmetic, written here from the definition of the largest remainder (Hamilton): quota = amount x
// weight / sum as a fraction of two whole numbers; everybody gets its floor, and the cents left go to the largest fractional parts.
function largestRemainder(amount: bigint, weights: readonly bigint[]): readonly bigint[] {
  const sum = weights.reduce((total, weight) => total + weight, 0n);
  const quotas = weights.map((weight) => ({ top: amount * weight, floor: (amount * weight) / sum }));
  const shares = quotas.map(({ floor }) => floor);
  let left = amount - shares.reduce((total, share) => total + share, 0n);
  const order = quotas.map(({ top, floor }, i) => ({ i, rest: top - floor * sum })).sort((a, b) => (a.rest < b.rest ? 1 : a.rest > b.rest ? -1 : a.i - b.i));
  for (const { i } of order) {
    if (left === 0n) break;
    shares[i]! += 1n;
    left -= 1n;
  }
  return shares;
}
/** A double as the fraction it is: halved denominators until it is whole. */
function asFraction(value: number): { readonly top: bigint; readonly bottom: bigint } {
  let [top, bottom] = [value, 1n];
  while (!Number.isInteger(top)) {
    top *= 2;
    bottom *= 2n;
  }
  return { top: BigInt(top), bottom };
}

it('shares by whole weights are those of exact fractions', () => {
  fc.assert(
    fc.property(fc.bigInt({ min: 0n, max: 10_000_000_000n }), fc.array(fc.bigInt({ min: 0n, max: 10n ** 30n }), { minLength: 1, maxLength: 40 }), (amount, weights) => {
      fc.pre(weights.some((weight) => weight > 0n));
      expect(shareByParts(cents(Number(amount)), weights)).toEqual(largestRemainder(amount, weights).map(Number));
    }),
  );
});

it('shares by weights that are fractions of the computer are exact too: no cent goes astray by rounding', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2_000_000_000 }), fc.array(fc.double({ min: 0, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 25 }), (amount, weights) => {
      fc.pre(weights.some((weight) => weight > 0));
      const fractions = weights.map(asFraction);
      const common = fractions.reduce((most, { bottom }) => (bottom > most ? bottom : most), 1n);
      const whole = fractions.map(({ top, bottom }) => top * (common / bottom));
      expect(shareCents(cents(amount), weights)).toEqual(largestRemainder(BigInt(amount), whole).map(Number));
    }),
  );
});

it('a tenth, two tenths and three tenths of 600 are 100, 200, 300, whatever the computer thinks a tenth is', () => {
  expect(shareCents(cents(600), [0.1, 0.2, 0.3])).toEqual([100, 200, 300]);
});

// The wood of a whole drawn night again with fractions: every split by itself, no grouping, no common denominator but their product.
it.each([1, 2, 3])('the wood of a drawn night, split by split in exact fractions; seed %d', (seed) => {
  const night = drawnNight({ checks: 120, cooks: 6, pits: 3, lots: 4, people: 2, seed });
  const sheet = costSheet(night);
  for (const lot of night.lots) {
    const burned = night.burned.filter(({ lotId }) => lotId === lot.lotId);
    const pieces = burned.reduce((sum, one) => sum + one.pieces, 0);
    const useful = BigInt(Math.max(pieces, lot.boughtPieces));
    const cost = (2n * BigInt(lot.priceCents) * BigInt(pieces) + useful) / (2n * useful);
    const parts = new Map<string, { top: bigint; bottom: bigint }>();
    for (const one of burned) {
      const own = night.stays.filter(({ pitId }) => pitId === one.pitId);
      const there = own.filter(({ from, until }) => from <= one.at && one.at < until);
      const next = Math.min(...own.filter(({ from }) => from > one.at).map(({ from }) => from));
      const last = Math.max(...own.map(({ until }) => until));
      const takers = there.length > 0 ? there : next < Infinity ? own.filter(({ from }) => from === next) : own.filter(({ until }) => until === last);
      const sum = takers.reduce((all, { weightKg }) => all + BigInt(Math.round(weightKg * 1000)), 0n);
      const list = takers.length > 0 ? takers.map(({ cookId, weightKg }) => [cookId as string, BigInt(Math.round(weightKg * 1000)), sum] as const) : [['', 1n, 1n] as const];
      for (const [cookId, weight, of] of list) {
        const so = parts.get(cookId) ?? { top: 0n, bottom: 1n };
        parts.set(cookId, { top: so.top * of + BigInt(one.pieces) * weight * so.bottom, bottom: so.bottom * of });
      }
    }
    const inOrder = [...parts].sort(([a], [b]) => (a < b ? -1 : 1));
    const product = inOrder.reduce((all, [, { bottom }]) => all * bottom, 1n);
    const shares = largestRemainder(cost, inOrder.map(([, { top, bottom }]) => top * (product / bottom)));
    const ours = sheet.wood.filter(({ lotId }) => lotId === lot.lotId);
    expect(ours.map(({ cookId }) => cookId ?? '')).toEqual(inOrder.map(([cookId]) => cookId));
    expect(ours.map(({ costCents }) => costCents)).toEqual(shares.map(Number));
  }
});
