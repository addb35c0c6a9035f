import { describe, expect, it } from 'vitest';
import { handNight, handPerson, handPit, handTask, minute } from './hand-night.js';
import { keptSkeleton, skeletonOf } from './skeleton.js';

const night = handNight({});
const targets = (laid: ReturnType<typeof skeletonOf>) => laid.map(({ targetS }) => targetS / 60);

describe('the skeleton of a pit', () => {
  it('lies evenly from the first due check to the end of the night', () => {
    // Gap 30, wanted 0.87 x 30 = 26.1: first target 60 - 3.9 = 56.1; 183.9 min remain, 8 gaps of 22.99 min.
    const laid = targets(skeletonOf(night, handPit('pit-1', 60), undefined));
    expect(laid).toHaveLength(8);
    expect(laid[0]).toBeCloseTo(56.1, 1);
    expect(laid[1]! - laid[0]!).toBeCloseTo(183.9 / 8, 1);
  });

  it('asks for fewer checks in an hour that is short of hands', () => {
    // One person for 240 min. In hour 2 eleven tasks of 5 min each: 55 of 60 min, and the check 5 in 30 besides: load over 0.95, wanted 0.96 x 30 = 28.8.
    const tasks = Array.from({ length: 11 }, (_, i) => handTask(`haul-${i}`, 85, 5, { earliest: 60, latest: 115 }));
    const busy = handNight({ people: [handPerson('ana')], tasks });
    const laid = targets(skeletonOf(busy, handPit('pit-1', 10), undefined));
    const gapAfter = (minuteOfNight: number) => {
      const at = laid.findIndex((target) => target >= minuteOfNight);
      return laid[at + 1]! - laid[at]!;
    };
    expect(gapAfter(62) / gapAfter(150)).toBeCloseTo(0.96 / 0.87, 1);
  });

  it('needs no check when the fire is due only after its end', () => {
    expect(skeletonOf(night, { ...handPit('pit-1', 60), keepUntil: minute(60) }, undefined)).toEqual([]);
  });

  it('begins now when the first check is past due, and goes on from a frozen one', () => {
    expect(targets(skeletonOf(night, handPit('pit-1', -10), undefined))[0]).toBe(0);
    // Frozen at minute 10; 230 min remain, 9 gaps of 25.6 min (wanted at most 26.1), 8 checks after it.
    const laid = targets(skeletonOf(night, handPit('pit-1', 12), 600));
    expect(laid).toHaveLength(8);
    expect(laid[0]).toBeCloseTo(10 + 230 / 9, 1);
  });

  it('never lets the last check come so early that the fire falls due before its end', () => {
    const pit = handPit('pit-1', 60);
    expect(skeletonOf(night, pit, undefined).at(-1)!.releaseS).toBeGreaterThanOrEqual(240 * 60 - pit.gap.dueS);
  });

  it('keeps promised places while each comes in its time, and lays anew what does not', () => {
    const pit = handPit('pit-1', 30);
    const kept = (promised: readonly number[]) => targets(keptSkeleton(night, pit, { lastStartS: undefined, promisedS: promised.map((at) => at * 60), shownS: [] }));
    expect(kept([25, 50]).slice(0, 2)).toEqual([25, 50]);
    expect(kept([40, 65])).toEqual(targets(skeletonOf(night, pit, undefined)));
    // Gap 30: the third would come 40 min after the second.
    expect(kept([25, 50, 90])).toEqual([25, 50, ...targets(skeletonOf(night, pit, 50 * 60))]);
  });

  it('a check made early moves the looks after it and not the whole night', () => {
    // Planned every 26 min; the fire was looked at at -9, so due is 21 (gap 30): 21, then 21 + 30 = 51, and from 78 on as before.
    const pit = handPit('pit-1', 21);
    const shown = [26, 52, 78, 104, 130, 156, 182, 208];
    const laid = targets(keptSkeleton(night, pit, { lastStartS: undefined, promisedS: [], shownS: shown.map((at) => at * 60) }));
    expect(laid.slice(0, 2)).toEqual([21, 51]);
    // The last is drawn to no later than due before the end at 240, as it was.
    expect(laid.slice(2)).toEqual(shown.slice(2).concat(laid.slice(shown.length)));
    expect(240 - laid.at(-1)!).toBeLessThanOrEqual(30);
  });

  it('a fire that now wants fewer looks gets fewer', () => {
    const pit = handPit('pit-1', 30);
    const often = Array.from({ length: 20 }, (_, i) => (10 + 11 * i) * 60);
    expect(keptSkeleton(night, pit, { lastStartS: undefined, promisedS: [], shownS: often }).length).toBeLessThanOrEqual(skeletonOf(night, pit, undefined).length + 1);
  });
});
