import { expect, it } from 'vitest';
import { endTempsOf, surroundingsOf, windFromFireEndRad } from './index.js';

it.each([
  // geometry: compass headings, by hand
  { fromDeg: 90, fireEndDeg: 90, rad: 0, what: 'an east wind onto a firebox that looks east' },
  { fromDeg: 270, fireEndDeg: 90, rad: Math.PI, what: 'a west wind onto the stack end of it' },
  { fromDeg: 350, fireEndDeg: 10, rad: Math.PI / 9, what: 'twenty degrees across north' },
  { fromDeg: 10, fireEndDeg: 350, rad: Math.PI / 9, what: 'the same from the other side' },
  { fromDeg: 0, fireEndDeg: 270, rad: Math.PI / 2, what: 'a north wind across a pit that lies east to west' },
])('$what stands at $rad rad', ({ fromDeg, fireEndDeg, rad }) => {
  expect(windFromFireEndRad({ fromDeg, fireEndDeg })).toBeCloseTo(rad, 12);
});

it('of three zones the first is the fire end, the last the stack end, and the middle is left out', () => {
  const temps = [{ zone: 0, tempC: 130 }, { zone: 0, tempC: 126 }, { zone: 1, tempC: 300 }, { zone: 2, tempC: 120 }];
  expect(endTempsOf(temps, 3)).toEqual({ fireEndTempC: 128, stackEndTempC: 120 });
});

it('a pit with one probe in its middle is read at both ends, one with none at neither', () => {
  expect(endTempsOf([{ zone: 1, tempC: 121 }], 3)).toEqual({ fireEndTempC: 121, stackEndTempC: 121 });
  expect(endTempsOf([{ zone: 0, tempC: 121 }], 1)).toEqual({ fireEndTempC: 121, stackEndTempC: 121 });
  expect(endTempsOf([], 4)).toEqual({});
});

it('a probe at one end says nothing of the other', () => {
  expect(endTempsOf([{ zone: 3, tempC: 118 }, { zone: 1, tempC: 99 }], 4)).toEqual({ stackEndTempC: 118 });
});

it('no more food than full lies on a pit', () => {
  const calm = { windMPerS: 0, gustMPerS: 0, fromDeg: 0, ambientTempC: 15, rainFrac: 0, fireEndDeg: 0 };
  expect(surroundingsOf({ ...calm, foodLoadFrac: 1.4 }).foodLoadFrac).toBe(1);
});
