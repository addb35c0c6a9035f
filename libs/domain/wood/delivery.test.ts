import { expect, it } from 'vitest';
import { dryBasis } from '../quantity/index.js';
import { type Measure, takeIn } from './index.js';

const piece = { thicknessM: 0.1, lengthM: 0.4, species: 'white-oak', moisture: dryBasis(0.15) } as const;
const firebox = { fireboxDiameterM: 0.6, fireboxLengthM: 0.7 };
const take = (measures: readonly Measure[], more: { priceCents?: number; usual?: number; lengthM?: number; moisture?: number } = {}) => {
  const result = takeIn(
    { piece: { ...piece, lengthM: more.lengthM ?? piece.lengthM, moisture: dryBasis(more.moisture ?? 0.15) }, measures, priceCents: more.priceCents ?? 30_000 },
    { fireboxes: [firebox], ...(more.usual !== undefined && { usualCentsPerCord: more.usual }) },
  );
  return result.ok ? { pieces: result.value.pieces, codes: result.value.remarks.map(({ code }) => code), remarks: result.value.remarks } : { refused: result.refusal.code };
};

it('a cord that weighs what a cord weighs and counts what it counts adds up: 771 splits of 3.12 litres in 85 cubic feet', () => {
  expect(take([{ by: 'cords', cords: 1 }, { by: 'pieces', pieces: 760 }, { by: 'weight', massKg: 1750 }])).toEqual({ pieces: 771, codes: [], remarks: [] });
});
it('a cord paid for that counts 500 splits does not add up, and how far is said', () => {
  const { remarks } = take([{ by: 'cords', cords: 1 }, { by: 'pieces', pieces: 500 }]);
  expect(remarks).toEqual([{ code: 'measures-disagree', first: 'cords', second: 'pieces', ratio: expect.closeTo(500 / 771.44, 3) }]);
});
it('a cord thrown in a heap of 3.6 m3 is no cord', () => {
  expect(take([{ by: 'cords', cords: 1 }, { by: 'volume', stackedM3: 3.6, stowing: 'heaped' }]).codes).toEqual(['measures-disagree']);
});
it('a tenth of a cord is a package; a price of nothing, or far from the others, is pointed out; the wood is taken in all the same', () => {
  expect(take([{ by: 'cords', cords: 0.1 }]).codes).toEqual(['sold-as-package']);
  expect(take([{ by: 'pieces', pieces: 300 }], { priceCents: 0 })).toMatchObject({ pieces: 300, codes: ['no-price'] });
  expect(take([{ by: 'cords', cords: 1 }], { priceCents: 150_000, usual: 30_000 }).codes).toEqual(['price-unusual']);
  expect(take([{ by: 'cords', cords: 1 }], { priceCents: 32_000, usual: 30_000 }).codes).toEqual([]);
});
it('wood longer than any firebox and wood too wet to burn are said at the gate', () => {
  expect(take([{ by: 'pieces', pieces: 40 }], { lengthM: 0.9, moisture: 0.4 }).codes).toEqual(['fits-nowhere', 'too-wet-to-burn-now']);
});
it.each([
  { what: 'nothing measured', measures: [], code: 'nothing-measured' },
  { what: 'minus three splits', measures: [{ by: 'pieces', pieces: -3 }], code: 'counted-below-zero' },
  { what: 'a row of no height', measures: [{ by: 'rows', rows: 1, lengthM: 2, heightM: 0 }], code: 'counted-below-zero' },
  { what: 'a weight that is no number', measures: [{ by: 'cords', cords: 1 }, { by: 'weight', massKg: Number.NaN }], code: 'counted-below-zero' },
] as const)('$what is refused with $code', ({ measures, code }) => {
  expect(take(measures)).toEqual({ refused: code });
});
