import { fromIso, later, type EpochS, type PersonId, type PitId, type ShiftId, type TaskId } from '@stokehold/domain/quantity';
import type { PersonOnShift } from '@stokehold/domain/shift';
import { expect, it } from 'vitest';
import type { RoundPlan } from '../rounds/index.js';
import type { NightTask, Shown } from './facts.js';
import { planShown } from './plan-night.js';
import { evennessOf, sharesOfNight } from './shares.js';

const at = (time: string): EpochS => fromIso(`2027-01-16T${time}:00Z`);
const [north, south] = ['north', 'south'] as PitId[] as [PitId, PitId];
const [ana, bo] = ['ana', 'bo'] as PersonId[] as [PersonId, PersonId];
const person = (id: PersonId, more: Partial<PersonOnShift> = {}): PersonOnShift => ({
  id, name: id, skills: ['fire'], startsAt: at('00:00'), endsAt: at('08:00'), presence: 'here', wasAway: [], breaks: [], ...more,
});
const look = (pitId: PitId, personId: PersonId, time: string) => ({ pitId, personId, seenAt: at(time) });
const task = (kind: NightTask['kind'], doneBy: PersonId | null, time: string | null): NightTask => ({
  id: kind as unknown as TaskId, shiftId: 'night' as ShiftId, kind, pitId: null, earliestAt: at('00:00'), dueAt: at('01:00'), latestAt: at('02:00'), lengthS: 900, people: 1,
  doneAt: time === null ? null : at(time), doneBy,
});
const night = {
  shift: {
    id: 'night' as ShiftId, from: at('00:00'), until: at('08:00'), pits: [],
    people: [person(ana, { breaks: [{ id: 'b', lengthS: 1800, earliestAt: at('03:00'), latestAt: at('04:00'), beganAt: at('03:00'), endedAt: at('03:30') }] }), person(bo)],
  },
  pits: [{ id: north, xM: 10, yM: 0 }, { id: south, xM: 10, yM: 5 }], woodPlace: { xM: 0, yM: 0 }, walkSpeedMPerS: 1,
  looks: [look(north, ana, '01:00'), look(south, ana, '01:30'), look(north, bo, '02:00')], tasks: [task('haul', ana, '02:00'), task('clear-ash', null, null)],
};

it('a night is told by what each did and where they walked', () => {
  // by hand: Ana there 8 h less half an hour; two checks of 5 min and a haul of 15; wood to north 10 s, to south 5, back to the wood 12
  expect(sharesOfNight(night)).toEqual([
    { personId: ana, thereS: 27_000, workedS: 1500, unpleasantS: 900, walkedS: 27 },
    { personId: bo, thereS: 28_800, workedS: 300, unpleasantS: 0, walkedS: 10 },
  ]);
});
it('what the plan still has for them counts, and breaks do not', () => {
  const shown: Shown[] = [
    { work: { kind: 'task', taskId: 'clear-ash' as unknown as TaskId }, personIds: [bo], startsAt: at('03:00'), endsAt: later(at('03:00'), 900) },
    { work: { kind: 'check', pitId: south, nth: 3 }, personIds: [bo], startsAt: at('04:00'), endsAt: later(at('04:00'), 300) },
    { work: { kind: 'break', breakId: 'x' }, personIds: [bo], startsAt: at('05:00'), endsAt: at('05:30') },
  ];
  // by hand: wood 10 s to north, 10 back to the wood for the ash, 12 to south
  expect(sharesOfNight({ ...night, shown })[1]).toEqual({ personId: bo, thereS: 28_800, workedS: 1500, unpleasantS: 900, walkedS: 32 });
});
it('what somebody did outside the night, or somebody else did, is not theirs', () => {
  const looks = [{ ...look(north, ana, '01:00'), seenAt: later(at('00:00'), -4 * 3600) }, { ...look(north, ana, '01:00'), personId: null }];
  expect(sharesOfNight({ ...night, looks, tasks: [] })[0]).toMatchObject({ workedS: 0, walkedS: 0 });
});

it('tonight is even by tonight alone', () => {
  const people = [ana, bo].map((id) => ({ id, startsAt: at('00:00'), endsAt: at('08:00'), freeFrom: at('00:00'), skills: [], atPlace: 'wood', breaks: [], workedS: id === ana ? 1440 : 0 }));
  const plan: RoundPlan = planShown([{ work: { kind: 'check', pitId: north, nth: 1 }, personIds: [bo], startsAt: at('01:00'), endsAt: later(at('01:00'), 288) }]);
  // by hand: 1440 of 28 800 s is 5 %, 288 s is 1 %
  expect(evennessOf({ people }, plan)).toBeCloseTo(0.96, 12);
  expect(evennessOf({ people }, plan, new Map([[ana, { workedS: 1440, unpleasantS: 0 }]]))).toBeCloseTo(0.99, 12);
  expect(evennessOf({ people: [] }, plan)).toBeUndefined();
});
