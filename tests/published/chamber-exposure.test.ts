import { bottomBurns, flameLeanOf, hotEndOf, zoneExposuresWPerM2 } from '@stokehold/domain/chamber';
import { REFERENCE_SHAPE } from '@stokehold/domain/fire';
import { expect, it } from 'vitest';
import { oneFire } from './one-fire.js';

const pit = (position: 'door' | 'throat') => zoneExposuresWPerM2({ ...REFERENCE_SHAPE, zoneLengthsM: [0.76, 0.76, 0.76], position });

it('P23: a fire at the throat scorches the near end and no other, a fire by the door none (common practice, no source)', () => {
  const throat = pit('throat');
  expect(throat[0]!).toBeGreaterThan(2 * pit('door')[0]!);
  expect(throat.map(bottomBurns)).toEqual([true, false, false]);
  expect(pit('door').map(bottomBurns)).toEqual([false, false, false]);
});
it('P12: with a fire at the throat the stack end takes less than a tenth of the near end (common practice, no source)', () => {
  const [near, , far] = pit('throat');
  expect(far!).toBeLessThan(0.1 * near!);
});
it('P18, P22, P23: which end runs hot agrees with the model of the fire (common practice, no source)', () => {
  const apart = (position: 'door' | 'throat', windMPerS: number, fromFireEndRad: number) => {
    const fire = oneFire({ position, weather: { windMPerS, fromFireEndRad } });
    let sum = 0;
    fire.feed(10, 45, undefined, () => (sum += fire.endsF().fireEnd - fire.endsF().stackEnd));
    return sum / 450;
  };
  const weather = { ambientTempC: 15, rainFrac: 0 };
  const calm = apart('door', 0.5, Math.PI / 2);
  for (const [position, windMPerS, fromFireEndRad] of [['door', 0.5, Math.PI / 2], ['throat', 0.5, Math.PI / 2], ['door', 6, Math.PI]] as const) {
    const hot = hotEndOf({ position, weather: { ...weather, windMPerS, fromFireEndRad } }) === 'fire-end';
    expect(apart(position, windMPerS, fromFireEndRad) > calm + 1).toBe(hot);
  }
});
it('P15: with the door open about an inch flames stand upright; the same air through a small intake blows them into the chamber (common practice, no source)', () => {
  // Air of the model at its reference draft, 22.5 g/s; door 0.457 m wide, open 25 mm and ajar at its leak; an intake of 60 cm2.
  const air = { airKgPerS: 0.0225, ambientTempC: 15 };
  expect(flameLeanOf({ ...air, inletM2: 0.457 * 0.0254 + 0.002 })).toBe('upright');
  expect(flameLeanOf({ ...air, inletM2: 0.006 })).toBe('into-chamber');
});
