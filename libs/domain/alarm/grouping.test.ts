import { expect, it } from 'vitest';
import { epochS, type PitId } from '../quantity/index.js';
import { causesOf } from './grouping.js';
import { ALARM_KINDS, ALARM_LIST, type AlarmKind } from './list.js';
import type { AlarmState } from './state.js';

const alarm = (kind: AlarmKind, pitId: string | null = 'a', state: AlarmState = 'unacknowledged') => ({ id: `${kind} ${pitId}`, kind, pitId: pitId as PitId | null, state, raisedAt: epochS(0) });

it('late and below the band stand under the bed that is nearly out, of the same pit only', () => {
  const under = causesOf([alarm('below-band'), alarm('past-latest-safe'), alarm('bed-nearly-out'), alarm('below-band', 'b')]);
  expect([...under]).toEqual([['below-band a', 'bed-nearly-out a'], ['past-latest-safe a', 'bed-nearly-out a']]);
});
it('every lost probe of the yard stands under the gateway that went silent', () => {
  const under = causesOf([alarm('gateway-silent', null), alarm('probe-failed', 'a'), alarm('probe-failed', 'b')]);
  expect([...under.values()]).toEqual(['gateway-silent null', 'gateway-silent null']);
});
it('a cause that is over covers nothing', () => expect(causesOf([alarm('below-band'), alarm('bed-nearly-out', 'a', 'returned-unacknowledged')]).size).toBe(0));
it('no alarm is its own cause, in a circle or otherwise', () => {
  const reaches = (from: AlarmKind, to: AlarmKind, seen: readonly AlarmKind[] = []): boolean =>
    ALARM_LIST[from].covers.some((kind) => kind === to || (!seen.includes(kind) && reaches(kind, to, [...seen, kind])));
  for (const kind of ALARM_KINDS) expect(reaches(kind, kind)).toBe(false);
});
it('what covers is never less pressing than what it covers', () => {
  const order = ['critical', 'high', 'medium', 'low'];
  for (const kind of ALARM_KINDS) for (const covered of ALARM_LIST[kind].covers) expect(order.indexOf(ALARM_LIST[kind].priority)).toBeLessThanOrEqual(order.indexOf(ALARM_LIST[covered].priority));
});
