import { describe, expect, it } from 'vitest';
import { fromIso, later, type EpochS, type PersonId, type PitId, type ShiftId, type TaskId } from '@stokehold/domain/quantity';
import type { PersonOnShift } from '@stokehold/domain/shift';
import { validateRounds } from '../rounds/index.js';
import { changesBetween } from './changes.js';
import type { NightFacts, NightTask, Shown } from './facts.js';
import { problemOfNight, WOOD_PLACE } from './problem-of-night.js';
import { isOverrun, isWorthForDue } from './worth.js';

const at = (time: string): EpochS => fromIso(`2027-01-${time < '12:00' ? 16 : 15}T${time}:00Z`);
const [north, south] = ['north', 'south'] as PitId[] as [PitId, PitId];
const [ana, bo] = ['ana', 'bo'] as PersonId[] as [PersonId, PersonId];
const person = (id: PersonId, more: Partial<PersonOnShift> = {}): PersonOnShift => ({
  id, name: id, skills: ['fire', 'food', 'lifting'], startsAt: at('22:00'), endsAt: at('08:00'), presence: 'here', wasAway: [], breaks: [], ...more,
});
const window = (pitId: PitId, due: string) => ({ pitId, earliestAt: later(at(due), -720), dueAt: at(due), latestSafeAt: later(at(due), 600) });
const task = (id: string, more: Partial<NightTask> = {}): NightTask => ({
  id: id as TaskId, shiftId: 'night' as ShiftId, kind: 'haul', pitId: null, earliestAt: at('02:00'), dueAt: at('02:30'), latestAt: at('03:00'), lengthS: 600,
  people: 1, doneAt: null, doneBy: null, ...more,
});
const check = (pitId: PitId, nth: number, who: PersonId, from: string): Shown => ({
  work: { kind: 'check', pitId, nth }, personIds: [who], startsAt: at(from), endsAt: later(at(from), 300),
});
const night: NightFacts = {
  now: at('01:00'),
  shift: {
    id: 'night' as ShiftId, from: at('22:00'), until: at('10:00'), people: [person(ana), person(bo)],
    pits: [{ pitId: north, band: { lowC: 120, highC: 126 }, lightAt: at('22:30') }, { pitId: south, band: { lowC: 120, highC: 126 }, lightAt: at('22:30') }],
  },
  woodPlace: { xM: 0, yM: 0 }, walkSpeedMPerS: 1, pits: [{ id: north, xM: 10, yM: 0 }, { id: south, xM: 10, yM: 5 }],
  fires: [window(north, '01:10'), window(south, '01:20')], looks: [], tasks: [], shown: [],
};
const problem = (more: Partial<NightFacts>) => {
  const made = problemOfNight({ ...night, ...more });
  expect(validateRounds(made)).toMatchObject({ ok: true });
  return made;
};

