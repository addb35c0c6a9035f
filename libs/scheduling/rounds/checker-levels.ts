import type { windowsOf } from './checker-windows.js';
import type { Levels, RoundPlan } from './plan.js';
import { workKey, type RoundProblem } from './problem.js';

const past = (value: number, limit: number) => (value > limit ? value - limit : 0);
const total = (numbers: readonly number[]) => numbers.reduce((sum, number) => sum + number, 0);

/** The levels of a plan counted from its assignments alone, by the checker's own reckoning. */
export function recountLevels(problem: RoundProblem, plan: RoundPlan, { byKey, tails }: ReturnType<typeof windowsOf>): Levels {
  const planned = new Map(plan.assignments.map((one) => [workKey(one.work), one]));
  const ofKind = (kind: string) => [...byKey].filter(([key]) => key.startsWith(`${kind}/`)).map(([, window]) => window);
  const checks = ofKind('check');
  const tasks = ofKind('task');
  const unsafe = [...checks.map(({ startsAt, latestAt }) => past(startsAt, latestAt)), ...tails.map(({ keepUntil, endLatestAt }) => past(keepUntil, endLatestAt))];
  const work = problem.people.map((person) => {
    const own = plan.assignments.filter(({ personIds, work: { kind } }) => personIds.includes(person.id) && kind !== 'break');
    const nasty = own.filter((one) => one.work.kind === 'task' && isUnpleasant(problem, one.work.taskId));
    const perShift = (seconds: number) => Math.floor((seconds * 1e6) / (person.endsAt - person.startsAt));
    return {
      all: perShift((person.workedS ?? 0) + total(own.map(({ startsAt, endsAt }) => endsAt - startsAt))),
      nasty: perShift((person.unpleasantS ?? 0) + total(nasty.map(({ startsAt, endsAt }) => endsAt - startsAt))),
    };
  });
  const range = (values: readonly number[]) => (values.length > 0 ? Math.max(...values) - Math.min(...values) : 0);
  return {
    unsafeS: total(unsafe),
    unsafeChecks: unsafe.filter((seconds) => seconds > 0).length,
    unplaced: plan.unplaced.filter(({ work: { kind } }) => kind !== 'check').length,
    pastLatestS: total([...tasks, ...ofKind('break')].map(({ startsAt, latestAt }) => past(startsAt, latestAt))),
    lateWeightedS:
      total(checks.map(({ startsAt, dueAt, earliestAt, weight }) => weight * (past(startsAt, dueAt) + past(earliestAt, startsAt)))) +
      total(tails.map(({ keepUntil, endDueAt, pit }) => pit.weight * past(keepUntil, endDueAt))),
    tasksLateS: total(tasks.map(({ startsAt, dueAt, weight }) => weight * past(startsAt, dueAt))),
    uneven: range(work.map(({ all }) => all)),
    unevenUnpleasant: range(work.map(({ nasty }) => nasty)),
    promises: total(problem.promises.map((promise) => brokenUnits(problem, plan, { promise, planned: planned.get(workKey(promise.work)) }))),
    walkS: total(problem.people.map(({ id, atPlace }) => walked(problem, plan, id, atPlace))),
  };
}

const isUnpleasant = (problem: RoundProblem, taskId: string) => problem.tasks.find((task) => task.id === taskId)?.unpleasant === true;

/** Half units: another person 10, 4 or 2 by how near the promise is, a start moved by over five minutes half of that. */
function brokenUnits(problem: RoundProblem, plan: RoundPlan, { promise, planned }: { readonly promise: RoundProblem['promises'][number]; readonly planned: RoundPlan['assignments'][number] | undefined }): number {
  const inS = promise.startsAt - problem.from;
  const units = inS > 7200 ? 2 : inS > 1800 ? 4 : 10;
  if (!planned) return promise.work.kind !== 'check' && plan.unplaced.some(({ work }) => workKey(work) === workKey(promise.work)) ? units : 0;
  const same = planned.personIds.length === promise.personIds.length && promise.personIds.every((id) => planned.personIds.includes(id));
  if (!same) return units;
  return Math.abs(planned.startsAt - promise.startsAt) > 300 ? units / 2 : 0;
}

function walked(problem: RoundProblem, plan: RoundPlan, personId: string, atPlace: string): number {
  let at = problem.places.indexOf(atPlace);
  let sum = 0;
  for (const { work } of plan.assignments.filter(({ personIds }) => personIds.some((id) => id === personId)).sort((a, b) => a.startsAt - b.startsAt)) {
    if (work.kind === 'break') continue;
    const place = work.kind === 'check' ? problem.pits.find((pit) => pit.id === work.pitId)?.place : problem.tasks.find((task) => task.id === work.taskId)?.place;
    const to = problem.places.indexOf(place ?? '');
    sum += problem.walkS[at]![to]!;
    at = to;
  }
  return sum;
}
