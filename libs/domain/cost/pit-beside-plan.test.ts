import { describe, expect, it } from 'vitest';
import type { EpochS } from '../quantity/index.js';
import { gustFactor, pitBesidePlan } from './index.js';

const at = (hours: number) => (hours * 3600) as EpochS;
/** A split of 2 kg each 45 minutes for twelve hours: 16 splits. */
const plan = [{ from: at(0), until: at(6), splits: 8, dryKg: 16 }, { from: at(6), until: at(12), splits: 8, dryKg: 16 }];
const gusts = [{ from: at(3), until: at(6) }];
/** A split at the end of each stretch of so many minutes. */
const each = (minutes: number, from: number, until: number) => Array.from({ length: Math.floor(((until - from) * 60) / minutes) }, (_, n) => ({ at: (at(from) + n * minutes * 60) as EpochS, splits: 1, dryKg: 2 }));
const calmThenGusts = [...each(45, 0, 3), ...each(30, 3, 6), ...each(45, 6, 12)];

describe('a pit beside its plan', () => {
  it('three hours of gusts with a split each 30 minutes: 18 splits for 16, 6 in the gusts for 4', () => {
    expect(pitBesidePlan({ plan, burned: calmThenGusts, gusts, until: at(12) })).toEqual({
      planned: { splits: 16, dryKg: 32 }, was: { splits: 18, dryKg: 36 }, inGusts: { lengthS: 10_800, planned: { splits: 4, dryKg: 8 }, was: { splits: 6, dryKg: 12 } },
    });
  });
  it('a night that still runs is compared up to now, and its gusts too', () => {
    const { planned, was, inGusts } = pitBesidePlan({ plan, burned: calmThenGusts, gusts, until: at(4.5) });
    expect([planned.splits, was.splits, inGusts.lengthS, inGusts.planned.splits, inGusts.was.splits]).toEqual([6, 7, 5400, 2, 3]);
  });
  it('what burned before the plan begins is in neither', () => {
    const { was } = pitBesidePlan({ plan: plan.slice(1), burned: calmThenGusts, gusts, until: at(12) });
    expect(was.splits).toBe(8);
  });
});

describe('what gusts did to the hunger of a fire', () => {
  const beside = (burned: typeof calmThenGusts, blew = gusts) => pitBesidePlan({ plan, burned, gusts: blew, until: at(12) });
  it('by hand: calm hours as planned, so 18 splits over 16 are 1.125', () => expect(gustFactor([beside(calmThenGusts)])).toBeCloseTo(1.125, 12));
  it('a pit that is as hungry in the calm hours owes nothing to the wind: 24 calm for 12, 8 in the gusts for 4', () => {
    const twice = [...each(22.5, 0, 12)];
    expect(gustFactor([beside(twice)])).toBeCloseTo(1, 12);
  });
  it('gusts in which less was burned than planned saved: below 1', () => expect(gustFactor([beside([...each(45, 0, 3), ...each(90, 3, 6), ...each(45, 6, 12)])])).toBeLessThan(1));
  it('half an hour of gusts says nothing of one pit, but eight pits together say it', () => {
    const short = [{ from: at(3), until: at(3.5) }];
    const one = beside([...calmThenGusts, { at: at(3.2), splits: 1, dryKg: 2 }], short);
    expect(gustFactor([one])).toBe(1);
    expect(gustFactor(Array.from({ length: 8 }, () => one))).toBeGreaterThan(1);
  });
  it('a night of nothing but gusts is held to its plan alone: 24 splits for 16', () => expect(gustFactor([beside(each(30, 0, 12), [{ from: at(0), until: at(12) }])])).toBeCloseTo(1.5, 12));
  it('where nothing burned yet it is 1', () => expect(gustFactor([beside([])])).toBe(1));
});
