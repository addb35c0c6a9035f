import { expect, it } from 'vitest';
import { OutOfRangeError } from '../quantity/index.js';
import { walkTableS } from './walk.js';

it('walking takes the straight way at walking speed, in whole seconds rounded up', () => {
  // by hand: 3-4-5 triangle, 5 m at 1.2 m/s = 4.17 s; 3 m = 2.5 s; 4 m = 3.33 s
  const places = [{ xM: 0, yM: 0 }, { xM: 3, yM: 4 }, { xM: 3, yM: 0 }];
  expect(walkTableS(places, 1.2)).toEqual([[0, 5, 3], [5, 0, 4], [3, 4, 0]]);
});
it('nobody walks at 0 m/s', () => expect(() => walkTableS([], 0)).toThrow(OutOfRangeError));
