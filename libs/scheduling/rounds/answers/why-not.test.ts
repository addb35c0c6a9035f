import { expect, it } from 'vitest';
import type { PitId, TaskId } from '@stokehold/domain/quantity';
import { dispatchRounds } from '../dispatch-rounds.js';
import { handBreak, handNight, handPerson, handPit, handTask, minute } from '../hand-night.js';
import type { RoundProblem, Work } from '../problem.js';
import { whyNot } from './why-not.js';

const asked = (problem: RoundProblem, work: Work) => whyNot(problem, dispatchRounds(problem), work, { seed: 1, iterations: 60 });
const task = (id: string) => ({ kind: 'task' as const, taskId: id as TaskId });
const check = { kind: 'check' as const, pitId: 'pit' as PitId, nth: 1 };

it('work in time needs nothing', () => {
  const problem = handNight({ people: [handPerson('ana')], tasks: [handTask('haul', 30, 10)] });
  expect(asked(problem, task('haul'))).toEqual({ state: 'in-time', lateS: 0, hindrances: [], relax: undefined });
});
it('nobody with the skill: somebody could learn it', () => {
  const problem = handNight({ people: [handPerson('ana')], tasks: [handTask('cut', 30, 10, { skill: 'saw', latest: 40 })] });
  expect(asked(problem, task('cut'))).toMatchObject({
    state: 'unplaced', hindrances: [{ personId: 'ana', code: 'skill' }], relax: { code: 'teach-skill', personId: 'ana', skill: 'saw' },
  });
});
it('nobody at all: one person more', () => {
  expect(asked(handNight({ tasks: [handTask('haul', 30, 10)] }), task('haul'))).toMatchObject({ state: 'unplaced', relax: { code: 'one-person-more' } });
});
it('work that begins when its only person comes needs a later latest start, in five-minute steps that double', () => {
  const problem = handNight({ people: [handPerson('ana', { from: 25 })], tasks: [handTask('haul', 10, 10, { latest: 10 })] });
  // by hand: Ana comes at 25, 15 min after the latest start; of 5, 10, 20.. the least that reaches is 20
  expect(asked(problem, task('haul'))).toMatchObject({ state: 'past-latest', lateS: 900, hindrances: [{ personId: 'ana', code: 'not-on-shift' }], relax: { code: 'later-latest', byS: 1200 } });
});
it('a fire that waits for the end of a break', () => {
  const problem = handNight({ until: minute(60), people: [handPerson('ana', { until: 60, breaks: [handBreak('rest', 5, 5, 25)] })], pits: [handPit('pit', 21)] });
  const answer = asked(problem, check);
  expect(answer?.state).not.toBe('in-time');
  expect(answer?.hindrances[0]).toMatchObject({ personId: 'ana', code: 'on-break', work: { kind: 'break', breakId: 'rest' } });
  expect(answer?.relax).toEqual({ code: 'skip-break', personId: 'ana', breakId: 'rest' });
});
it('a decision that makes it late is given up first', () => {
  const problem = handNight({ until: minute(60), people: [handPerson('ana', { until: 60 })], pits: [handPit('pit', 10)], pins: [{ work: check, startsAt: minute(30) }] });
  expect(asked(problem, check)).toMatchObject({ relax: { code: 'drop-pin' } });
});
it('work that nobody knows has no answer', () => {
  expect(asked(handNight({}), task('none'))).toBeUndefined();
});
