import { describe, expect, it } from 'vitest';
import { handNight, handPit, minute } from './hand-night.js';
import { keptSkeleton, skeletonOf } from './skeleton.js';

const night = handNight({});
const targets = (laid: ReturnType<typeof skeletonOf>) => laid.map(({ targetS }) => targetS / 60);

describe('the skeleton of a pit', () => {
  it('lies evenly from the first due check to the end of the night', () => {
    // Gap 30, wanted 27.9: first target 60 - 2.1 = 57.9; 182.1 min remain, 7 gaps of 26.01 min.
    const laid = targets(skeletonOf(night, handPit('pit-1', 60), undefined));
    expect(laid).toHaveLength(7);
    expect(laid[0]).toBeCloseTo(57.9, 1);
    expect(laid[1]! - laid[0]!).toBeCloseTo(182.1 / 7, 1);
  });

  it('needs no check when the fire is due only after its end', () => {
    expect(skeletonOf(night, { ...handPit('pit-1', 60), keepUntil: minute(60) }, undefined)).toEqual([]);
  });

  it('begins now when the first check is past due, and goes on from a frozen one', () => {
    expect(targets(skeletonOf(night, handPit('pit-1', -10), undefined))[0]).toBe(0);
    // Frozen at minute 10; 230 min remain, 9 gaps of 25.6 min, 8 checks after it.
    const laid = targets(skeletonOf(night, handPit('pit-1', 12), 600));
    expect(laid).toHaveLength(8);
    expect(laid[0]).toBeCloseTo(10 + 230 / 9, 1);
  });

  it('never lets the last check come so early that the fire falls due before its end', () => {
    const pit = handPit('pit-1', 60);
    expect(skeletonOf(night, pit, undefined).at(-1)!.releaseS).toBeGreaterThanOrEqual(240 * 60 - pit.gap.dueS);
  });

  it('keeps promised places while the first lies in its window, and is laid anew when it does not', () => {
    const pit = handPit('pit-1', 30);
    expect(targets(keptSkeleton(night, pit, undefined, [25 * 60, 50 * 60])).slice(0, 2)).toEqual([25, 50]);
    expect(targets(keptSkeleton(night, pit, undefined, [40 * 60, 65 * 60]))).toEqual(targets(skeletonOf(night, pit, undefined)));
  });
});
