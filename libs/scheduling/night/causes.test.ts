import { fromIso, later, type EpochS, type PersonId, type PitId } from '@stokehold/domain/quantity';
import { expect, it } from 'vitest';
import type { PlanChange } from '../rounds/index.js';
import { rootCauses, type CausedChange } from './causes.js';

const at = (time: string): EpochS => fromIso(`2027-01-16T${time}:00Z`);
const [ana, bo] = ['ana', 'bo'] as PersonId[] as [PersonId, PersonId];
const work = (pit: string, nth = 1) => ({ kind: 'check' as const, pitId: pit as PitId, nth });
const change = (pit: string, from: string, because: PlanChange['because'], { who = ana, nth = 1 } = {}): CausedChange => ({
  work: work(pit, nth), personsBefore: [who], startBefore: at(from), endBefore: later(at(from), 300), because,
});
const room = { code: 'made-room' } as const;
const cause = (changes: readonly CausedChange[], key: string, now = '02:07') => rootCauses(changes, at(now)).get(key);

it('work that should be over by now and moved was not reported', () => {
  expect(cause([change('pit-2', '02:00', room)], 'check/pit-2/1')).toEqual({ code: 'not-reported' });
});
it('what the same hands had after it moved because it ran over', () => {
  const both = [change('pit-2', '02:00', room), change('pit-4', '02:10', room)];
  expect(cause(both, 'check/pit-4/1')).toEqual({ code: 'work-before-ran-over', work: work('pit-2'), personId: ana });
  expect(cause([both[0]!, change('pit-4', '02:10', room, { who: bo })], 'check/pit-4/1')).toEqual(room);
});
it('what made room for work that ran over says so, though other hands had it', () => {
  const both = [change('pit-2', '02:00', room), change('pit-4', '02:10', { code: 'made-room', work: work('pit-2') }, { who: bo })];
  expect(cause(both, 'check/pit-4/1')).toEqual({ code: 'work-before-ran-over', work: work('pit-2'), personId: ana });
});
it('what made room for the work of somebody who is not there moved because of them', () => {
  const away = { code: 'person-not-there', personId: bo } as const;
  const both = [change('pit-2', '02:10', away, { who: bo }), change('pit-4', '02:20', { code: 'made-room', work: work('pit-2') })];
  expect(cause(both, 'check/pit-4/1')).toEqual(away);
});
it('a later check of a pit has the cause of the check before it', () => {
  const moved = { code: 'due-moved' } as const;
  const chain = [change('pit-2', '02:10', { code: 'person-not-there', personId: bo }), change('pit-2', '02:40', moved, { nth: 2 }), change('pit-2', '03:10', moved, { nth: 3 })];
  expect(cause(chain, 'check/pit-2/3')).toEqual({ code: 'person-not-there', personId: bo });
  expect(cause(chain.slice(1), 'check/pit-2/3')).toEqual(moved);
});
it('work that made room for each other ends', () => {
  const ring = [change('a', '02:20', { code: 'made-room', work: work('b') }), change('b', '02:30', { code: 'made-room', work: work('a') })];
  expect(cause(ring, 'check/a/1')?.code).toBe('made-room');
});
