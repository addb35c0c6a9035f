import { describe, expect, it } from 'vitest';
import type { Setup } from '@stokehold/domain/contract';
import { hoursShown, loadOfDraft } from './draft-load.js';
import type { Night } from './shift-of-draft.js';

const id = (n: number) => `018f3c2e-0000-7000-8000-${String(n).padStart(12, '0')}` as never;
const yard = (pits: number, people: number) =>
  ({
    yard: { woodPlace: { xM: 10, yM: 18 }, walkSpeedMPerS: 1.2 },
    pits: Array.from({ length: pits }, (_, n) => ({ id: id(n), xM: 3 + 4 * n, yM: 6, retired: false })),
    crew: Array.from({ length: people }, (_, n) => ({ id: id(100 + n), name: `P${n}`, skills: ['fire', 'lifting'], left: false })),
  }) as unknown as Setup;
const night = (pits: number, people: number, breaks: Night['people'][number]['breaks'] = []): Night => ({
  id: id(999),
  startsAt: '2027-06-06T00:00:00Z',
  endsAt: '2027-06-06T10:00:00Z',
  people: Array.from({ length: people }, (_, n) => ({ personId: id(100 + n), startsAt: '2027-06-06T00:00:00Z', endsAt: '2027-06-06T10:00:00Z', breaks })),
  pits: Array.from({ length: pits }, (_, n) => ({ pitId: id(n), band: { lowC: 118, highC: 124 }, lightAt: '2027-06-06T00:00:00Z' })),
});
const loads = (pits: number, people: number) => hoursShown(loadOfDraft(night(pits, people), yard(pits, people))).all;

describe('the load of a drafted night', () => {
  it('is told for each hour of the shift', () => {
    expect(loads(4, 2)).toHaveLength(10);
  });
  it("three pits ask one person for about half of each hour, by hand", () => {
    const late = loads(3, 1).at(-1)!;
    // By hand: 2 looks an hour x 3 pits x (5 min + 4 m at 1.2 m/s) = 30.3 min of 60.
    expect(late.loadFrac).toBeGreaterThan(0.45);
    expect(late.loadFrac).toBeLessThan(0.6);
    expect(late.fails).toBe(false);
  });
  it('grows with every pit, falls with every person', () => {
    expect(loads(6, 2).at(-1)!.loadFrac).toBeGreaterThan(loads(4, 2).at(-1)!.loadFrac);
    expect(loads(6, 3).at(-1)!.loadFrac).toBeLessThan(loads(6, 2).at(-1)!.loadFrac);
  });
  it('fails with eight pits and one person, and says that one more is missing', () => {
    const late = loads(8, 1).at(-1)!;
    expect(late.fails).toBe(true);
    expect(late.missingPeople).toBe(1);
    expect(late.mend.code).not.toBe('none');
  });
  it('fails in every hour with nobody there', () => {
    expect(loads(2, 0).slice(1).every(({ fails }) => fails)).toBe(true);
  });
});
