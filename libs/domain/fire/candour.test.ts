import { expect, it } from 'vitest';
import { epochS, later } from '../quantity/index.js';
import { advance } from './advance.js';
import { beliefFromBytes, beliefToBytes } from './bytes.js';
import { comparedWith, expecting, widthOf } from './candour.js';
import { seeCheck } from './check.js';
import { kindle } from './kindle.js';
import { REFERENCE_SHAPE, USUAL_DOOR_GAP_M } from './pit-shape.js';
import { seeReadings } from './see.js';

const around = { weather: { windMPerS: 1.5, fromFireEndRad: 1.5, ambientTempC: 15, rainFrac: 0 }, air: { doorGapM: USUAL_DOOR_GAP_M, damperFrac: 1 }, foodLoadFrac: 0.6 };
const burning = kindle({ shape: REFERENCE_SHAPE, at: epochS(0), state: 'full', ambientTempC: 15, seed: 3 });
const probed = seeReadings(burning, { fireEndTempC: 122, stackEndTempC: 120 }).belief;
const told = (surprises: { readonly count: number; readonly sum: number }) => widthOf({ ...burning, surprises });

it('a pit that has shown nothing has the fan of every pit', () => {
  expect(widthOf(burning)).toBe(1);
});

it('surprises as large as expected leave the fan, smaller ones narrow it, larger ones widen it, within bounds', () => {
  expect(told({ count: 10, sum: 10 })).toBe(1);
  // By hand: (3 + 3) / (3 + 13) = 0.375, its root 0.612.
  expect(told({ count: 13, sum: 3 })).toBeCloseTo(0.612, 3);
  // By hand: (3 + 20) / (3 + 10) = 1.769, its root 1.330.
  expect(told({ count: 10, sum: 20 })).toBeCloseTo(1.33, 2);
  expect(told({ count: 1000, sum: 0 })).toBe(0.55);
  expect(told({ count: 10, sum: 90 })).toBe(1.5);
});

it('what is expected is set beside the reading of that instant, once, as a square of the spread', () => {
  const expects = { at: epochS(1200), tempC: 120, sdK: Math.sqrt(8) };
  const before = { ...probed, at: epochS(1080), expects };
  expect(comparedWith(before, 126)).toBe(before);
  const after = comparedWith({ ...before, at: epochS(1200) }, 126);
  // By hand: 6 K off, 36 / (8 + 1) = 4.
  expect(after.surprises?.count).toBe(1);
  expect(after.surprises?.sum).toBeCloseTo(4, 12);
  expect(after.expects).toBeUndefined();
  expect(comparedWith(after, 140)).toBe(after);
});

it('an instant that no probe showed is not compared', () => {
  const late = { ...probed, at: epochS(2000), expects: { at: epochS(1200), tempC: 120, sdK: 3 } };
  expect(comparedWith(late, 126)).toMatchObject({ at: 2000 });
  expect(comparedWith(late, 126).surprises).toBeUndefined();
  expect(comparedWith(late, 126).expects).toBeUndefined();
});

it('a fire without probes expects nothing of itself; hands at the fire end what was expected; bytes keep it', () => {
  expect(expecting(burning, around).expects).toBeUndefined();
  const minute = advance(probed, { ...around, to: later(probed.at, 60) });
  expect(minute.expects?.at).toBe(1200);
  expect(beliefFromBytes(beliefToBytes({ ...minute, surprises: { count: 2, sum: 3.5 } }))).toMatchObject({ expects: minute.expects, surprises: { count: 2, sum: 3.5 } });
  expect(seeCheck(minute, { on: { pieces: [], raked: true }, position: 'door' }).expects).toBeUndefined();
});
