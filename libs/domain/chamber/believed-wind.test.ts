import { expect, it } from 'vitest';
import { epochS } from '../quantity/index.js';
import { believedWind } from './believed-wind.js';

const calm = { seenAt: epochS(0), windMPerS: 2, gustMPerS: 3, fromDeg: 270 };
const burst = { seenAt: epochS(3600), windMPerS: 8, gustMPerS: 13, fromDeg: 270 };

it('a wind told alone, and one told just now, is believed as it was seen', () => {
  expect(believedWind([], epochS(0))).toBeUndefined();
  expect(believedWind([calm], epochS(90_000))).toEqual({ windMPerS: 2, gustMPerS: 3, fromDeg: expect.closeTo(270, 9) as number });
  expect(believedWind([calm, burst], epochS(3600))?.windMPerS).toBeCloseTo(8, 9);
});

it('a burst is drawn back to the mean of the night as it ages', () => {
  // By hand: mean 5; after 30 min 5 + 3/e = 6.104; gusts 8 + 5/e = 9.839.
  expect(believedWind([calm, burst], epochS(5400))).toMatchObject({ windMPerS: expect.closeTo(6.104, 3) as number, gustMPerS: expect.closeTo(9.839, 3) as number });
  expect(believedWind([calm, burst], epochS(3600 * 12))?.windMPerS).toBeCloseTo(5, 3);
});

it('winds from opposite sides cancel, and keep the side of the last while it is fresh', () => {
  const turned = { ...calm, seenAt: epochS(3600), fromDeg: 90 };
  // By hand: mean 0, so 2/e from the east after half an hour.
  const believed = believedWind([calm, turned], epochS(5400));
  expect(believed?.windMPerS).toBeCloseTo(0.736, 3);
  expect(believed?.fromDeg).toBeCloseTo(90, 6);
});
