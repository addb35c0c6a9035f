import { describe, expect, it } from 'vitest';
import { fromIso, later, type EpochS, type PersonId, type PitId, type ShiftId } from '../quantity/index.js';
import type { Hours } from './crew.js';
import { changed, LEAD_S, lightTask, plannable, runningOf, type PlannedShift } from './shift.js';

const at = (time: string) => fromIso(`2027-01-${time}:00Z`);
const now = at('15T18:00');
const person = (id: string, from: EpochS, until: EpochS, breaks: Hours['breaks'] = []): Hours => ({ id: id as PersonId, startsAt: from, endsAt: until, breaks });
const night: PlannedShift = {
  id: 'night' as ShiftId,
  from: at('15T23:00'),
  until: at('16T11:00'),
  people: [person('ana', at('15T23:00'), at('16T07:00')), person('bo', at('16T01:00'), at('16T11:00'))],
  pits: [{ pitId: 'north' as PitId, band: { lowC: 120, highC: 126 }, lightAt: at('15T23:30') }],
};
const rest = (earliest: EpochS, latest: EpochS, lengthS = 1800) => ({ id: 'rest', lengthS, earliestAt: earliest, latestAt: latest });
const refusalOf = (shift: PlannedShift, others: Parameters<typeof plannable>[1] = []) => {
  const result = plannable(shift, others, now);
  return result.ok ? undefined : result.refusal;
};

describe('a shift', () => {
  it('is planned when everything lies inside it', () => expect(refusalOf(night)).toBeUndefined());
  it('that ends before it begins is refused', () => {
    expect(refusalOf({ ...night, until: at('15T22:00') })?.code).toBe('shift-ends-before-it-begins');
    expect(refusalOf({ ...night, until: night.from })?.code).toBe('shift-ends-before-it-begins');
  });
  it('may take 24 hours and not a second more', () => {
    expect(refusalOf({ ...night, until: later(night.from, 24 * 3600) })).toBeUndefined();
    expect(refusalOf({ ...night, until: later(night.from, 24 * 3600 + 1) })?.code).toBe('shift-too-long');
  });
  it('that is over is not changed', () => {
    const result = plannable(night, [], night.until);
    expect(result).toEqual({ ok: false, refusal: { code: 'shift-has-ended' } });
  });
  it('overlaps another of the yard, but not itself and not the one that follows at once', () => {
    const other = { ...night, id: 'day' as ShiftId, from: at('16T10:59'), until: at('16T20:00'), people: [] };
    expect(refusalOf(night, [other])).toEqual({ code: 'shift-overlaps', shiftId: 'day' });
    expect(refusalOf(night, [{ ...other, from: night.until }])).toBeUndefined();
    expect(refusalOf({ ...night, until: at('16T10:00') }, [night])).toBeUndefined();
  });
  it('does not take a person who is on another shift at that time, nor one person twice', () => {
    const day = { id: 'day' as ShiftId, from: night.until, until: at('16T20:00'), people: [person('bo', at('16T10:00'), at('16T20:00'))] };
    expect(refusalOf(night, [day])).toEqual({ code: 'person-on-two-shifts', personId: 'bo' });
    expect(refusalOf(night, [{ ...day, people: [person('bo', at('16T11:00'), at('16T20:00'))] }])).toBeUndefined();
    expect(refusalOf({ ...night, people: [...night.people, person('ana', at('16T08:00'), at('16T10:00'))] })?.code).toBe('person-on-two-shifts');
  });
  it('lets people come three hours early and stay three hours on, no more', () => {
    const only = (from: EpochS, until: EpochS) => refusalOf({ ...night, people: [person('ana', from, until)] })?.code;
    expect(only(later(night.from, -LEAD_S), later(night.until, LEAD_S))).toBeUndefined();
    expect(only(later(night.from, -LEAD_S - 1), night.until)).toBe('hours-outside-shift');
    expect(only(later(night.from, -LEAD_S), night.from)).toBe('hours-outside-shift');
    expect(only(night.until, night.from)).toBe('hours-outside-shift');
  });
  it('keeps breaks inside the hours of the person, to their end', () => {
    const withRest = (earliest: EpochS, latest: EpochS) => refusalOf({ ...night, people: [person('ana', night.from, at('16T07:00'), [rest(earliest, latest)])] });
    expect(withRest(at('16T02:00'), at('16T06:30'))).toBeUndefined();
    expect(withRest(at('16T02:00'), at('16T06:31'))).toEqual({ code: 'break-outside-shift', personId: 'ana', breakId: 'rest' });
    expect(withRest(at('15T22:59'), at('16T02:00'))?.code).toBe('break-outside-shift');
    expect(withRest(at('16T03:00'), at('16T02:00'))?.code).toBe('break-outside-shift');
  });
  it('lights no fire after it is over', () => {
    expect(refusalOf({ ...night, pits: [{ ...night.pits[0]!, lightAt: night.until }] })).toEqual({ code: 'light-outside-shift', pitId: 'north' });
  });
  it('of nobody and no pit is a shift all the same', () => expect(refusalOf({ ...night, people: [], pits: [] })).toBeUndefined());
});

it('a fire is lit by a task due at its time, and a fire lit long before the shift needs none', () => {
  expect(lightTask(at('15T23:30'), night.from)).toEqual({ earliestAt: at('15T23:20'), dueAt: at('15T23:30'), latestAt: at('15T23:50'), lengthS: 600 });
  expect(lightTask(later(night.from, -LEAD_S - 1), night.from)).toBeUndefined();
});

it('the next shift runs from three hours before its start, after the one before it has ended', () => {
  const day = { name: 'day', from: night.until, until: at('16T20:00') };
  const shifts = [day, { name: 'night', from: night.from, until: night.until }];
  const nameAt = (now: EpochS) => runningOf(shifts, now)?.name;
  expect(nameAt(later(night.from, -LEAD_S - 1))).toBeUndefined();
  expect(nameAt(later(night.from, -LEAD_S))).toBe('night');
  expect(nameAt(later(night.until, -1))).toBe('night');
  expect(nameAt(night.until)).toBe('day');
  expect(nameAt(at('16T20:00'))).toBeUndefined();
});

it('a change keeps breaks that have begun and what was reported, and takes the rest as wanted', () => {
  const kept = changed(undefined, night);
  expect(kept.people.map(({ presence, wasAway }) => [presence, wasAway])).toEqual([['here', []], ['here', []]]);
  const begun = { ...rest(at('16T02:00'), at('16T04:00')), id: 'begun', beganAt: at('16T03:00') };
  const before = { ...kept, people: kept.people.map((one) => ({ ...one, presence: 'late' as const, breaks: [begun, rest(at('16T05:00'), at('16T06:00'))] })) };
  const moved = rest(at('16T04:30'), at('16T05:30'));
  const after = changed(before, { ...night, people: [person('ana', night.from, at('16T08:00'), [moved, { ...begun, lengthS: 600 }])] });
  expect(after.people).toEqual([{ ...before.people[0], endsAt: at('16T08:00'), breaks: [begun, moved] }]);
  expect(changed(before, { ...night, people: [person('ana', night.from, at('16T08:00'))] }).people[0]?.breaks).toEqual([begun]);
});
