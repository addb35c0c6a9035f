import { expect, it } from 'vitest';
import { epochS, later, type PersonId } from '../quantity/index.js';
import { ALARM_KINDS, type AlarmKind } from './list.js';
import { mayCall, MOST_CALLS, whoIsTold } from './telling.js';

const SINCE = epochS(1_800_000_000);
const [ines, odell, renske] = ['ines', 'odell', 'renske'] as PersonId[] as [PersonId, PersonId, PersonId];
const all = { holders: [ines], leads: [renske], everyone: [ines, odell, renske] };
const told = (kind: AlarmKind, afterS: number, present = all) => whoIsTold(kind, SINCE, later(SINCE, afterS), present);

it('whoever has the pit is called first, then the lead, then everyone', () => {
  expect(told('past-latest-safe', 0)).toEqual({ tier: 'holder', people: [ines], next: { tier: 'lead', at: later(SINCE, 300) } });
  expect(told('past-latest-safe', 299).people).toEqual([ines]);
  expect(told('past-latest-safe', 300)).toEqual({ tier: 'lead', people: [ines, renske], next: { tier: 'everyone', at: later(SINCE, 600) } });
  expect(told('past-latest-safe', 600)).toEqual({ tier: 'everyone', people: [ines, renske, odell], next: null });
});
it('a fire that runs away is called to everyone at once', () => expect(told('running-away', 0).people).toHaveLength(3));
it('where nobody has the pit the lead is called at once, and where no lead is, everyone', () => {
  expect(told('past-latest-safe', 0, { ...all, holders: [] }).people).toEqual([renske]);
  expect(told('past-latest-safe', 0, { holders: [], leads: [], everyone: [odell] })).toMatchObject({ tier: 'everyone', people: [odell], next: null });
});
it('short wood is the lead\'s and stays it', () => expect(told('wood-short', 86_400)).toEqual({ tier: 'lead', people: [ines, renske], next: null }));
it('nobody there is nobody called, whatever the alarm', () => {
  for (const kind of ALARM_KINDS) expect(told(kind, 0, { holders: [], leads: [], everyone: [] }).people).toEqual([]);
});
it('nobody is called more than ten times in ten minutes, and what presses has the last places', () => {
  for (const kind of ALARM_KINDS) expect(mayCall(kind, MOST_CALLS)).toBe(false);
  expect([mayCall('above-band', 6), mayCall('past-latest-safe', 6), mayCall('running-away', 9), mayCall('bed-nearly-out', 9)]).toEqual([false, true, true, false]);
});
