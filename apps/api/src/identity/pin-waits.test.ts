import { type EpochS, epochS, later } from '@stokehold/domain/quantity';
import { expect, it } from 'vitest';
import { afterWrongPin, pinStand, type WrongPins } from './pin-waits.js';

const NOW = epochS(1_800_000_000);
const NONE: WrongPins = { inARow: 0, waitUntil: null };
const wrongTimes = (times: number, at: EpochS = NOW) => Array.from({ length: times }).reduce<WrongPins>((wrong) => afterWrongPin(wrong, at), NONE);

it('four wrong PINs cost no wait', () => {
  expect(pinStand(wrongTimes(4), 4, NOW)).toEqual({ kind: 'open' });
});

// NIST SP 800-63B advises growing waits from 30 s on and at most 100 failures in a row; a PIN as activation secret
// allows at most 10 (SP 800-63B-4 draft). The doubling and the 15 min are our own choice.
it.each([
  { wrong: 5, seconds: 30 },
  { wrong: 6, seconds: 60 },
  { wrong: 7, seconds: 120 },
  { wrong: 8, seconds: 240 },
  { wrong: 9, seconds: 480 },
])('after $wrong wrong PINs the wait is $seconds s, to the second', ({ wrong, seconds }) => {
  const kept = wrongTimes(wrong);
  expect(pinStand(kept, wrong, NOW)).toEqual({ kind: 'wait', seconds });
  expect(pinStand(kept, wrong, later(NOW, seconds - 1))).toEqual({ kind: 'wait', seconds: 1 });
  expect(pinStand(kept, wrong, later(NOW, seconds))).toEqual({ kind: 'open' });
});

it('no wait is longer than a quarter of an hour', () => {
  for (let times = 5; times < 40; times++) expect(wrongTimes(times).waitUntil! - NOW).toBeLessThanOrEqual(900);
});

it('ten wrong PINs in a row shut the PIN off on the device, however long one waits', () => {
  expect(pinStand(wrongTimes(10), 10, later(NOW, 365 * 86_400))).toEqual({ kind: 'off' });
});

it('a hundred wrong PINs over all devices shut it off everywhere', () => {
  expect(pinStand(NONE, 99, NOW)).toEqual({ kind: 'open' });
  expect(pinStand(NONE, 100, NOW)).toEqual({ kind: 'off' });
});
