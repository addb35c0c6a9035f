import { fromIso, later, type EpochS, type ShiftId } from '@stokehold/domain/quantity';
import { describe, expect, it } from 'vitest';
import { handNight, handPerson, handPit, handTask, minute } from '../rounds/hand-night.js';
import type { NightTask } from './facts.js';
import { rosterNeed, usualTasks } from './roster-need.js';

describe('people needed', () => {
  it('are those with whom the work fills four fifths of their time', () => {
    // by hand: 8 fires due from the start, 5 min each half hour are 80 min an hour: 80 / 48 is 1.67, so two; latest safe after 42 min: 57 min, so one
    const pits = Array.from({ length: 8 }, (_, n) => handPit(`pit-${n}`, 0, { skill: 'fire' }));
    const [first] = rosterNeed(handNight({ pits, people: [handPerson('ana', { skills: ['fire'] }), handPerson('bo', { skills: [] })] }));
    expect(first).toMatchObject({ fromAt: minute(0), untilAt: minute(60), needed: 2, present: 2 });
    expect(first?.bySkill).toEqual([{ skill: 'fire', needed: 2, present: 1 }]);
    expect(first).toMatchObject({ fails: true, missingPeople: 1 });
  });
  it('are none where nothing is to do, and an hour that half is there counts half', () => {
    const hours = rosterNeed(handNight({ people: [handPerson('ana', { from: 30, until: 240 })] }));
    expect(hours.map(({ needed, present }) => [needed, present])).toEqual([[0, 0.5], [0, 1], [0, 1], [0, 1]]);
  });
  it('are two for the hour of a task for two', () => {
    // by hand: two people for 60 min, all of it in the second hour: 120 / 48 is 2.5
    const hours = rosterNeed(handNight({ tasks: [handTask('load', 60, 60, { people: 2, earliest: 60, latest: 60 })] }));
    expect(hours.map(({ needed }) => needed)).toEqual([0, 3, 0, 0]);
  });
});

describe('the usual work of a service', () => {
  const at = (time: string): EpochS => fromIso(`2027-01-16T${time}:00Z`);
  const night = { shiftId: 'night' as ShiftId, from: at('00:00'), until: at('10:00'), foodOnAt: at('02:00'), tasks: [] as NightTask[] };
  const cook = (more: object = {}) => ({ id: 'brisket', pieces: 6, onAt: null, comesOffAt: at('08:00'), readyBy: at('11:00'), ...more });
  const times = (cooks: readonly ReturnType<typeof cook>[], more: object = {}) => usualTasks(cooks, { ...night, ...more }).map(({ kind, dueAt, lengthS, people }) => [kind, dueAt, lengthS, people]);
  it('is loading once the fires are fit and unloading when it comes off, three minutes a piece', () => {
    expect(times([cook()])).toEqual([['load', at('02:00'), 1080, 2], ['unload', at('08:00'), 1080, 2]]);
  });
  it('comes off two hours before the meal where no time is planned', () => {
    expect(times([cook({ comesOffAt: null })])).toEqual([['load', at('02:00'), 1080, 2], ['unload', at('09:00'), 1080, 2]]);
  });
  it('is not what is done, planned by somebody, or another night’s', () => {
    expect(times([cook({ onAt: at('01:00') })]).map(([kind]) => kind)).toEqual(['unload']);
    const unload = { kind: 'unload' } as NightTask;
    expect(times([cook()], { tasks: [unload] }).map(([kind]) => kind)).toEqual(['load']);
    expect(times([cook({ comesOffAt: later(at('00:00'), 40 * 3600) })])).toEqual([]);
    expect(times([cook({ comesOffAt: null, readyBy: null })])).toEqual([]);
  });
});
