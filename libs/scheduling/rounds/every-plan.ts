import type { RoundProblem, RoundTask } from './problem.js';

/**
 * The best levels over every plan of a tiny night of tasks for one person each: each order of tasks, each person for each,
 * each begun as early as its list allows. An oracle for tests; its work grows with the factorial of the tasks.
 *
 * @param problem  at most 8 tasks; no pits, breaks, pins or facts
 * @returns tasks without a place, seconds past latest, weighted seconds after due, of the best plan
 */
export function everyPlan(problem: RoundProblem): readonly [unplaced: number, pastLatestS: number, tasksLateS: number] {
  let best: readonly [number, number, number] = [Infinity, Infinity, Infinity];
  const people = problem.people.map((person) => ({ person, freeAt: Math.max(problem.from, person.freeFrom) as number, place: problem.places.indexOf(person.atPlace) }));
  const better = (one: readonly number[]) => {
    const at = one.findIndex((value, i) => value !== best[i]);
    return at >= 0 && one[at]! < best[at]!;
  };
  const extend = (left: readonly RoundTask[], pastS: number, lateS: number) => {
    if (!better([0, pastS, lateS])) return;
    if (left.length === 0) best = [0, pastS, lateS];
    for (const task of left) {
      for (const worker of people) {
        if (task.skill !== undefined && !worker.person.skills.includes(task.skill)) continue;
        const to = problem.places.indexOf(task.place);
        const startsAt = Math.max(task.earliestAt, worker.freeAt + problem.walkS[worker.place]![to]!);
        if (startsAt + task.lengthS > worker.person.endsAt) continue;
        const { freeAt, place } = worker;
        worker.freeAt = startsAt + task.lengthS;
        worker.place = to;
        extend(left.filter((one) => one !== task), pastS + Math.max(0, startsAt - task.latestAt), lateS + (task.weight ?? 1) * Math.max(0, startsAt - task.dueAt));
        worker.freeAt = freeAt;
        worker.place = place;
      }
    }
  };
  extend(problem.tasks, 0, 0);
  return best;
}
