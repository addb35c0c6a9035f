import { describe, expect, it } from 'vitest';
import { cents, type CookId, type EpochS, type LotId, type PersonId, type PitId } from '../quantity/index.js';
import { costSheet, drawnNight } from './index.js';

const [brisket, ribs] = ['brisket' as CookId, 'ribs' as CookId];
const pit = 'pit' as PitId;
const at = (hours: number) => (hours * 3600) as EpochS;

describe('the cost sheet of a night', () => {
  const sheet = costSheet({
    stays: [{ cookId: brisket, pitId: pit, weightKg: 30, from: at(0), until: at(10) }, { cookId: ribs, pitId: pit, weightKg: 10, from: at(0), until: at(5) }],
    burned: [{ pitId: pit, lotId: 'oak' as LotId, pieces: 8, at: at(2) }, { pitId: pit, lotId: 'oak' as LotId, pieces: 4, at: at(7) }, { pitId: pit, lotId: 'stray' as LotId, pieces: 2, at: at(8) }],
    lots: [{ lotId: 'oak' as LotId, priceCents: cents(10_000), boughtPieces: 100 }],
    paid: [{ personId: 'ana' as PersonId, paidS: 28_800, costCents: cents(16_000) }],
    cooks: [{ cookId: brisket, meatCents: cents(24_000), rawKg: 30, yieldKg: 15, portions: 60 }, { cookId: ribs, meatCents: cents(5_000), rawKg: 10 }],
  });
  it('by hand: brisket 6 + 4 splits, 10.00; 300 of 350 kg h of 160.00, 137.14; meat 240.00', () => {
    expect(sheet.cooks[0]).toMatchObject({ woodCents: 1000, crewCents: 13_714, meatCents: 24_000, totalCents: 38_714, splits: 12, yieldFrac: 0.5 });
    expect(sheet.cooks[1]).toMatchObject({ woodCents: 200, crewCents: 2_286, meatCents: 5_000, totalCents: 7_486, splits: 2, yieldFrac: undefined, perServedKgCents: undefined });
  });
  it('per raw kilogram, per served kilogram and per portion', () => {
    expect(sheet.cooks[0]!.perRawKgCents).toBeCloseTo(38_714 / 30, 9);
    expect(sheet.cooks[0]!.perServedKgCents).toBeCloseTo(38_714 / 15, 9);
    expect(sheet.cooks[0]!.perPortionCents).toBeCloseTo(38_714 / 60, 9);
  });
  it('splits without a price are counted, and everything adds up', () => {
    expect(sheet.unpricedPieces).toBe(2);
    expect(sheet).toMatchObject({ openCents: 0, totalCents: 1200 + 16_000 + 29_000 });
  });
  it('a night without food is carried by nobody and is not lost', () => {
    const empty = costSheet({ stays: [], burned: [{ pitId: pit, lotId: 'oak' as LotId, pieces: 3, at: at(1) }], lots: [{ lotId: 'oak' as LotId, priceCents: cents(300), boughtPieces: 3 }], paid: [{ personId: 'ana' as PersonId, paidS: 60, costCents: cents(35) }], cooks: [] });
    expect(empty).toMatchObject({ openCents: 335, totalCents: 335, cooks: [] });
  });
  it('a drawn night of 500 checks adds up: meat, wood and crew', () => {
    const night = drawnNight({ checks: 500, cooks: 24, pits: 12, lots: 40, people: 8 });
    const { totalCents, wood, crew } = costSheet(night);
    const parts = (all: readonly { readonly costCents: number }[]) => all.reduce((sum, { costCents }) => sum + costCents, 0);
    expect(parts(crew)).toBe(parts(night.paid));
    expect(totalCents).toBe(parts(wood) + parts(night.paid) + night.cooks.reduce((sum, { meatCents }) => sum + meatCents, 0));
  });
});
