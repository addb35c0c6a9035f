import { describe, expect, it } from 'vitest';
import type { PersonId } from '../quantity/index.js';
import { carriedOver, sharesTogether, type Share } from './fairness.js';

const [ana, bo, cy] = ['ana', 'bo', 'cy'] as PersonId[] as [PersonId, PersonId, PersonId];
const share = (personId: PersonId, thereMin: number, workedMin: number, unpleasantMin = 0): Share => ({
  personId, thereS: thereMin * 60, workedS: workedMin * 60, unpleasantS: unpleasantMin * 60, walkedS: 60,
});

describe('shares of several nights', () => {
  it('add up, and count the nights in which somebody was there', () => {
    const nights = [[share(ana, 600, 200, 10), share(bo, 0, 0)], [share(ana, 300, 100), share(bo, 600, 240)]];
    expect(sharesTogether(nights)).toEqual([
      { personId: ana, nights: 2, thereS: 54_000, workedS: 18_000, unpleasantS: 600, walkedS: 120 },
      { personId: bo, nights: 1, thereS: 36_000, workedS: 14_400, unpleasantS: 0, walkedS: 60 },
    ]);
  });
  it('of no nights are none', () => expect(sharesTogether([])).toEqual([]));
});

describe('what is carried into a night', () => {
  const carried = (shares: readonly Share[], ids: readonly PersonId[]) => [...carriedOver(shares, ids)].map(([id, { workedS, unpleasantS }]) => [id, workedS / 60, unpleasantS / 60]);
  it('is what somebody did more than the mean of those who come, by the time they were there', () => {
    // by hand: mean 300/1200 = 0.25; Ana 160 - 150 = 10, Bo 140 - 150 = -10
    expect(carried([share(ana, 600, 160), share(bo, 600, 140)], [ana, bo])).toEqual([[ana, 20, 0], [bo, 0, 0]]);
    // by hand: half the time and half the work is the same share
    expect(carried([share(ana, 600, 160), share(bo, 300, 80)], [ana, bo])).toEqual([[ana, 0, 0], [bo, 0, 0]]);
  });
  it('counts unpleasant work for itself', () => {
    expect(carried([share(ana, 600, 150, 0), share(bo, 600, 150, 24)], [ana, bo])).toEqual([[ana, 0, 0], [bo, 0, 24]]);
  });
  it('is never more than half an hour', () => {
    expect(carried([share(ana, 600, 400), share(bo, 600, 100)], [ana, bo])).toEqual([[ana, 30, 0], [bo, 0, 0]]);
  });
  it('of somebody new is what puts them between the others, and of nobody is nothing', () => {
    // by hand: excess 10, -10 and 0, less the least
    expect(carried([share(ana, 600, 160), share(bo, 600, 140)], [ana, bo, cy])).toEqual([[ana, 20, 0], [bo, 0, 0], [cy, 10, 0]]);
    expect(carried([], [ana])).toEqual([[ana, 0, 0]]);
    expect(carried([share(ana, 600, 160)], [])).toEqual([]);
  });
});
