import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cuttingFor, liesAcross, mayBurn, mustLieAcross, trimList } from './index.js';

const box = { fireboxDiameterM: 0.6, fireboxLengthM: 0.7 };

describe('cutting a split so that it lies across', () => {
  it('a split of 0.40 m in a box of 0.60 m needs no saw', () => {
    expect(cuttingFor(0.4, box)).toBeUndefined();
  });
  it('0.70 m is two of 0.347 m with one cut and no offcut; by hand (0.70 - 0.006) / 2', () => {
    expect(cuttingFor(0.7, box)).toEqual({ pieces: 2, pieceLengthM: expect.closeTo(0.347, 9), cuts: 1, offcutM: 0, lostM: 0.006, short: false });
  });
  it('0.50 m is one of 0.348 m and an offcut of 0.146 m, which is short: 0.50 - 0.348 - 0.006', () => {
    expect(cuttingFor(0.5, box)).toEqual({ pieces: 1, pieceLengthM: expect.closeTo(0.348, 9), cuts: 1, offcutM: expect.closeTo(0.146, 9), lostM: expect.closeTo(0.006, 9), short: true });
  });
  it('whatever the length: parts, offcut and dust make up the split, and every part lies across', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 2.5, noNaN: true }), fc.double({ min: 0.3, max: 1.2, noNaN: true }), (lengthM, fireboxDiameterM) => {
        const firebox = { fireboxDiameterM, fireboxLengthM: 0.8 };
        const cutting = cuttingFor(lengthM, firebox);
        if (!cutting) {
          expect(liesAcross({ ...firebox, lengthM })).toBe('across');
          return;
        }
        expect(cutting.pieces).toBeGreaterThanOrEqual(1);
        expect(cutting.pieces * cutting.pieceLengthM + cutting.offcutM + cutting.lostM).toBeCloseTo(lengthM, 9);
        expect(cutting.offcutM).toBeLessThanOrEqual(0.7 * fireboxDiameterM);
        expect(liesAcross({ ...firebox, lengthM: cutting.pieceLengthM })).toBe('across');
      }),
    );
  });
});

it('P12: food at the fire end asks for wood across; at the stack end alone it may lie lengthwise (common practice, no source)', () => {
  expect(mustLieAcross([0, 1], 4)).toBe(true);
  expect(mustLieAcross([2, 3], 4)).toBe(false);
  expect(mustLieAcross([], 4)).toBe(false);
  expect([mayBurn('lengthwise', false), mayBurn('lengthwise', true), mayBurn('across', true), mayBurn('too-long', false)]).toEqual([true, false, true, false]);
});

it('P11: 14 in wood lies across a 24 in box as it is; 16 in wood in the same box of a short pit is trimmed only when the fire end is loaded', () => {
  const inch = 0.0254;
  const pit = { fireboxDiameterM: 20 * inch, fireboxLengthM: 24 * inch };
  const wanted = (lengthM: number, across: boolean) => trimList([{ pitId: 'p', lotId: 'l', splits: 20, lengthM, firebox: pit, across }]);
  expect(wanted(14 * inch, true)).toEqual([]);
  expect(wanted(16 * inch, false)).toEqual([]);
  const [line] = wanted(16 * inch, true);
  expect(line).toMatchObject({ splits: 20, cuts: 20, offcuts: 20, pieces: 20 });
  expect(line!.cutting.short).toBe(true);
});
it('of a lot of uneven length only the long ones are cut: half of them when the mean is the longest that lies across', () => {
  const [line] = trimList([{ pitId: 'p', lotId: 'l', splits: 40, lengthM: 0.42, lengthDeviationM: 0.03, firebox: box, across: true }]);
  expect(line?.splits).toBe(20);
});
