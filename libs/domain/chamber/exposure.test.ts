import { expect, it } from 'vitest';
import { zoneExposuresWPerM2 } from './index.js';

const pit = { zoneLengthsM: [0.76, 0.76, 0.76], fireboxLengthM: 0.61, fireboxDiameterM: 0.61 };

it('radiant heat falls along the chamber, and rises as the fire moves to the throat (P12, P23: common practice, no source)', () => {
  const [door, middle, throat] = (['door', 'middle', 'throat'] as const).map((position) => zoneExposuresWPerM2({ ...pit, position }));
  for (const fluxes of [door!, middle!, throat!]) expect([...fluxes].sort((a, b) => b - a)).toEqual(fluxes);
  expect(door![0]).toBeLessThan(middle![0]!);
  expect(middle![0]).toBeLessThan(throat![0]!);
});

it('far away it falls with the square of the distance: A / (pi d2) times 0.9 sigma (900^4 - 397^4), within 3 % at 1.6 m, by hand', () => {
  const [, second] = zoneExposuresWPerM2({ ...pit, position: 'door' });
  const distanceM = 0.61 * 0.75 + 0.76 * 1.5;
  const byHand = ((0.3355 * 0.122) / (Math.PI * distanceM ** 2)) * 0.9 * 5.670374e-8 * (900 ** 4 - 397 ** 4);
  expect(Math.abs(second! / byHand - 1)).toBeLessThan(0.03);
});
