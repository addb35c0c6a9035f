import { describe, expect, it } from 'vitest';
import { fromIso, type EpochS } from '@stokehold/domain/quantity';
import type { YardState } from '@stokehold/domain/contract';
import { bandKeptFrac, bandStretches, inRows, personLanes, pitLanes, spanOf } from './lanes.js';
import { ticksOf, timeScale } from './time-scale.js';

const at = (iso: string) => fromIso(`2027-06-0${iso}:00Z`);
const iso = (time: string) => `2027-06-0${time}:00Z`;
const ANA = 'person-ana';
const LARCH = 'pit-larch';

// Only what the lanes read; the rest of the state does not matter here.
const state = {
  people: [{ id: ANA, name: 'Ana' }],
  shift: {
    id: 's', startsAt: iso('6T00:00'), endsAt: iso('6T10:00'),
    people: [
      {
        personId: ANA, name: 'Ana', startsAt: iso('6T00:00'), endsAt: iso('6T08:00'), presence: 'away', presenceUntil: iso('6T04:30'), onBreak: false,
        breaks: [
          { id: 'b1', lengthS: 600, earliestAt: iso('6T01:00'), latestAt: iso('6T02:00'), beganAt: iso('6T01:30'), endedAt: iso('6T01:45'), plannedAt: iso('6T01:20') },
          { id: 'b2', lengthS: 1800, earliestAt: iso('6T04:00'), latestAt: iso('6T05:00'), beganAt: null, endedAt: null, plannedAt: iso('6T04:40') },
          { id: 'b3', lengthS: 600, earliestAt: iso('6T06:00'), latestAt: iso('6T07:00'), beganAt: null, endedAt: null, plannedAt: null },
        ],
      },
    ],
    pits: [{ pitId: LARCH, band: { lowC: 115, highC: 121 }, lightAt: iso('5T23:30') }],
  },
  pits: [
    {
      pit: { id: LARCH, name: 'Larch', fireEnd: 'left' },
      due: { earliestAt: iso('6T04:10'), dueAt: iso('6T04:20'), latestSafeAt: iso('6T04:35'), why: 'band' },
      past: [
        { at: iso('6T03:00'), tempC: 118 }, { at: iso('6T03:20'), tempC: 119 }, { at: iso('6T03:40'), tempC: 113 }, { at: iso('6T04:00'), tempC: 116 },
      ],
      checks: [{ id: 'c1', pitId: LARCH, personId: ANA, seenAt: iso('6T03:10'), wasDueAt: iso('6T03:00') }],
    },
  ],
  tasks: [
    { id: 't1', kind: 'turn', pitId: LARCH, dueAt: iso('6T05:00'), latestAt: iso('6T05:30'), doneAt: null, doneBy: null },
    { id: 't2', kind: 'load', pitId: LARCH, dueAt: iso('6T02:00'), latestAt: iso('6T02:30'), doneAt: iso('6T02:40'), doneBy: ANA },
  ],
  plan: {
    assignments: [
      { work: { kind: 'check', pitId: LARCH, nth: 4 }, people: [ANA], startsAt: iso('6T04:35'), endsAt: iso('6T04:39'), lateS: 900, pastLatestS: 0, pinned: false },
      { work: { kind: 'task', taskId: 't1' }, people: [ANA], startsAt: iso('6T05:00'), endsAt: iso('6T05:10'), lateS: 0, pastLatestS: 0, pinned: false },
      { work: { kind: 'task', taskId: 't2' }, people: [ANA], startsAt: iso('6T02:00'), endsAt: iso('6T02:10'), lateS: 0, pastLatestS: 0, pinned: false },
      { work: { kind: 'break', breakId: 'b2' }, people: [ANA], startsAt: iso('6T04:40'), endsAt: iso('6T05:10'), lateS: 0, pastLatestS: 0, pinned: false },
    ],
  },
  cooks: [
    { id: 'k1', cut: 'slab', pieces: 5, onAt: iso('6T00:30'), offAt: null, comesOffAt: iso('6T09:00'), lies: [{ pitId: LARCH, zone: 0, pieces: 2 }, { pitId: LARCH, zone: 1, pieces: 3 }] },
    { id: 'k2', cut: 'ribs', pieces: 4, onAt: iso('6T01:00'), offAt: iso('6T03:00'), comesOffAt: null, lies: [{ pitId: LARCH, zone: 2, pieces: 4 }] },
    { id: 'k3', cut: 'birds', pieces: 4, onAt: iso('6T03:30'), offAt: null, comesOffAt: null, lies: [{ pitId: LARCH, zone: 2, pieces: 4 }] },
    { id: 'k4', cut: 'later', pieces: 4, onAt: null, offAt: null, comesOffAt: iso('6T09:00'), lies: [] },
  ],
  services: [{ id: 'lunch', name: 'Lunch', readyBy: iso('6T12:00'), portions: 80 }, { id: 'next', name: 'Next week', readyBy: iso('9T12:00'), portions: 80 }],
} as unknown as YardState;
const now = at('6T04:05');

