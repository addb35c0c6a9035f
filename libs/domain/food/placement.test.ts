import { expect, it } from 'vitest';
import { loadFrac } from './load.js';
import { placementOf } from './placement.js';

const threeZones = () => 3;

it('two entries of one zone become one', () => {
  expect(placementOf([{ pitId: 'a', zone: 1, pieces: 2 }, { pitId: 'a', zone: 1, pieces: 3 }], { pieces: 6 }, threeZones)).toEqual({
    ok: true,
    value: [{ pitId: 'a', zone: 1, pieces: 5 }],
  });
});
it('more pieces than the cook has are refused with both numbers', () => {
  expect(placementOf([{ pitId: 'a', zone: 0, pieces: 7 }], { pieces: 6 }, threeZones)).toEqual({
    ok: false,
    refusal: { code: 'pieces-more-than-cook', placed: 7, pieces: 6 },
  });
});
it('a fourth zone on a pit of three is refused', () => {
  expect(placementOf([{ pitId: 'a', zone: 3, pieces: 1 }], { pieces: 6 }, threeZones)).toMatchObject({ ok: false, refusal: { code: 'zone-unknown', zones: 3 } });
});
it('nothing on any pit is a placement: the cook stands beside the pits', () => {
  expect(placementOf([], { pieces: 6 }, threeZones)).toEqual({ ok: true, value: [] });
});
it('113 kg load a mid-size pit fully: 3 x 132 kJ/K over 3.5 kJ/kgK, by hand', () => {
  expect(loadFrac({ massKg: 113.14, lengthM: 2.28, diameterM: 0.762 })).toBeCloseTo(1, 4);
  expect(loadFrac({ massKg: 56.57, lengthM: 2.28, diameterM: 0.762 })).toBeCloseTo(0.5, 4);
});
it('an overfull pit is full, an empty one empty', () => {
  expect(loadFrac({ massKg: 900, lengthM: 2, diameterM: 0.7 })).toBe(1);
  expect(loadFrac({ massKg: 0, lengthM: 2, diameterM: 0.7 })).toBe(0);
});
