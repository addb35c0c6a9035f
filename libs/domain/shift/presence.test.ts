import { expect, it } from 'vitest';
import { fromIso, type PersonId } from '../quantity/index.js';
import type { PersonOnShift } from './crew.js';
import { absences, breakOver, breakReported, onBreak, presenceAt, reported } from './presence.js';

const at = (time: string) => fromIso(`2027-01-16T${time}:00Z`);
const ana: PersonOnShift = {
  id: 'ana' as PersonId, name: 'Ana', skills: ['fire'], startsAt: at('00:00'), endsAt: at('08:00'), breaks: [], presence: 'here', wasAway: [],
};

it('somebody of whom nothing is heard is there in their hours', () => {
  expect(presenceAt(ana, fromIso('2027-01-15T23:59:00Z'))).toBe('not-yet');
  expect(presenceAt(ana, at('00:00'))).toBe('here');
  expect(presenceAt(ana, at('08:00'))).toBe('gone-home');
  expect(absences(ana)).toEqual([]);
});

it('somebody late is missing until they come, and it stays on record', () => {
  const late = reported(ana, { state: 'late', until: at('01:00'), at: at('00:10') });
  expect(presenceAt(late, at('00:30'))).toBe('late');
  expect(presenceAt(late, at('01:00'))).toBe('here');
  expect(absences(late)).toEqual([{ from: at('00:00'), until: at('01:00') }]);
  const later = reported(late, { state: 'late', until: at('01:30'), at: at('01:05') });
  expect(absences(later)).toEqual([{ from: at('00:00'), until: at('01:30') }]);
  const here = reported(later, { state: 'here', at: at('01:20') });
  expect(presenceAt(here, at('01:20'))).toBe('here');
  expect(absences(here)).toEqual([{ from: at('00:00'), until: at('01:20') }]);
});

it('late is said before the shift, and being on time after all leaves no absence', () => {
  const before = fromIso('2027-01-15T23:00:00Z');
  const late = reported(ana, { state: 'late', until: at('01:00'), at: before });
  expect(presenceAt(late, before)).toBe('late');
  expect(absences(reported(late, { state: 'here', at: fromIso('2027-01-15T23:55:00Z') }))).toEqual([]);
});

it('late without a time means until they say that they are here', () => {
  const late = reported(ana, { state: 'late', at: at('00:10') });
  expect(absences(late)).toEqual([{ from: at('00:00'), until: at('08:00') }]);
  expect(absences(reported(late, { state: 'here', at: at('02:00') }))).toEqual([{ from: at('00:00'), until: at('02:00') }]);
});

it('each time away is an absence of its own, and the same report twice changes nothing', () => {
  const away = reported(ana, { state: 'away', until: at('02:00'), at: at('01:00') });
  expect(reported(away, { state: 'away', until: at('02:00'), at: at('01:00') })).toEqual(away);
  expect(presenceAt(away, at('01:30'))).toBe('away');
  const again = reported(away, { state: 'away', at: at('05:00') });
  expect(absences(again)).toEqual([{ from: at('01:00'), until: at('02:00') }, { from: at('05:00'), until: at('08:00') }]);
  const longer = reported(away, { state: 'away', until: at('03:00'), at: at('01:40') });
  expect(absences(longer)).toEqual([{ from: at('01:00'), until: at('03:00') }]);
});

it('somebody late who falls ill is missing all along', () => {
  const late = reported(ana, { state: 'late', until: at('01:00'), at: at('00:10') });
  expect(absences(reported(late, { state: 'away', at: at('00:40') }))).toEqual([{ from: at('00:00'), until: at('08:00') }]);
});

const rest = { id: 'rest', lengthS: 1800, earliestAt: at('02:00'), latestAt: at('04:00') };
it('a break is under way from its beginning until its end, reported or by its length', () => {
  expect(onBreak(rest, at('03:00'))).toBe(false);
  const begun = breakReported(rest, 'begun', at('03:00'));
  expect([onBreak(begun, at('03:29')), onBreak(begun, at('03:30')), breakOver(begun, at('03:30'))]).toEqual([true, false, true]);
  const ended = breakReported(begun, 'ended', at('03:20'));
  expect([onBreak(ended, at('03:20')), breakOver(ended, at('03:20'))]).toEqual([false, true]);
  expect(breakReported(ended, 'begun', at('05:00'))).toEqual(ended);
});
it('a break that ended and was never reported begun had its length', () => {
  expect(breakReported(rest, 'ended', at('03:30'))).toEqual({ ...rest, beganAt: at('03:00'), endedAt: at('03:30') });
});
