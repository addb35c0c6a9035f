import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { epochS, later } from '../quantity/index.js';
import { trimWork } from './index.js';

const now = epochS(1_800_000_000);
const at = (s: number) => later(now, s);

describe('trimming as work of its own', () => {
  it('ten cuts take ten minutes: the haul comes ten minutes sooner, the saw after it', () => {
    const haul = { earliestAt: at(0), dueAt: at(5400), latestAt: at(7200), lengthS: 600 };
    const work = trimWork({ now, cuts: 10, haul, wantedAt: at(0) }); // by hand: 300 + 10 x 30 = 600 s
    expect(work.haul).toEqual({ earliestAt: at(0), dueAt: at(4800), latestAt: at(6600), lengthS: 600 });
    expect(work.trim).toEqual({ earliestAt: at(600), dueAt: at(5400), latestAt: at(7200), lengthS: 600 });
  });
  it('wood that lies on its cart already is cut before the fire wants it', () => {
    expect(trimWork({ now, cuts: 4, wantedAt: at(7200) })).toEqual({ trim: { earliestAt: now, dueAt: at(7200 - 420 - 1800), latestAt: at(7200 - 420), lengthS: 420 } });
  });
  it('in a hurry everything is due at once, in order, and nothing lies in the past', () => {
    fc.assert(
      fc.property(fc.nat(20_000), fc.nat(4000), fc.nat(4000), fc.integer({ min: 1, max: 200 }), fc.boolean(), (first, second, third, cuts, lies) => {
        const haul = { earliestAt: at(first), dueAt: at(first + second), latestAt: at(first + second + third), lengthS: 300 };
        const work = trimWork({ now, cuts, wantedAt: at(first), ...(!lies && { haul }) });
        for (const one of [work.trim, ...(work.haul ? [work.haul] : [])]) {
          expect(one.earliestAt).toBeGreaterThanOrEqual(now);
          expect(one.dueAt).toBeGreaterThanOrEqual(one.earliestAt);
          expect(one.latestAt).toBeGreaterThanOrEqual(one.dueAt);
        }
        if (work.haul) expect(work.trim.earliestAt).toBeGreaterThanOrEqual(work.haul.earliestAt + work.haul.lengthS);
      }),
    );
  });
});
