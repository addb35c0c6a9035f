import { expect, it } from 'vitest';
import { checkRounds } from '../checker.js';
import { dispatchRounds } from '../dispatch-rounds.js';
import { generatedNight } from '../generated-night.js';
import { handNight, handPerson, handPit, minute } from '../hand-night.js';
import { repairRounds } from '../repair.js';
import { afterIterations } from '../../search/index.js';
import { whatIf } from './what-if.js';

const options = { seed: 1, iterations: 60 };
const night = generatedNight({ pits: 4, people: 3, seed: 5, gapFactor: 1.25, hours: 6 });
const plan = dispatchRounds(night);

it('the night as it is differs in nothing', () => {
  const answer = whatIf(night, night, plan, { seed: 1, iterations: 0 });
  expect(answer).toEqual({ ok: true, value: { changes: [], costs: [], unplaced: [], pastLatest: [], failing: [] } });
});
it('two people less of three: their work moves, and what no longer holds is told', () => {
  const gone = night.people.slice(0, 2).map(({ id }) => id);
  const supposed = { ...night, people: night.people.map((person) => (gone.includes(person.id) ? { ...person, absent: [{ from: night.from, until: person.endsAt }] } : person)) };
  const answer = whatIf(night, supposed, plan, options);
  if (!answer.ok) throw new Error(answer.refusal.code);
  const moved = answer.value.changes.filter(({ personsBefore }) => personsBefore.some((id) => gone.includes(id)));
  expect(moved.length).toBeGreaterThan(5);
  expect(moved.every(({ personsAfter }) => !personsAfter.some((id) => gone.includes(id)))).toBe(true);
  expect(answer.value.failing.length).toBeGreaterThan(0);
  expect(answer.value.costs.length).toBeGreaterThan(0);
});
it('what is told is a plan that passes the checker', () => {
  const supposed = { ...night, people: night.people.map((person, n) => (n === 0 ? { ...person, absent: [{ from: minute(60), until: minute(80) }] } : person)) };
  const before = repairRounds(night, plan, { seed: 1, stop: afterIterations(60) }).plan;
  const promised = { ...supposed, promises: before.assignments.map(({ work, personIds, startsAt }) => ({ work, personIds, startsAt })) };
  expect(checkRounds(promised, repairRounds(promised, before, { seed: 1, stop: afterIterations(60) }).plan)).toEqual([]);
});
it('a supposed night that is none is refused by name', () => {
  const problem = handNight({ people: [handPerson('ana')], pits: [handPit('pit', 20)] });
  expect(whatIf(problem, { ...problem, until: problem.from }, dispatchRounds(problem), options)).toMatchObject({ ok: false, refusal: { code: 'horizon-empty' } });
});
