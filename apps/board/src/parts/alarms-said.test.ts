import type { AlarmView } from '@stokehold/domain/contract';
import { expect, it } from 'vitest';
import { figuresOf } from '../units/figures.js';
import '../words/alarm.js';
import type { SayAlarmWords } from '../words/alarm.js';
import { sayIn } from '../words/words.js';
import { alarmRows, callsNow, callsPerson, toldWords } from './alarms-said.js';

const [ines, renske] = ['00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000002'] as [never, never];
const alarm = (more: Partial<AlarmView> = {}): AlarmView => ({
  id: 'a', kind: 'below-band', priority: 'low', pitId: null, state: 'unacknowledged', raisedAt: '2027-01-16T05:00:00Z', returnedAt: null, acknowledgedBy: null, shelf: null,
  suppressedBy: null, underId: null, told: { tier: 'holder', people: [ines], next: { tier: 'lead', at: '2027-01-16T05:05:00Z' } }, longestShelfS: 3600, ...more,
});
const names: Readonly<Record<string, string>> = { [ines]: 'Ines', [renske]: 'Renske' };
const say = (one: AlarmView, language: 'en' | 'es' = 'en') =>
  toldWords(one, (id) => names[id] ?? '', sayIn(language, 'alarm') as SayAlarmWords, figuresOf({ units: 'us', timeZone: 'America/Chicago', language }));

it('it says who was told and who is next', () => {
  expect(say(alarm())).toMatch(/^Told Ines; the lead at 23:05/);
  expect(say(alarm(), 'es')).toMatch(/^Avisado a Ines; al jefe de turno a las 23:05/);
});
it('set aside, it says till when and by whom', () => expect(say(alarm({ shelf: { until: '2027-01-16T05:15:00Z', by: renske, way: 'timed' } }))).toMatch(/^set aside till 23:15 by Renske$/));
it('quiet by design, it says why', () => expect(say(alarm({ suppressedBy: 'after-check', told: null }))).toBe('quiet: just looked at'));
it('with nobody there it says so', () => expect(say(alarm({ told: { tier: 'everyone', people: [], next: null } }))).toBe('Nobody is here to tell'));

it('what stands under a first cause is counted with it and not shown by itself', () => {
  expect(alarmRows([alarm(), alarm({ id: 'b', underId: 'a' }), alarm({ id: 'c', underId: 'a' })]).map((row) => [row.alarm.id, row.under])).toEqual([['a', 2]]);
});
it('it calls whom it told, and nobody while it is quiet', () => {
  expect(callsPerson([alarm()], ines)?.id).toBe('a');
  expect(callsPerson([alarm()], renske)).toBeUndefined();
  for (const quiet of [{ state: 'acknowledged' }, { suppressedBy: 'check-due' }, { underId: 'x' }, { shelf: { until: '', by: renske, way: 'timed' } }] as Partial<AlarmView>[]) expect(callsNow(alarm(quiet))).toBe(false);
});
