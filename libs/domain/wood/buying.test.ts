import { describe, expect, it } from 'vitest';
import { epochS, later } from '../quantity/index.js';
import { dryKgPerCord, purchasesFor, readyFracAt } from './index.js';

const DAY_S = 86_400;
const now = epochS(1_800_000_000);
const nights = (kg: number, ...days: number[]) => days.map((day) => ({ at: later(now, day * DAY_S), dryKg: kg, deviationFrac: 0 }));
const ready = { readyFrac: 1, earliestAt: now, readyAt: now, latestAt: now };
const oak = { species: 'white-oak', deliveryS: 5 * DAY_S, greenReadyS: 400 * DAY_S } as const;
const cordKg = dryKgPerCord('white-oak');

describe('what to buy', () => {
  it('a cord of white oak holds about 1 590 kg dry: 85 cubic feet, 2.407 m3, of 660 kg', () => {
    expect(cordKg / 1590).toBeCloseTo(1, 1);
  });
  it('nothing while the ready stack covers the nights', () => {
    expect(purchasesFor(nights(100, 3, 10, 17), [{ dryKg: 300, seasoning: ready }], oak, now)).toEqual([]);
  });
  it('the night that is not covered is bought for in quarters of a cord, and when to order it is said', () => {
    const [buy] = purchasesFor(nights(cordKg, 30, 60), [{ dryKg: cordKg * 1.4, seasoning: ready }], oak, now);
    expect(buy).toMatchObject({ cords: 0.75, how: 'seasoned', neededBy: later(now, 60 * DAY_S), orderSeasonedBy: later(now, 55 * DAY_S) });
  });
  it('far enough ahead green wood will do; too near, even seasoned wood is late', () => {
    expect(purchasesFor(nights(cordKg, 500), [], oak, now)[0]).toMatchObject({ how: 'green', orderGreenBy: later(now, 95 * DAY_S) });
    expect(purchasesFor(nights(cordKg, 3), [], oak, now)[0]!.how).toBe('seasoned-late');
  });
  it('wet lots count as far as they are likely ready by then', () => {
    const seasoning = { readyFrac: 0, earliestAt: later(now, 20 * DAY_S), readyAt: later(now, 40 * DAY_S), latestAt: later(now, 60 * DAY_S) };
    expect(readyFracAt(seasoning, now, later(now, 30 * DAY_S))).toBeCloseTo(0.3, 9);
    expect(readyFracAt(seasoning, now, later(now, 90 * DAY_S))).toBe(0.9);
    expect(purchasesFor(nights(cordKg, 50), [{ dryKg: cordKg, seasoning }], oak, now)[0]!.cords).toBe(0.5); // 0.7 of it counts
    expect(purchasesFor(nights(cordKg * 0.89, 70), [{ dryKg: cordKg, seasoning }], oak, now)).toEqual([]);
  });
  it('uncertain nights ask for more', () => {
    const sure = purchasesFor(nights(cordKg, 50), [], oak, now)[0]!;
    const unsure = purchasesFor(nights(cordKg, 50).map((night) => ({ ...night, deviationFrac: 0.3 })), [], oak, now)[0]!;
    expect(unsure.cords).toBeGreaterThan(sure.cords);
  });
});
