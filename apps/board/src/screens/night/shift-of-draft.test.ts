import { describe, expect, it } from 'vitest';
import { fromIso } from '@stokehold/domain/quantity';
import type { ShiftView } from '@stokehold/domain/contract';
import { nightTime } from '../../units/typed-wall-time.js';
import { draftOf, freshDraft, type ShiftDraft, type Typing } from './shift-draft.js';
import { hoursLong, nightOf } from './shift-of-draft.js';

const typing: Typing = {
  zone: 'America/Chicago',
  writeTempC: (tempC) => String(Math.round(tempC * 1.8 + 32)),
  readTempC: (typed) => (/^\d+$/.test(typed) ? (Number(typed) - 32) / 1.8 : undefined),
};
const PERSON = '018f3c2e-0000-7000-8000-000000000001';
const PIT = '018f3c2e-0000-7000-8000-000000000002';
const SHIFT = '018f3c2e-0000-7000-8000-000000000003';
const REST = '018f3c2e-0000-7000-8000-000000000004';

/** A night from six in the evening to six in the morning with one person, one break and one pit. */
const typed = (evening: string, morning: string, more: { break?: [string, string, boolean?] } = {}): ShiftDraft => ({
  id: SHIFT as never,
  starts: { wall: `${evening}T18:00`, again: false },
  ends: { wall: `${morning}T06:00`, again: false },
  people: [{
    personId: PERSON as never, works: true, from: nightTime('18:00'), to: nightTime('06:00'),
    breaks: more.break
      ? [{ id: REST, minutes: '30', earliest: nightTime(more.break[0], more.break[2]), latest: nightTime(more.break[1], more.break[2]) }]
      : [],
  }],
  pits: [{ pitId: PIT as never, burns: true, low: '240', high: '250', light: nightTime('17:30') }],
});

describe('a typed night becomes a shift', () => {
  // Source: time zone database, America/Chicago: UTC-6, from 2027-03-14T08:00Z UTC-5, from 2027-11-07T07:00Z UTC-6 again.
  it('from six to six has twelve hours on a plain night', () => {
    const { night } = nightOf(typed('2027-06-05', '2027-06-06'), typing);
    expect(night).toMatchObject({ startsAt: '2027-06-05T23:00:00Z', endsAt: '2027-06-06T11:00:00Z' });
    expect(hoursLong(night!)).toBe(12);
  });
  it('eleven hours on the night the clocks go forward', () => {
    const { night } = nightOf(typed('2027-03-13', '2027-03-14'), typing);
    expect(night).toMatchObject({ startsAt: '2027-03-14T00:00:00Z', endsAt: '2027-03-14T11:00:00Z' });
    expect(hoursLong(night!)).toBe(11);
    expect(night!.people[0]).toMatchObject({ startsAt: '2027-03-14T00:00:00Z', endsAt: '2027-03-14T11:00:00Z' });
  });
  it('thirteen hours on the night they go back', () => {
    const { night } = nightOf(typed('2027-11-06', '2027-11-07'), typing);
    expect(night).toMatchObject({ startsAt: '2027-11-06T23:00:00Z', endsAt: '2027-11-07T12:00:00Z' });
    expect(hoursLong(night!)).toBe(13);
  });
  it('a pit may be lit before the crew’s night begins', () => {
    const { night } = nightOf(typed('2027-06-05', '2027-06-06'), typing);
    expect(night!.pits[0]!.lightAt).toBe('2027-06-05T22:30:00Z');
  });
  it('a break at the first and one at the second 1:15 of the autumn night are an hour apart', () => {
    const breakIn = (again: boolean) => nightOf(typed('2027-11-06', '2027-11-07', { break: ['01:15', '01:45', again] }), typing).night!.people[0]!.breaks[0]!;
    expect(breakIn(false)).toMatchObject({ earliestAt: '2027-11-07T06:15:00Z', latestAt: '2027-11-07T06:45:00Z', lengthS: 1800 });
    expect(breakIn(true)).toMatchObject({ earliestAt: '2027-11-07T07:15:00Z', latestAt: '2027-11-07T07:45:00Z' });
  });
});

describe('what cannot be read is told at its field', () => {
  it('a time that the spring night skips', () => {
    const { faults } = nightOf(typed('2027-03-13', '2027-03-14', { break: ['02:15', '04:00'] }), typing);
    expect(faults).toEqual([{ field: `people.${PERSON}.breaks.${REST}.earliest`, code: 'time-skipped', values: { from: '02:00', to: '03:00' } }]);
  });
  it('a shift that ends before it begins', () => {
    expect(nightOf(typed('2027-06-06', '2027-06-05'), typing).faults).toEqual([{ field: 'ends', code: 'ends-before-it-begins' }]);
  });
  it('every fault at once: a temperature in letters, a break that runs past the end of the shift', () => {
    const night = typed('2027-06-05', '2027-06-06', { break: ['05:00', '05:50'] });
    const { faults } = nightOf({ ...night, pits: [{ ...night.pits[0]!, low: 'hot' }] }, typing);
    expect(faults.map(({ field, code }) => `${field} ${code}`)).toEqual([
      `people.${PERSON}.breaks.${REST}.latest break-window`, `pits.${PIT}.low number-unreadable`,
    ]);
  });
  it('a band upside down, and one hotter than any grate', () => {
    const night = typed('2027-06-05', '2027-06-06');
    const withBand = (low: string, high: string) => nightOf({ ...night, pits: [{ ...night.pits[0]!, low, high }] }, typing).faults.map((fault) => fault.code);
    expect(withBand('250', '240')).toEqual(['band-upside-down']);
    expect(withBand('240', '900')).toEqual(['out-of-range']);
  });
});

describe('a planned night comes back as it was typed', () => {
  it('on both clock-change nights, to the second', () => {
    for (const [evening, morning] of [['2027-03-13', '2027-03-14'], ['2027-11-06', '2027-11-07']] as const) {
      const draft = typed(evening, morning, { break: ['00:15', '03:30'] });
      const { night } = nightOf(draft, typing);
      const view: ShiftView = {
        id: night!.id, startsAt: night!.startsAt, endsAt: night!.endsAt, pits: night!.pits,
        people: night!.people.map((person) => ({
          ...person, name: 'Ines', presence: 'here', presenceUntil: null, onBreak: false,
          breaks: person.breaks.map((rest) => ({ ...rest, beganAt: null, endedAt: null, plannedAt: null })),
        })),
      };
      const yard = { crew: [{ id: PERSON, left: false }], pits: [{ id: PIT, retired: false, band: { lowC: 100, highC: 110 } }] };
      expect(draftOf(view, yard as never, typing)).toEqual(draft);
      expect(nightOf(draftOf(view, yard as never, typing), typing).night).toEqual(night);
    }
  });
  it('an unplanned one begins tonight at seven with every pit that is in use', () => {
    const yard = {
      crew: [{ id: PERSON, left: false }, { id: REST, left: true }],
      pits: [{ id: PIT, retired: false, band: { lowC: 116, highC: 121 } }, { id: REST, retired: true, band: { lowC: 116, highC: 121 } }],
    };
    const draft = freshDraft(SHIFT as never, fromIso('2027-06-05T15:00:00Z'), yard as never, typing);
    expect(draft.starts.wall).toBe('2027-06-05T19:00');
    expect(draft.ends.wall).toBe('2027-06-06T07:00');
    expect([draft.people.length, draft.pits.length]).toEqual([1, 1]);
    expect(hoursLong(nightOf(draft, typing).night!)).toBe(12);
  });
});
