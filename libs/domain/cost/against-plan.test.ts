import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cents, dryBasis } from '../quantity/index.js';
import { explainCrew, explainWood, splitsOf, wetFactor } from './index.js';

const plan = { burnedS: 12 * 3600, dryKgPerS: 1.8 / 2700, weatherFactor: 1, wetFactor: 1, pieceDryKg: 1.8, centsPerSplit: 150 };

describe('plan against actual', () => {
  it('twelve hours at a split each 45 minutes are 16 splits, 24.00', () => {
    expect(splitsOf(plan)).toBeCloseTo(16, 9);
    expect(explainWood(plan, plan, { splits: 16, costCents: cents(2400) })).toMatchObject({ plannedCents: 2400, causes: [] });
  });
  it('gusts of 30 % more are 4.8 splits and 7.20; a cook two hours longer on top is reckoned first, at the planned wind', () => {
    const actual = { ...plan, burnedS: 14 * 3600, weatherFactor: 1.3 };
    // by hand: 2 h are 2.667 splits, 4.00; then 0.3 x 18.667 = 5.6 splits, 8.40; 24.27 splits at 1.50 are 36.40
    expect(explainWood(plan, actual, { splits: 25, costCents: cents(3750) }).causes).toEqual([
      { cause: 'longer-cook', cents: 400, splits: expect.closeTo(2.6667, 3) }, { cause: 'wind', cents: 840, splits: expect.closeTo(5.6, 6) }, { cause: 'not-explained', cents: 110, splits: expect.closeTo(0.7333, 3) },
    ]);
  });
  it('a wet lot, smaller splits and dearer wood have lines of their own; what saved is negative', () => {
    const actual = { ...plan, wetFactor: 1.05, pieceDryKg: 1.5, centsPerSplit: 120 };
    const { causes } = explainWood(plan, actual, { splits: 20.16, costCents: cents(2419) });
    expect(causes.map(({ cause }) => cause)).toEqual(['wet-lot', 'smaller-splits', 'dearer-wood']);
    expect(causes.at(-1)!.cents).toBeLessThan(0);
  });
  it('whatever happened, the lines add up to the difference to the cent', () => {
    const figure = fc.double({ min: 0.2, max: 3, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(figure, figure, figure, figure, figure, figure), fc.integer({ min: 0, max: 100_000 }), ([a, b, c, d, e, f], burned) => {
        const actual = { burnedS: plan.burnedS * a, dryKgPerS: plan.dryKgPerS * b, weatherFactor: c, wetFactor: d, pieceDryKg: 1.8 * e, centsPerSplit: 150 * f };
        const { plannedCents, causes } = explainWood(plan, actual, { splits: burned / 150, costCents: cents(burned) });
        const lines = causes.reduce((sum, line) => sum + line.cents, 0);
        expect(plannedCents + lines).toBe(burned);
      }),
    );
  });
  it('crew: an hour more at 21.00, then a night rate of 2.00 more on nine hours', () => {
    const [hours, rate] = explainCrew({ paidS: 8 * 3600, costCents: cents(16_800) }, { paidS: 9 * 3600, costCents: cents(20_700) });
    expect([hours!.cents, rate!.cents]).toEqual([2100, 1800]);
  });
  it('wood at 25 % asks for 1.8 % more dry wood than at 12 %: 18.307 over 17.990 MJ', () => {
    expect(wetFactor(dryBasis(0.25))).toBeCloseTo(18.307 / 17.9895, 4);
    expect(wetFactor(dryBasis(0.12))).toBe(1);
  });
});
