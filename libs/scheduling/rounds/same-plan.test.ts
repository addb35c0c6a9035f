import { later, randomStream, type PersonId, type PitId, type TaskId } from '@stokehold/domain/quantity';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { afterIterations } from '../search/index.js';
import { dispatchRounds, generatedNight, planRounds, repairRounds, type Pin, type RoundPlan, type RoundProblem, type Work } from './index.js';

// The same night is planned the same way however it is written down.

const at = (seed: number, iterations: number) => ({ seed, stop: afterIterations(iterations) });
const nights = fc.record({ pits: fc.integer({ min: 2, max: 6 }), people: fc.integer({ min: 1, max: 4 }), seed: fc.nat(10_000), hours: fc.integer({ min: 4, max: 6 }) });

function shuffled<T>(things: readonly T[], seed: number): readonly T[] {
  const random = randomStream(seed);
  return things.map((thing) => ({ thing, draw: random.next() })).sort((a, b) => a.draw - b.draw).map(({ thing }) => thing);
}

/** The night an hour in: the first work frozen, the rest promised, somebody away, a pin. */
function underWay(problem: RoundProblem, plan: RoundPlan): RoundProblem {
  const from = later(problem.from, 3600);
  const begun = plan.assignments.filter(({ work, startsAt, endsAt }) => work.kind === 'task' && startsAt < from && endsAt > from);
  const open = problem.tasks.filter((task) => !plan.assignments.some(({ work, endsAt }) => work.kind === 'task' && work.taskId === task.id && endsAt <= from));
  const done = (pitId: PitId) => plan.assignments.filter(({ work, startsAt }) => work.kind === 'check' && work.pitId === pitId && startsAt < from);
  const pins: Pin[] = open.slice(-1).flatMap((task): Pin[] => (task.skill === undefined && task.people === 1 ? [{ work: { kind: 'task', taskId: task.id }, personIds: [problem.people[0]!.id] }] : []));
  return {
    ...problem, from, tasks: open, pins,
    people: problem.people.map((person, i) => ({ ...person, freeFrom: from, ...(i === 1 ? { absent: [{ from: later(from, 5400), until: later(from, 7200) }] } : {}) })),
    pits: problem.pits.map((pit) => {
      const last = done(pit.id).at(-1);
      if (!last) return pit;
      const seen = last.startsAt;
      return { ...pit, firstNth: done(pit.id).length + 1, first: { earliestAt: later(seen, pit.gap.earliestS), dueAt: later(seen, pit.gap.dueS), latestSafeAt: later(seen, pit.gap.latestSafeS) } };
    }),
    frozen: begun.map(({ work, personIds, startsAt, endsAt }) => ({ work, personIds, startsAt, endsAt })),
    promises: plan.assignments.filter(({ work, startsAt }) => work.kind !== 'break' && startsAt >= from).map(({ work, personIds, startsAt }) => ({ work, personIds, startsAt })),
  };
}

/** The same problem, each list of it in another order; places with their walking table. */
function turned(problem: RoundProblem, seed: number): RoundProblem {
  const order = shuffled(problem.places.map((_, i) => i), seed);
  const people = problem.people.map((person) => ({ ...person, skills: [...person.skills].reverse(), breaks: shuffled(person.breaks, seed), ...(person.absent ? { absent: [...person.absent].reverse() } : {}) }));
  return {
    ...problem, places: order.map((i) => problem.places[i]!), walkS: order.map((a) => order.map((b) => problem.walkS[a]![b]!)), people: shuffled(people, seed + 1), pits: shuffled(problem.pits, seed + 2),
    tasks: shuffled(problem.tasks, seed + 3), frozen: shuffled(problem.frozen, seed + 4), promises: shuffled(problem.promises, seed + 5), pins: shuffled(problem.pins, seed + 6),
  };
}

/** Every id and place renamed, so that their order is another. */
function renamed(problem: RoundProblem, name: (id: string) => string): RoundProblem {
  const work = (one: Work): Work => one.kind === 'check' ? { ...one, pitId: name(one.pitId) as PitId } : one.kind === 'task' ? { ...one, taskId: name(one.taskId) as TaskId } : { ...one, breakId: name(one.breakId) };
  const who = (ids: readonly PersonId[]) => ids.map((id) => name(id) as PersonId);
  return {
    ...problem, places: problem.places.map(name),
    people: problem.people.map((person) => ({ ...person, id: name(person.id) as PersonId, atPlace: name(person.atPlace), breaks: person.breaks.map((rest) => ({ ...rest, id: name(rest.id) })) })),
    pits: problem.pits.map((pit) => ({ ...pit, id: name(pit.id) as PitId, place: name(pit.place) })),
    tasks: problem.tasks.map((task) => ({ ...task, id: name(task.id) as TaskId, place: name(task.place) })),
    frozen: problem.frozen.map((one) => ({ ...one, work: work(one.work), personIds: who(one.personIds) })),
    promises: problem.promises.map((one) => ({ ...one, work: work(one.work), personIds: who(one.personIds) })),
    pins: problem.pins.map((one) => ({ ...one, work: work(one.work), ...(one.personIds ? { personIds: who(one.personIds) } : {}) })),
  };
}

const backwards = (id: string) => [...id].map((char) => String.fromCharCode(0x2000 - char.charCodeAt(0))).join('');
/** The starts of a plan without its names. */
const timesOf = (plan: RoundPlan) => plan.assignments.map(({ work: { kind }, startsAt }) => `${startsAt} ${kind}`).sort();

describe('the same night', () => {
  it('is dispatched, planned and repaired alike in whatever order it is listed', () => {
    fc.assert(fc.property(nights, (night) => {
      const problem = generatedNight(night);
      const plan = dispatchRounds(problem);
      const now = underWay(problem, plan);
      const other = turned(now, night.seed);
      expect(dispatchRounds(other)).toEqual(dispatchRounds(now));
      expect(planRounds(other, at(1, 20)).planHash).toBe(planRounds(now, at(1, 20)).planHash);
      expect(repairRounds(other, plan, at(1, 20)).planHash).toBe(repairRounds(now, plan, at(1, 20)).planHash);
    }), { numRuns: 12 });
  }, 120_000);

  it('is dispatched again from the same facts as before', () => {
    fc.assert(fc.property(nights, (night) => {
      const problem = generatedNight(night);
      const now = underWay(problem, dispatchRounds(problem));
      expect(dispatchRounds(structuredClone(now))).toEqual(dispatchRounds(now));
      const [first, second] = [planRounds(now, at(3, 20)), planRounds(structuredClone(now), at(3, 20))];
      expect([second.problemHash, second.planHash]).toEqual([first.problemHash, first.planHash]);
    }), { numRuns: 8 });
  }, 120_000);

  it('keeps its levels when pits, people, tasks, breaks and places are renamed', () => {
    fc.assert(fc.property(nights, (night) => {
      const problem = underWay(generatedNight(night), dispatchRounds(generatedNight(night)));
      const one = planRounds(problem, at(1, 20)).plan;
      const other = planRounds(renamed(problem, backwards), at(1, 20)).plan;
      expect(other.levels).toEqual(one.levels);
      expect(other.bound).toEqual(one.bound);
      expect(timesOf(other)).toEqual(timesOf(one));
    }), { numRuns: 8, examples: [[{ pits: 3, people: 3, seed: 5, hours: 6 }]] });
  }, 120_000);
});
