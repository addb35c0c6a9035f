import { expect, it } from 'vitest';
import type { PitId, TaskId } from '@stokehold/domain/quantity';
import { handBreak, handNight, handPerson, handPit, handTask, minute } from '../hand-night.js';
import { generatedNight } from '../generated-night.js';
import { dispatchRounds } from '../dispatch-rounds.js';
import { levelsApart } from './levels-apart.js';
import { whyPerson } from './why-person.js';

const options = { seed: 1, iterations: 60 };
const check = { kind: 'check' as const, pitId: 'pit' as PitId, nth: 1 };
const onePit = (people: readonly ReturnType<typeof handPerson>[], more = {}) =>
  handNight({ until: minute(40), places: ['yard', 'far'], walkS: [[0, 600], [600, 0]], people, pits: [handPit('pit', 20, { skill: 'fire' })], ...more });
const worker = (id: string, more: object = {}) => handPerson(id, { until: 40, skills: ['fire'], ...more });
const asked = (problem: ReturnType<typeof handNight>, work: Parameters<typeof whyPerson>[2] = check) => whyPerson(problem, dispatchRounds(problem), work, options);

it('the next best is named with what each level would cost', () => {
  const answer = asked(onePit([worker('ana'), worker('bo', { place: 'far' })]));
  // by hand: Ana stands beside the pit; Bo would walk ten minutes and be there in time. Another person within 30 min counts 10 half units
  expect(answer?.assignment.personIds).toEqual(['ana']);
  expect(answer?.reason).toBe('nearest');
  expect(answer?.others.map(({ personIds, costs }) => [personIds, costs])).toEqual([[['bo'], [{ level: 'promises', by: 10 }, { level: 'walkS', by: 600 }]]]);
  expect(answer?.hindered).toEqual([]);
});
it('at most two, the better one first, and those who cannot with the rule that forbids it', () => {
  const answer = asked(onePit([worker('ana'), worker('bo', { place: 'far' }), worker('cy'), worker('di', { place: 'far' }), worker('ed', { skills: [] })]));
  expect(answer?.others).toHaveLength(2);
  expect(answer?.others[0]?.costs.filter(({ level }) => level === 'walkS')).toEqual([]);
  expect(answer?.hindered).toEqual([{ personId: 'ed', code: 'skill' }]);
});
it('the only one who knows how, a break, frozen work and a decision have no others to ask for', () => {
  expect(asked(onePit([worker('ana'), worker('bo', { skills: [] })]))?.reason).toBe('only-one-able');
  const resting = onePit([worker('ana', { breaks: [handBreak('rest', 0, 10, 10)] }), worker('bo')]);
  expect(asked(resting, { kind: 'break', breakId: 'rest' })).toMatchObject({ reason: 'own-break', others: [] });
  const frozen = onePit([worker('ana'), worker('bo')], { frozen: [{ work: check, personIds: ['bo'], startsAt: minute(0), endsAt: minute(5) }] });
  expect(asked(frozen)).toMatchObject({ reason: 'frozen', others: [] });
  expect(asked(onePit([worker('ana'), worker('bo')], { pins: [{ work: check, personIds: ['bo'] }] }))?.reason).toBe('pinned');
});
it('work for two is asked with each of the two exchanged', () => {
  const two = handNight({ people: [handPerson('ana'), handPerson('bo'), handPerson('cy')], tasks: [handTask('load', 30, 10, { people: 2 })] });
  const answer = asked(two, { kind: 'task', taskId: 'load' as TaskId });
  const [one, other] = answer?.others ?? [];
  expect(one?.personIds).toHaveLength(2);
  expect(new Set([...(answer?.assignment.personIds ?? []), ...(one?.personIds ?? []), ...(other?.personIds ?? [])])).toEqual(new Set(['ana', 'bo', 'cy']));
});
it('work that is in no plan has no answer', () => {
  expect(asked(onePit([worker('ana')]), { kind: 'task', taskId: 'none' as TaskId })).toBeUndefined();
});
it('a drawn night answers alike twice', () => {
  const problem = generatedNight({ pits: 3, people: 3, seed: 3, gapFactor: 1.25, hours: 2 });
  const plan = dispatchRounds(problem);
  const work = plan.assignments.find((one) => one.work.kind === 'check')!.work;
  const answer = whyPerson(problem, plan, work, options);
  expect(whyPerson(problem, plan, work, options)).toEqual(answer);
  expect(answer?.others.length).toBeGreaterThan(0);
}, 30_000);
it('levels apart leave out what stays', () => {
  const levels = dispatchRounds(onePit([worker('ana')])).levels;
  expect(levelsApart(levels, { ...levels, walkS: levels.walkS + 5, unplaced: levels.unplaced - 1 })).toEqual([{ level: 'unplaced', by: -1 }, { level: 'walkS', by: 5 }]);
});
