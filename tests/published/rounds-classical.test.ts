// Classical one- and many-machine instances of the scheduling textbooks (earliest due date: Jackson 1955; fewest late jobs:
// Moore 1968; total tardiness: Lawler 1977; list scheduling: Graham 1966, 1969). Origin of S1..S3 from memory of the textbooks;
// every value confirmed over all permutations. One minute stands for one unit of the instance, ten where people share work.
import { epochS, later, type PersonId, type PitId, type TaskId } from '@stokehold/domain/quantity';
import { describe, expect, it } from 'vitest';
import { afterIterations } from '@stokehold/scheduling/search';
import { boundOf, checkRounds, dispatchRounds, loadOf, planRounds, type RoundPlan, type RoundProblem } from '@stokehold/scheduling/rounds';

const from = epochS(1_800_000_000);
const minute = (n: number) => later(from, Math.round(n * 60));
const SPAN = 1000;
const person = (i: number) => ({ id: `person-${i}` as PersonId, startsAt: from, endsAt: minute(SPAN), skills: [], atPlace: 'yard', freeFrom: from, breaks: [] });

function shop(people: number, lengths: readonly number[], dues: readonly number[], weights?: readonly number[]): RoundProblem {
  return {
    from, until: minute(SPAN), places: ['yard'], walkS: [[0]], people: Array.from({ length: people }, (_, i) => person(i)), pits: [], frozen: [], pins: [], promises: [],
    tasks: lengths.map((length, i) => ({
      id: `task-${i}` as TaskId, kind: 'haul', place: 'yard', lengthS: length * 60, earliestAt: from, dueAt: minute(dues[i]!), latestAt: minute(dues[i]! + 700), people: 1, weight: weights?.[i] ?? 1,
    })),
  };
}
/** The instances are due at the end of a job, our tasks at their start. */
const byStart = (lengths: readonly number[], dues: readonly number[]) => dues.map((due, i) => due - lengths[i]!);
const options = { seed: 1, stop: afterIterations(500) };

describe('one person', () => {
  const p1 = [7, 8, 4, 6, 6];
  const d1 = [9, 17, 18, 19, 21];

  it('S1: earliest due date leaves a greatest lateness of 10', () => {
    // Every task may be late by the same 700 minutes, so that most urgent first is earliest due date first.
    const problem = shop(1, p1, d1);
    const ends = dispatchRounds(problem).assignments.map(({ endsAt, work }) => (endsAt - minute(d1[Number(work.kind === 'task' ? work.taskId.slice(5) : 0)]!)) / 60);
    expect(Math.max(...ends)).toBe(10);
  });

  it.each([
    { row: 'S1', lengths: p1, dues: d1, weights: [1, 1, 1, 1, 1], least: 16 },
    { row: 'S2', lengths: [121, 79, 147, 83, 130], dues: [260, 266, 266, 336, 337], weights: [1, 1, 1, 1, 1], least: 370 },
    { row: 'S3', lengths: [12, 8, 15, 9], dues: [16, 26, 25, 27], weights: [4, 5, 3, 5], least: 67 },
  ])('$row: the least total tardiness is $least', ({ lengths, dues, weights, least }) => {
    const problem = shop(1, lengths, byStart(lengths, dues), weights);
    const { plan } = planRounds(problem, options);
    expect(checkRounds(problem, plan)).toEqual([]);
    expect(plan.levels.tasksLateS / 60).toBe(least);
  });

  it('S1: no plan has fewer than 2 late jobs', () => {
    const problem = shop(1, p1, byStart(p1, d1));
    for (const plan of [dispatchRounds(problem), planRounds(problem, options).plan]) expect(plan.assignments.filter(({ lateS }) => lateS > 0).length).toBeGreaterThanOrEqual(2);
  });
});

describe('people side by side', () => {
  it.each([
    { row: 'S4', people: 3, lengths: [5, 5, 4, 4, 3, 3, 3], least: 9 },
    { row: 'S5', people: 2, lengths: [3, 3, 2, 2, 2], least: 6 },
    { row: 'S6', people: 3, lengths: [1, 1, 1, 1, 1, 1, 3], least: 3 },
  ])('$row: the least makespan $least is the bound, and the even plan reaches it', ({ people, lengths, least }) => {
    const problem = shop(people, lengths.map((length) => 10 * length), lengths.map(() => 900));
    expect(boundOf(problem).busiestS / 600).toBe(least);
    const { plan } = planRounds(problem, { seed: 1, stop: afterIterations(2000) });
    expect(checkRounds(problem, plan)).toEqual([]);
    expect(plan.levels.uneven).toBe(0);
    const work = problem.people.map(({ id }) => plan.assignments.filter(({ personIds }) => personIds.includes(id)).reduce((sum, { startsAt, endsAt }) => sum + endsAt - startsAt, 0));
    expect(Math.max(...work) / 600).toBe(least);
  });
});

describe('ten pits, a check of 8 minutes each 30', () => {
  const pits = Array.from({ length: 10 }, (_, i) => ({
    id: `pit-${i}` as PitId, place: 'yard', weight: 1, checkS: 480, gap: { earliestS: 600, dueS: 1800, latestSafeS: 1800 },
    first: { earliestAt: from, dueAt: minute(30), latestSafeAt: minute(30) },
  }));
  const yard = (people: number): RoundProblem => ({
    from, until: minute(240), places: ['yard'], walkS: [[0]], people: Array.from({ length: people }, (_, i) => ({ ...person(i), endsAt: minute(250) })), pits, tasks: [], frozen: [], pins: [], promises: [],
  });

  it('S7: shared, three people are necessary (80/30 > 2)', () => {
    expect(boundOf(yard(2)).peopleForDue).toBe(3);
    expect(loadOf(yard(2))[1]).toMatchObject({ fails: true, missingPeople: 1 });
    expect(planRounds(yard(2), { seed: 1, stop: afterIterations(50) }).plan.levels.unsafeS).toBeGreaterThan(0);
  });

  it('S7: and sufficient: person j mod 3 starts check j at minute 8j/3, a gap of 26 2/3', () => {
    const problem = yard(3);
    const count = Math.ceil(240 / (8 / 3));
    const assignments = Array.from({ length: count }, (_, j): RoundPlan['assignments'][number] => {
      const nth = Math.floor(j / 10) + 1;
      const startsAt = later(from, 160 * j);
      const before = later(startsAt, -1600);
      const dueAt = nth === 1 ? minute(30) : later(before, 1800);
      return {
        work: { kind: 'check', pitId: pits[j % 10]!.id, nth }, personIds: [problem.people[j % 3]!.id], startsAt, endsAt: later(startsAt, 480), dueAt, latestSafeAt: dueAt,
        slackS: dueAt - startsAt, lateS: 0, pastLatestS: 0, earlyS: 0, reason: { code: 'evens-load', late: [] },
      };
    });
    // 90 checks, 30 each of 8 minutes: nobody works more than another.
    const levels = { unsafeS: 0, unsafeChecks: 0, unplaced: 0, pastLatestS: 0, lateWeightedS: 0, tasksLateS: 0, uneven: 0, unevenUnpleasant: 0, promises: 0, walkS: 0 };
    expect(checkRounds(problem, { assignments, unplaced: [], levels, bound: boundOf(problem) })).toEqual([]);
  });

  it('S8: with each pit bound to one person, four are needed', () => {
    expect(boundOf(yard(3)).peopleIfPitsBound).toBe(4);
  });
});
