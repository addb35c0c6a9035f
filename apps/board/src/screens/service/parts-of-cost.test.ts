import { describe, expect, it } from 'vitest';
import type { ServiceCost } from '@stokehold/domain/contract';
import { cookLines, costRows, partsOf } from './parts-of-cost.js';

const cost = {
  wood: [{ lot: 'West oak', splits: 20, massKg: 30, costCents: 3000 }, { lot: 'Pecan', splits: 0, massKg: 0, costCents: 0 }, { lot: 'East oak', splits: 30, massKg: 48, costCents: 5000 }],
  crew: [{ person: 'Ana', workedS: 3600, costCents: 2000 }],
  totalCents: 10_000, woodCents: 8000, crewCents: 2000, meatCents: 0, against: null, service: { name: 'Lunch' },
  cooks: [
    { cook: { id: 'k1', cut: 'Brisket', pieces: 4, weightKg: 20, yieldKg: 11 }, woodCents: 2000, crewCents: 500, meatCents: 0, totalCents: 2500, splits: 10, perServedKgCents: 227.3 },
    { cook: { id: 'k2', cut: 'Shoulder', pieces: 8, weightKg: 30, yieldKg: null }, woodCents: 6000, crewCents: 1500, meatCents: 0, totalCents: 7500, splits: 40, perServedKgCents: null },
  ],
} as unknown as ServiceCost;

describe('what a service cost, in parts', () => {
  it('wood first, the dearest first, nothing for nothing', () => {
    expect(partsOf(cost).map(({ kind, name, frac }) => [kind, name, frac])).toEqual([['wood', 'East oak', 0.5], ['wood', 'West oak', 0.3], ['crew', 'Ana', 0.2]]);
  });
  it('the parts make the whole', () => {
    expect(partsOf(cost).reduce((sum, { frac }) => sum + frac, 0)).toBeCloseTo(1, 12);
  });
  it('a service that has cost nothing yet has no parts', () => {
    expect(partsOf({ wood: [], crew: [], cooks: [], totalCents: 0 } as never)).toEqual([]);
  });
  it('each cook with its share, per kilogram raw and its yield once it is weighed', () => {
    // By hand: 7500 cents over 30 kg is 250 a kg; 2500 over 20 kg is 125; 11 of 20 kg is 0.55.
    expect(cookLines(cost).map(({ cut, totalCents, perKgCents, yieldFrac }) => [cut, totalCents, perKgCents, yieldFrac])).toEqual([
      ['Shoulder', 7500, 250, undefined], ['Brisket', 2500, 125, 0.55],
    ]);
  });
  it('for spreadsheets: every share a line, and the sums below are those of the lines', () => {
    const rows = costRows(cost).map((row) => row.join('|'));
    expect(rows[0]).toBe('service|kind|name|splits|hours|cost');
    expect(rows).toContain('Lunch|wood|East oak|30.00||50.00');
    expect(rows).toContain('Lunch|crew|Ana||1.00|20.00');
    expect(rows.at(-1)).toBe('Lunch|sum|in all|||100.00');
  });
});