describe('the night as lanes', () => {
  const span = spanOf(state)!;
  it('spans from the first fire to the last of shift and service, with ten minutes to each side', () => {
    expect(span).toEqual({ from: at('5T23:20'), until: at('6T12:10') });
  });
  it('a person’s lane has what they did and what they will do, and says how late', () => {
    const [ana] = personLanes(state, now);
    expect(ana!.marks.map(({ kind, past, lateS }) => ({ kind, past, lateS }))).toEqual([
      { kind: 'task', past: true, lateS: 600 },
      { kind: 'check', past: true, lateS: 600 },
      { kind: 'check', past: false, lateS: 900 },
      { kind: 'task', past: false, lateS: 0 },
    ]);
  });
  it('a break is where it was taken, else where it is planned, else its window', () => {
    const [ana] = personLanes(state, now);
    expect(ana!.breaks).toEqual([
      { id: 'b1', state: 'ended', from: at('6T01:30'), until: at('6T01:45') },
      { id: 'b2', state: 'planned', from: at('6T04:40'), until: at('6T05:10') },
      { id: 'b3', state: 'window', from: at('6T06:00'), until: at('6T07:10') },
    ]);
  });
  it('somebody away is missing from now until they said they come back', () => {
    expect(personLanes(state, now)[0]!.missing).toEqual({ from: now, until: at('6T04:30') });
  });
  it('a pit’s lane has its fire, its window and the cooks that lie or lay on it, side by side', () => {
    const [larch] = pitLanes(state, span);
    expect(larch!.burns).toEqual({ from: at('5T23:30'), until: at('6T10:00') });
    expect(larch!.window).toEqual({ from: at('6T04:10'), dueAt: at('6T04:20'), until: at('6T04:35') });
    expect(larch!.cooks.map(({ cook, row, open, pieces }) => [cook.id, row, open, pieces])).toEqual([
      ['k1', 0, false, 5], ['k2', 1, false, 4], ['k3', 1, true, 4],
    ]);
    expect(larch!.cookRows).toBe(2);
  });
  it('is nothing where no shift is planned', () => {
    expect(spanOf({ ...state, shift: null })).toBeUndefined();
    expect(personLanes({ ...state, shift: null }, now)).toEqual([]);
  });
});

describe('the band kept', () => {
  const [larch] = pitLanes(state, spanOf(state)!);
  it('is the part of the readings inside it: three of four', () => {
    expect(bandKeptFrac(larch!)).toBe(0.75);
    expect(bandKeptFrac({ ...larch!, temps: [] })).toBeUndefined();
  });
  it('is drawn in stretches: in, below, in', () => {
    expect(bandStretches(larch!).map(({ side, from, until }) => [side, until - from])).toEqual([['in', 2400], ['below', 1200]]);
  });
});

describe('a pit that is starting up', () => {
  const [larch] = pitLanes(state, spanOf(state)!);
  const cold = (time: string) => ({ at: at(time), tempC: 60 });
  it('is not held against its band until it reached it, or should have', () => {
    expect(bandKeptFrac({ ...larch!, temps: [cold('6T00:00'), cold('6T00:30')] })).toBeUndefined();
    expect(bandKeptFrac({ ...larch!, temps: [cold('6T00:00'), { at: at('6T01:00'), tempC: 118 }] })).toBe(1);
    expect(bandKeptFrac({ ...larch!, temps: [cold('6T02:30')] })).toBe(0); // three hours after it was lit
  });
});

describe('rows', () => {
  it('a span goes into the first row that is free again', () => {
    const spans = [[0, 4], [1, 2], [2, 5], [4, 6]].map(([from, until]) => ({ from: from as EpochS, until: until as EpochS }));
    expect(inRows(spans).map(({ row }) => row)).toEqual([0, 1, 1, 0]);
  });
});

describe('the scale of time', () => {
  // Source: time zone database, America/Chicago, clocks back at 2027-11-07T07:00Z.
  const autumn = { from: fromIso('2027-11-07T05:00:00Z'), until: fromIso('2027-11-07T09:00:00Z') };
  it('goes by passing time: the doubled hour is twice as wide', () => {
    const scale = timeScale(autumn, 400);
    const ticks = ticksOf(scale, 'America/Chicago');
    expect(ticks.map(({ x, again, clocksByS }) => [x, again, clocksByS])).toEqual([
      [0, false, 0], [100, false, 0], [200, true, -3600], [300, false, 0], [400, false, 0],
    ]);
  });
  it('gets wider than its place rather than too narrow to read', () => {
    expect(timeScale(autumn, 100).widthPx).toBe(272);
    expect(timeScale(autumn, 1000).widthPx).toBe(1000);
  });
});
