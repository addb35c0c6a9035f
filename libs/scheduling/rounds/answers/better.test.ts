import { expect, it } from 'vitest';
import { handNight } from '../hand-night.js';
import type { Levels } from '../plan.js';
import { isBetter } from './better.js';

const level: Levels = { unsafeS: 0, unsafeChecks: 0, unplaced: 0, pastLatestS: 0, lateWeightedS: 100, tasksLateS: 0, uneven: 5, unevenUnpleasant: 0, promises: 2, walkS: 50 };
const problem = handNight({});
const better = (one: Partial<Levels>, other: Partial<Levels> = {}) => isBetter({ ...level, ...one }, { ...level, ...other }, problem);

it('an earlier level decides, whatever the later ones say', () => {
  expect(better({ unsafeS: 1, lateWeightedS: 0, walkS: 0 })).toBe(false);
  expect(better({ walkS: 49 })).toBe(true);
  expect(better({ walkS: 49, uneven: 6 })).toBe(false);
});
it('the same worth is not better', () => {
  expect(better({})).toBe(false);
});
it('a changed promise weighs half of 60 s of lateness for each half unit', () => {
  // by hand: 2 x 100 + 60 x 2 = 320; 2 x 130 + 60 x 1 = 320; 2 x 131 + 60 = 322
  expect(better({ lateWeightedS: 130, promises: 1, walkS: 49 })).toBe(true);
  expect(better({ lateWeightedS: 131, promises: 1, walkS: 49 })).toBe(false);
});
