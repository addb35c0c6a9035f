import { expect, it } from 'vitest';
import type { PersonId, PitId, TaskId } from '@stokehold/domain/quantity';
import { HAND_START, handNight, handPerson, handPit, handTask, minute } from '../hand-night.js';
import { planShownByHand } from './by-hand.js';
import { hindrance } from './hinders.js';

const check = (nth: number) => ({ kind: 'check' as const, pitId: 'pit' as PitId, nth });
const haul = { kind: 'task' as const, taskId: 'haul' as TaskId };
const rest = { kind: 'break' as const, breakId: 'rest' };
const people = [
  handPerson('ana', { skills: ['fire'], breaks: [{ id: 'rest', lengthS: 1800, earliestAt: minute(60), latestAt: minute(60) }] }),
  handPerson('bo', { skills: [] }),
  handPerson('cy', { skills: ['fire'], from: 120 }),
  handPerson('di', { skills: ['fire'], absent: [{ from: minute(30), until: minute(50) }] }),
  handPerson('ed', { skills: ['fire'], place: 'far' }),
];
const problem = handNight({ places: ['yard', 'far'], walkS: [[0, 600], [600, 0]], people, pits: [handPit('pit', 30, { skill: 'fire' })], tasks: [handTask('haul', 10, 20)] });
const plan = planShownByHand([[haul, ['ana'], 10, 30], [rest, ['ana'], 60, 90]]);
const why = (who: string, at: number) => {
  const found = hindrance({ problem, plan, work: check(1), at: minute(at) }, who as PersonId);
  return found && [found.code, found.work];
};

it('names the first rule that forbids it', () => {
  expect(why('bo', 40)).toEqual(['skill', undefined]);
  expect(why('cy', 40)).toEqual(['not-on-shift', undefined]);
  expect(why('di', 46)).toEqual(['absent', undefined]);
  expect(why('ana', 26)).toEqual(['busy', haul]);
  expect(why('ana', 58)).toEqual(['on-break', rest]);
  expect(why('ana', 237)).toEqual(['not-on-shift', undefined]);
});
it('is the walk where somebody is free and cannot be there in time', () => {
  // by hand: ten minutes from afar, free since the start
  expect(why('ed', 9)).toEqual(['too-far', undefined]);
  expect(why('ed', 10)).toBeUndefined();
});
it('is nothing for those who could, and for those who have the work already', () => {
  expect(why('ana', 30)).toBeUndefined();
  expect(hindrance({ problem, plan, work: haul, at: minute(10) }, 'ana' as PersonId)).toBeUndefined();
  expect(HAND_START).toBe(minute(0));
});
