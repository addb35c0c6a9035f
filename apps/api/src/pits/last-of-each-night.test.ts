import { epochS } from '@stokehold/domain/quantity';
import { expect, it } from 'vitest';
import { lastOfEachNight } from './last-of-each-night.js';

const points = (...hours: readonly number[]) => hours.map((hour) => ({ at: epochS(hour * 3600) }));

it('a pause of more than six hours ends a night; the last point of each is kept', () => {
  expect(lastOfEachNight(points(0, 1, 7, 14, 15, 40))).toEqual(points(7, 15, 40));
  expect(lastOfEachNight(points())).toEqual([]);
});
