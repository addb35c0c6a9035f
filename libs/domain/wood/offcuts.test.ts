import fc from 'fast-check';
import { epochS } from '../quantity/index.js';
import { describe, expect, it } from 'vitest';
import { allWrappedFrom, drawOffcuts, trimmedLeft } from './index.js';

describe('offcuts', () => {
  const piles = [{ lotId: 'old', offcuts: 3 }, { lotId: 'gone', offcuts: 0 }, { lotId: 'new', offcuts: 4 }];

  it('those of the lot that was cut first go on first, and what no lot can give stays open', () => {
    expect(drawOffcuts(piles, 5)).toEqual({ drawn: [{ lotId: 'old', pieces: 3 }, { lotId: 'new', pieces: 2 }], open: 0 });
    expect(drawOffcuts(piles, 9).open).toBe(2);
  });
  it('they will do from when the last food on the fire is wrapped, never while some stays bare', () => {
    expect(allWrappedFrom([epochS(300), epochS(900)])).toBe(900);
    expect(allWrappedFrom([epochS(300), undefined])).toBeUndefined();
    expect(allWrappedFrom([])).toBeUndefined();
  });
  it('a lot that somebody named is asked before the others', () => {
    expect(drawOffcuts(piles, 5, 'new').drawn).toEqual([{ lotId: 'new', pieces: 4 }, { lotId: 'old', pieces: 1 }]);
  });
  it('none is made and none is lost: drawn and open are what went on, and no lot gives more than it has', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 30 }), { maxLength: 8 }), fc.integer({ min: 0, max: 200 }), (counts, pieces) => {
        const all = counts.map((offcuts, nth) => ({ lotId: `lot-${nth}`, offcuts }));
        const { drawn, open } = drawOffcuts(all, pieces);
        expect(drawn.reduce((sum, one) => sum + one.pieces, 0) + open).toBe(pieces);
        for (const one of drawn) expect(one.pieces).toBeLessThanOrEqual(all.find(({ lotId }) => lotId === one.lotId)!.offcuts);
      }),
    );
  });
});

describe('trimmed splits on a cart', () => {
  it('trimmed ones burn first: of 10 with 4 trimmed, 3 burned leave 1 trimmed, 6 burned none', () => {
    expect(trimmedLeft({ pieces: 10, trimmed: 4 }, 3, 'burned')).toBe(1);
    expect(trimmedLeft({ pieces: 10, trimmed: 4 }, 6, 'burned')).toBe(0);
  });
  it('what goes back to the stack is long yet: of 10 with 4 trimmed, 6 taken away leave 4, 8 leave 2', () => {
    expect(trimmedLeft({ pieces: 10, trimmed: 4 }, 6, 'taken-away')).toBe(4);
    expect(trimmedLeft({ pieces: 10, trimmed: 4 }, 8, 'taken-away')).toBe(2);
  });
  it('wood that came is not trimmed', () => {
    expect(trimmedLeft({ pieces: 10, trimmed: 4 }, -5, 'taken-away')).toBe(4);
  });
});