describe('the problem of a night', () => {
  it('walks from the wood to the pits and between them', () => {
    // by hand: 10 m and 5 m at 1 m/s; the diagonal is 11.18 m
    expect(problem({})).toMatchObject({ places: [WOOD_PLACE, north, south], walkS: [[0, 10, 12], [10, 0, 5], [12, 5, 0]], from: at('01:00'), until: at('10:00') });
  });
  it('counts the checks of each pit through the night, and knows where people were last', () => {
    const looks = [{ pitId: north, personId: ana, seenAt: at('00:10') }, { pitId: north, personId: bo, seenAt: at('00:40') }];
    const made = problem({ looks });
    expect(made.pits.map(({ firstNth, lastCheckAt }) => [firstNth, lastCheckAt])).toEqual([[3, at('00:40')], [1, undefined]]);
    expect(made.people.map(({ atPlace, workedS }) => [atPlace, workedS])).toEqual([[north, 300], [north, 300]]);
  });
  it('gives a pit that is still to be lit its first check a gap after lighting, whatever was believed of last night', () => {
    const light = task('light', { kind: 'light', pitId: south, earliestAt: at('01:20'), dueAt: at('01:30'), latestAt: at('01:50') });
    const made = problem({ tasks: [light] });
    // by hand: lit from 01:30 to 01:40, then 18, 30 and 40 min
    expect(made.pits[1]?.first).toEqual({ earliestAt: at('01:58'), dueAt: at('02:10'), latestSafeAt: at('02:20') });
    expect(made.tasks.map(({ id, skill, place }) => [id, skill, place])).toEqual([['light', 'fire', south]]);
    expect(problem({ tasks: [{ ...light, doneAt: at('00:50') }], fires: [] }).pits[1]?.first.dueAt).toBe(at('01:20'));
  });
  it('wants a fire of which nothing is known looked at now, and no lighting where somebody has looked', () => {
    expect(problem({ fires: [] }).pits[0]?.first).toEqual({ earliestAt: at('01:00'), dueAt: at('01:00'), latestSafeAt: at('01:10') });
    const light = task('light', { kind: 'light', pitId: south, earliestAt: at('00:40'), dueAt: at('00:45'), latestAt: at('01:30') });
    expect(problem({ tasks: [light], looks: [{ pitId: south, personId: ana, seenAt: at('00:50') }] }).tasks).toEqual([]);
    expect(problem({ tasks: [light], looks: [{ pitId: south, personId: ana, seenAt: at('00:30') }] }).tasks).toHaveLength(1);
  });
  it('leaves out who has gone home, what is done, and what belongs to another shift', () => {
    const people = [person(ana, { endsAt: at('01:00') }), person(bo)];
    const tasks = [task('done', { doneAt: at('00:30') }), task('other', { shiftId: 'day' as ShiftId }), task('late', { dueAt: at('10:00'), latestAt: at('10:30') }), task('open')];
    const made = problem({ shift: { ...night.shift, people }, tasks });
    expect(made.people.map(({ id }) => id)).toEqual([bo]);
    expect(made.tasks.map(({ id }) => id)).toEqual(['open']);
  });
  it('keeps a break that has begun, drops one that is over, and takes people away while they are away', () => {
    const rest = { id: 'rest', lengthS: 1800, earliestAt: at('00:00'), latestAt: at('03:00') };
    const breaks = [{ ...rest, beganAt: at('00:45') }, { ...rest, id: 'over', beganAt: at('00:00'), endedAt: at('00:25') }];
    const away = { presence: 'away' as const, presenceFrom: at('00:50'), presenceUntil: at('02:00') };
    const made = problem({ shift: { ...night.shift, people: [person(ana, { breaks }), person(bo, away)] } });
    expect(made.people[0]?.breaks).toEqual([{ ...rest, startedAt: at('00:45') }]);
    expect(made.people[1]?.absent).toEqual([{ from: at('00:50'), until: at('02:00') }]);
  });
  it('is one without people and without pits, too', () => {
    expect(problem({ shift: { ...night.shift, people: [], pits: [] }, pits: [], fires: [] })).toMatchObject({ people: [], pits: [], tasks: [] });
  });
});

describe('work under way', () => {
  const keys = (more: Partial<NightFacts>) => problem(more).frozen.map(({ work }) => work);
  it('is frozen, and so is what begins within two minutes', () => {
    const shown = [check(north, 1, ana, '00:58'), check(south, 1, bo, '01:02'), check(north, 2, ana, '01:28')];
    expect(problem({ shown }).frozen.map(({ personIds, startsAt }) => [personIds, startsAt])).toEqual([[[ana], at('00:58')], [[bo], at('01:02')]]);
    expect(problem({ shown }).promises).toEqual([{ work: shown[2]?.work, personIds: [ana], startsAt: at('01:28') }]);
  });
  it('is free again when it was done, or when its person is away or on a break', () => {
    const shown = [check(north, 1, ana, '00:58')];
    expect(keys({ shown })).toHaveLength(1);
    expect(keys({ shown, looks: [{ pitId: north, personId: ana, seenAt: at('00:59') }] })).toEqual([]);
    const withAna = (more: Partial<PersonOnShift>) => ({ shown, shift: { ...night.shift, people: [person(ana, more), person(bo)] } });
    expect(keys(withAna({ presence: 'away', presenceFrom: at('00:59') }))).toEqual([]);
    expect(keys(withAna({ breaks: [{ id: 'r', lengthS: 600, earliestAt: at('00:00'), latestAt: at('02:00'), beganAt: at('00:59') }] }))).toEqual([]);
    expect(keys({ shown, shift: { ...night.shift, people: [person(bo)] } })).toEqual([]);
  });
  it('of one person at a time, and of one pit without a hole', () => {
    expect(keys({ shown: [check(north, 1, ana, '00:58'), check(south, 1, ana, '01:01')] })).toEqual([{ kind: 'check', pitId: north, nth: 1 }]);
    expect(keys({ shown: [check(north, 2, ana, '00:58')] })).toEqual([]);
  });
});

