import type { RoundPlan } from './plan.js';
import { workKey, type RoundPit, type RoundProblem } from './problem.js';

export interface CheckedWindow {
  readonly earliestAt: number;
  readonly dueAt: number;
  readonly latestAt: number;
  readonly startsAt: number;
  readonly weight: number;
}

/** What follows from the last check of a pit for the rest of its fire. */
export interface CheckedTail {
  readonly pit: RoundPit;
  readonly endDueAt: number;
  readonly endLatestAt: number;
  readonly keepUntil: number;
}

/** The window of every planned piece of work, checks by the real start of the check before. The checker's own reckoning. */
export function windowsOf(problem: RoundProblem, plan: RoundPlan): { readonly byKey: ReadonlyMap<string, CheckedWindow>; readonly tails: readonly CheckedTail[] } {
  const byKey = new Map<string, CheckedWindow>();
  const tails = problem.pits.map((pit): CheckedTail => {
    const { earliestS, dueS, latestSafeS } = pit.gap;
    let next: { earliestAt: number; dueAt: number; latestAt: number } = { earliestAt: pit.first.earliestAt, dueAt: pit.first.dueAt, latestAt: pit.first.latestSafeAt };
    const own = plan.assignments.filter(({ work }) => work.kind === 'check' && work.pitId === pit.id);
    for (const { work, startsAt } of [...own].sort((a, b) => a.startsAt - b.startsAt)) {
      byKey.set(workKey(work), { ...next, startsAt, weight: pit.weight });
      next = { earliestAt: startsAt + earliestS, dueAt: startsAt + dueS, latestAt: startsAt + latestSafeS };
    }
    return { pit, endDueAt: next.dueAt, endLatestAt: next.latestAt, keepUntil: Math.min(pit.keepUntil ?? problem.until, problem.until) };
  });
  for (const { work, startsAt } of plan.assignments) {
    if (work.kind === 'task') {
      const task = problem.tasks.find((one) => one.id === work.taskId);
      if (task) byKey.set(workKey(work), { earliestAt: -Infinity, dueAt: task.dueAt, latestAt: task.latestAt, startsAt, weight: task.weight ?? 1 });
    } else if (work.kind === 'break') {
      const rest = problem.people.flatMap((person) => person.breaks).find((one) => one.id === work.breakId);
      if (rest) byKey.set(workKey(work), { earliestAt: -Infinity, dueAt: rest.latestAt, latestAt: rest.latestAt, startsAt, weight: 1 });
    }
  }
  return { byKey, tails };
}
