import { describe, expect, it } from 'vitest';
import { pageOf } from './pages.js';

const fires = Array.from({ length: 10 }, (_, n) => n);
const calm = () => false;

describe('pages of the wall', () => {
  it('all stand there when they fit', () => {
    expect(pageOf(fires, calm, 10, 3)).toEqual({ shown: fires, number: 1, of: 1 });
  });

  it('ten fires on six places: every fire comes round', () => {
    const seen = new Set([0, 1].flatMap((turn) => pageOf(fires, calm, 6, turn).shown));
    expect(pageOf(fires, calm, 6, 0).of).toBe(2);
    expect(seen.size).toBe(10);
  });

  it('a fire that needs hands is on show on every page', () => {
    for (let turn = 0; turn < 6; turn++) expect(pageOf(fires, (n) => n === 1 || n === 7, 6, turn).shown).toEqual(expect.arrayContaining([1, 7]));
  });

  it('never more than fit, and all come round, even when all need hands', () => {
    const turns = Array.from({ length: 6 }, (_, turn) => pageOf(fires, () => true, 6, turn).shown);
    expect(Math.max(...turns.map((shown) => shown.length))).toBe(6);
    expect(new Set(turns.flat()).size).toBe(10);
  });
});
