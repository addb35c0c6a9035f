import { expect, it } from 'vitest';
import { type EpochS, fromIso, later } from '../quantity/index.js';
import { deviceTime, timeOfLook } from './device-time.js';

const now = fromIso('2027-01-16T02:00:00Z');
const ago = (minutes: number) => later(now, -60 * minutes);

it('a phone 45 minutes fast that looked ten minutes ago looked ten minutes ago', () => {
  const seen = deviceTime({ deviceAt: ago(10 - 45), sentAt: ago(-45), arrivedAt: now });
  expect(seen).toEqual({ at: ago(10), clockOffsetS: -2700, clockOff: true });
  expect(timeOfLook(seen, now)).toEqual({ ok: true, value: ago(10) });
});

it('two seconds are no error of a clock, three are corrected and six minutes are marked', () => {
  expect(deviceTime({ deviceAt: ago(1), sentAt: later(now, -2), arrivedAt: now })).toMatchObject({ at: ago(1), clockOff: false });
  expect(deviceTime({ deviceAt: ago(1), sentAt: later(now, -3), arrivedAt: now })).toMatchObject({ at: later(ago(1), 3), clockOff: false });
  expect(deviceTime({ deviceAt: ago(6), sentAt: ago(6), arrivedAt: now })).toMatchObject({ at: now, clockOff: true });
});

it.each([
  // minutes ago, what comes of it
  { minutes: -2, code: 'check-in-the-future' },
  { minutes: 72 * 60 + 1, code: 'check-too-old' },
])('a look $minutes minutes ago is refused: $code', ({ minutes, code }) => {
  const seen = deviceTime({ deviceAt: ago(minutes), arrivedAt: now });
  expect(timeOfLook(seen, now)).toMatchObject({ ok: false, refusal: { code } });
});

it('half a minute ahead counts as now, 72 hours ago still counts', () => {
  expect(timeOfLook(deviceTime({ deviceAt: later(now, 30), arrivedAt: now }), now)).toEqual({ ok: true, value: now });
  const old = ago(72 * 60) as EpochS;
  expect(timeOfLook(deviceTime({ deviceAt: old, arrivedAt: now }), now)).toEqual({ ok: true, value: old });
});

it.each([
  // Our machine's clock was set ten minutes ahead; we go by the time of before.
  { what: 'a phone that goes by the new time', sentAt: ago(-10), deviceAt: ago(-7), is: { at: ago(3), clockOff: false } },
  { what: 'a phone that goes by the old time', sentAt: now, deviceAt: ago(3), is: { at: ago(3), clockOff: false } },
  { what: 'a phone that goes by neither', sentAt: ago(-45), deviceAt: ago(-42), is: { at: ago(3), clockOff: true } },
  { what: 'a gateway that goes by the new time and does not say so', deviceAt: ago(-10), is: { at: now, clockOff: false } },
  { what: 'a gateway that goes by the old time and does not say so', deviceAt: ago(1), is: { at: ago(1), clockOff: false } },
])('after our own clock was set, $what is understood', ({ sentAt, deviceAt, is }) => {
  expect(deviceTime({ deviceAt, ...(sentAt !== undefined && { sentAt }), arrivedAt: now, aheadS: 600 })).toMatchObject(is);
});