describe('decisions about work', () => {
  const pin = (nth: number, more: object) => ({ work: { kind: 'check' as const, pitId: north, nth }, ...more });
  const pins = (given: readonly ReturnType<typeof pin>[], more: Partial<NightFacts> = {}) => problem({ pins: given, ...more }).pins;
  it('hold for work to come, with a time only while it is to come', () => {
    expect(pins([pin(2, { personIds: [bo], startsAt: at('01:40') })])).toEqual([pin(2, { personIds: [bo], startsAt: at('01:40') })]);
    expect(pins([pin(2, { personIds: [bo], startsAt: at('00:40') })])).toEqual([pin(2, { personIds: [bo] })]);
    expect(pins([pin(2, { startsAt: at('00:40') })])).toEqual([]);
  });
  it('fall away when the work was done or is under way, or when the person is not there or cannot', () => {
    const looks = [{ pitId: north, personId: ana, seenAt: at('00:50') }];
    expect(pins([pin(1, { personIds: [bo] })], { looks })).toEqual([]);
    expect(pins([pin(1, { personIds: [bo] })], { shown: [check(north, 1, ana, '00:58')] })).toEqual([]);
    const withBo = (more: Partial<PersonOnShift>) => ({ shift: { ...night.shift, people: [person(ana), person(bo, more)] } });
    expect(pins([pin(1, { personIds: [bo] })], withBo({ presence: 'away', presenceFrom: at('00:30') }))).toEqual([]);
    expect(pins([pin(4, { personIds: [bo], startsAt: at('03:00') })], withBo({ presence: 'away', presenceFrom: at('00:30'), presenceUntil: at('02:00') }))).toHaveLength(1);
    expect(pins([pin(1, { personIds: [bo] })], withBo({ skills: ['food'] }))).toEqual([]);
  });
});

it('what somebody did more than their share on other nights counts before the night begins', () => {
  const made = problem({ carried: new Map([[ana, { workedS: 900, unpleasantS: 300 }]]) });
  expect(made.people.map(({ workedS, unpleasantS }) => [workedS, unpleasantS])).toEqual([[900, 300], [0, 0]]);
});

describe('changes of a plan', () => {
  const done = () => false;
  it('are told when a person changes or a start moves by a minute or more, in order of time', () => {
    const before = [check(south, 1, bo, '01:20'), check(north, 1, ana, '01:10'), check(north, 2, ana, '01:40'), check(south, 2, bo, '01:50')];
    const after = [check(north, 1, ana, '01:10'), check(south, 1, ana, '01:20'), { ...check(north, 2, bo, '01:42') }, { ...check(south, 2, bo, '01:50'), startsAt: later(at('01:50'), 59) }];
    expect(changesBetween(before, after, { now: at('01:00'), isDone: done, told: [] }).map(({ code, work }) => [code, work])).toEqual([
      ['other-person', { kind: 'check', pitId: south, nth: 1 }],
      ['moved-other-person', { kind: 'check', pitId: north, nth: 2 }],
    ]);
  });
  it('are not told of work that was done, nor of what lies more than two hours ahead', () => {
    const before = [check(north, 1, ana, '01:10'), check(north, 5, ana, '03:10')];
    const after = [check(north, 5, bo, '03:10'), check(north, 2, ana, '01:40')];
    expect(changesBetween(before, after, { now: at('01:00'), isDone: (work) => work.kind === 'check' && work.nth === 1, told: [] }).map(({ code }) => code)).toEqual(['new']);
    expect(changesBetween(before, after, { now: at('01:00'), isDone: done, told: [] }).map(({ code }) => code)).toEqual(['gone', 'new']);
  });
});

describe('a moved due time', () => {
  const worth = (due: string, shown: readonly Shown[]) => isWorthForDue({ fires: [window(north, due)], shown, now: at('01:00'), until: at('10:00') });
  const shown = [check(north, 1, ana, '01:10')];
  it('is worth a repair when the planned check would come late, too early, or far too soon', () => {
    expect(worth('01:10', shown)).toBe(false);
    expect(worth('01:08', shown)).toBe(false);
    expect(worth('01:07', shown)).toBe(true);
    expect(worth('01:20', shown)).toBe(false);
    expect(worth('01:21', shown)).toBe(true);
  });
  it('is worth one when no check is planned, unless the shift ends before', () => {
    expect(worth('01:10', [])).toBe(true);
    expect(isWorthForDue({ fires: [window(north, '01:10')], shown: [], now: at('01:00'), until: at('01:10') })).toBe(false);
  });
});

it('work that should have been over for a minute has run over', () => {
  const shown = [check(north, 1, ana, '00:54')];
  expect(isOverrun(shown, later(at('01:00'), -1))).toBe(false);
  expect(isOverrun(shown, at('01:00'))).toBe(true);
});
