import { describe, expect, it } from 'vitest';
import type { LotView } from '@stokehold/domain/contract';
import { drynessOf, fitOf, lotsInOrder, stackOf, stackSize, wantsHaul, untrimmedOn } from './stack.js';

describe('how dry a lot is', () => {
  it('10 to 15 % by the meter is good wood (common practice, no source)', () => {
    expect([0.1, 0.13, 0.15].map(drynessOf)).toEqual(['dry', 'dry', 'dry']);
  });
  it('then fair, wet, green as it holds more water', () => {
    expect([0.18, 0.25, 0.42].map(drynessOf)).toEqual(['fair', 'wet', 'green']);
  });
});

describe('the lots', () => {
  const lot = (name: string, moisture: number, inStack: number) => ({ name, moisture, inStack }) as LotView;
  it('stand with the ready ones first, the most of them on top', () => {
    const order = lotsInOrder([lot('green', 0.4, 200), lot('few', 0.12, 5), lot('fair', 0.18, 90), lot('many', 0.14, 80)]);
    expect(order.map(({ name }) => name)).toEqual(['many', 'few', 'fair', 'green']);
  });
  it('say which pits they fit and how they lie there', () => {
    const fits = [{ pitId: 'a', lies: 'across' }, { pitId: 'b', lies: 'too-long' }, { pitId: 'gone', lies: 'across' }, { pitId: 'c', lies: 'lengthwise' }] as never;
    const names: Readonly<Record<string, string>> = { a: 'Alder', b: 'Birch', c: 'Cedar' };
    expect(fitOf({ fits }, (id) => names[id])).toEqual({ across: ['Alder'], lengthwise: ['Cedar'], tooLong: ['Birch'] });
  });
});

describe('a drawn stack', () => {
  it('has its height by its pieces: the fullest is full, a single piece is seen, none is none', () => {
    expect(stackOf(160, 160, 10)).toHaveLength(60);
    expect(stackOf(80, 160, 10)).toHaveLength(30);
    expect(stackOf(1, 160, 10)).toHaveLength(1);
    expect(stackOf(0, 160, 10)).toEqual([]);
  });
  it('is piled from the ground up and stays inside its drawing', () => {
    const ends = stackOf(160, 160, 10);
    const { width, height } = stackSize(10);
    expect(ends[0]!.y).toBeGreaterThan(ends.at(-1)!.y);
    for (const { x, y } of ends) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x + 10).toBeLessThanOrEqual(width + 0.001);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y + 10).toBeLessThanOrEqual(height + 0.001);
    }
  });
});

describe('a cart', () => {
  const left = { nowMs: 0, endsMs: 10 * 3_600_000 };
  it('of 10 splits where 24 burn in ten hours lasts four and stays quiet', () => expect(wantsHaul({ splits: 10, needed: 24 }, left)).toBe(false));
  it('of 2 where 24 burn lasts 50 minutes and wants somebody to haul', () => expect(wantsHaul({ splits: 2, needed: 24 }, left)).toBe(true));
  it('that holds all that is needed wants nobody, however little that is', () => expect(wantsHaul({ splits: 1, needed: 0.4 }, { nowMs: 0, endsMs: 600_000 })).toBe(false));
});

it('what is not trimmed yet is what lies there less what is; nothing where no such wood lies', () => {
  const carts = [{ pitId: 'p' as never, lots: [{ lotId: 'l' as never, pieces: 9, trimmed: 4 }] }];
  expect(untrimmedOn(carts, { pitId: 'p', lotId: 'l' })).toBe(5);
  expect(untrimmedOn(carts, { pitId: 'p', lotId: 'other' })).toBe(0);
});
