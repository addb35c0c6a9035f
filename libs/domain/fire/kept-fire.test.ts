import { expect, it } from 'vitest';
import { type EpochS, fromIso, later } from '../quantity/index.js';
import { dueMoved, heldDue } from './due-held.js';
import type { Due } from './due.js';
import { isAnotherFire, isLit, kindlingOf } from './lit.js';
import { firePositionOf } from './position.js';

const ten = fromIso('2027-01-16T04:00:00Z');
const at = (minutes: number) => later(ten, 60 * minutes);
const due = (earliest: number, dueIn: number, latest: number): Due => ({ earliestAt: at(earliest), dueAt: at(dueIn), latestSafeAt: at(latest), why: 'band' });
const band = { lowC: 118, highC: 124 };

it('a fire is lit from its light-up time on, or earlier when it burns already', () => {
  expect(isLit(at(10), undefined, at(9))).toBe(false);
  expect(isLit(at(10), undefined, at(10))).toBe(true);
  expect(isLit(at(10), { believedAt: at(8), mode: 'start-up' }, at(9))).toBe(true);
  expect(isLit(at(10), { believedAt: at(8), mode: 'out' }, at(9))).toBe(false);
  expect(isLit(at(600), { believedAt: at(0), mode: 'burning' }, at(500))).toBe(false);
});

it('a fire that burns when the next shift takes it over is the same fire; one that went out in the afternoon is not', () => {
  expect(isAnotherFire(at(0), { believedAt: at(-2), mode: 'burning' })).toBe(false);
  expect(isAnotherFire(at(0), { believedAt: at(-2), mode: 'out' })).toBe(true);
  expect(isAnotherFire(at(0), { believedAt: at(-181), mode: 'burning' })).toBe(true);
  expect(isAnotherFire(at(0), { believedAt: at(30), mode: 'out' })).toBe(false);
});

it('a fire is believed cold at its light-up time, and kept by somebody when that is hours ago', () => {
  expect(kindlingOf(at(-90), band, at(0))).toEqual({ at: at(-90), state: 'cold' });
  expect(kindlingOf(at(-91), band, at(0))).toEqual({ at: at(0), state: 'fair', chamberTempC: 121 });
});

it('a due time that has come stays until somebody looks, however the forecast goes on', () => {
  const held = heldDue(due(-10, -1, 15), due(5, 10, 25), at(0));
  expect(held).toMatchObject({ earliestAt: at(-10), dueAt: at(-1), latestSafeAt: at(25) });
  expect(heldDue(due(-30, -20, -5), due(2, 5, 10), at(0))).toEqual(due(-30, -20, -5));
});

it('a due time that was still to come is now at the earliest, though the forecast would have had it half an hour ago', () => {
  expect(heldDue(due(14, 24, 34), due(-16, -6, -1), at(4))).toMatchObject({ dueAt: at(4), latestSafeAt: at(4) });
});

it('half a minute is no move, two minutes are', () => {
  const before = due(10, 20, 35);
  const near: Due = { ...before, dueAt: later(before.dueAt, 30) };
  expect(heldDue(before, near, at(0))).toEqual(before);
  expect(dueMoved(before, near)).toBe(false);
  expect(heldDue(before, due(10, 22, 35), at(0)).dueAt).toBe(at(22));
  expect(dueMoved(before, due(10, 22, 35))).toBe(true);
  expect(dueMoved(undefined, before)).toBe(true);
});

it('whatever a forecast says, the window keeps its order', () => {
  const times = [-20, -3, 0, 4, 11, 40];
  const windows = times.flatMap((e, i) => times.slice(i).flatMap((d, j) => times.slice(i + j).map((l) => due(e, d, l))));
  for (const before of windows) {
    for (const fresh of windows.filter(({ earliestAt }) => earliestAt >= ten)) {
      const held = heldDue(before, fresh, ten as EpochS);
      expect(held.earliestAt <= held.dueAt && held.dueAt <= held.latestSafeAt).toBe(true);
    }
  }
});

it('splits across the firebox keep the fire by the door', () => {
  expect(firePositionOf('across')).toBe('door');
  expect(firePositionOf('lengthwise')).toBe('middle');
});
