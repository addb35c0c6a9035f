import { expect, it } from 'vitest';
import { epochS } from '../quantity/index.js';
import { calibrationAt, correctionOf } from './calibration.js';

it('without a comparison a probe is taken as it is', () => expect(correctionOf([])(121)).toBe(121));
it('ice alone shifts everywhere', () => expect(correctionOf([{ shownC: 1.2, trueC: 0 }])(121)).toBeCloseTo(119.8, 9));
it('ice and boiling water shift and stretch', () => {
  // By hand: 1 shown is 0, 101 shown is 99; the line has the slope 0.99, so 51 shown is 49.5.
  const correct = correctionOf([{ shownC: 101, trueC: 99 }, { shownC: 1, trueC: 0 }]);
  expect(correct(51)).toBeCloseTo(49.5, 9);
  expect(correct(1)).toBeCloseTo(0, 9);
});
it('two comparisons close together only shift, by their mean', () => expect(correctionOf([{ shownC: 99, trueC: 98 }, { shownC: 102, trueC: 99 }])(20)).toBeCloseTo(18, 9));

it('the calibration that holds is the last one made, in whatever order they come', () => {
  const at = (from: number) => ({ from: epochS(from), against: [] });
  const all = [at(300), at(100), at(200)];
  expect(calibrationAt(all, epochS(250))).toBe(all[2]);
  expect(calibrationAt(all, epochS(99))).toBeUndefined();
  expect(calibrationAt(all, epochS(300))).toBe(all[0]);
});
