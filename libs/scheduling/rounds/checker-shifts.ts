import type { Violation } from './checker.js';
import type { RoundPlan } from './plan.js';
import { workKey, type RoundPerson, type RoundPit, type RoundProblem, type Work } from './problem.js';

/**
 * Rule 4: nobody works longer from one rest to the next than their limit. Facts may have broken it already, and a break that
 * found no place is owned up to by itself: only work that the plan could have left out is held against it.
 */
export function stretches(problem: RoundProblem, plan: RoundPlan): readonly Violation[] {
  return problem.people.flatMap((person): readonly Violation[] => {
    const { stretchS } = person;
    const missed = plan.unplaced.some(({ work }) => work.kind === 'break' && person.breaks.some(({ id }) => id === work.breakId));
    if (stretchS === undefined || missed) return [];
    const rests = restsOf(person, plan);
    const own = plan.assignments.filter(({ work, personIds }) => work.kind !== 'break' && personIds.includes(person.id)).sort((a, b) => a.startsAt - b.startsAt);
    const found: Violation[] = [];
    let begunAt: number | undefined;
    let lastEnd: number = problem.from;
    for (const { work, startsAt, endsAt } of own) {
      if (begunAt === undefined || rests.some(([from, until]) => from >= lastEnd && until <= startsAt)) begunAt = startsAt;
      const fact = problem.frozen.some((one) => workKey(one.work) === workKey(work));
      if (!fact && endsAt - begunAt > stretchS) found.push({ code: 'stretch-too-long', where: workKey(work), personId: person.id });
      lastEnd = endsAt;
    }
    return found;
  });
}

/** Breaks taken, breaks planned and absences, as spans. */
function restsOf(person: RoundPerson, plan: RoundPlan): readonly (readonly [from: number, until: number])[] {
  const planned = plan.assignments.filter(({ work }) => work.kind === 'break' && person.breaks.some(({ id }) => id === work.breakId));
  return [
    ...planned.map(({ startsAt, endsAt }) => [startsAt, endsAt] as const),
    ...person.breaks.flatMap(({ startedAt, lengthS }) => (startedAt === undefined ? [] : [[startedAt, startedAt + lengthS] as const])),
    ...(person.absent ?? []).map(({ from, until }) => [from, until] as const),
  ];
}

/**
 * Rule 10: when somebody's shift begins or ends while the window of a fire's check stands open, the check has an owner on one
 * side: it is planned, before or after, or listed as one that nobody can make.
 */
export function handovers(problem: RoundProblem, plan: RoundPlan): readonly Violation[] {
  const turns = [...new Set(problem.people.flatMap(({ startsAt, endsAt }) => [startsAt as number, endsAt as number]))].filter((at) => at > problem.from && at < problem.until).sort((a, b) => a - b);
  if (turns.length === 0) return [];
  return problem.pits.flatMap((pit): readonly Violation[] => {
    const own = checksOf(pit, plan);
    const listed = plan.unplaced.flatMap(({ work }) => (work.kind === 'check' && work.pitId === pit.id ? [work.nth] : []));
    const keepUntil = Math.min(pit.keepUntil ?? problem.until, problem.until);
    const orphaned = turns.some((at) => {
      const before = own.filter(({ startsAt }) => startsAt < at).at(-1);
      const [earliestAt, dueAt] = before ? [before.startsAt + pit.gap.earliestS, before.startsAt + pit.gap.dueS] : [pit.first.earliestAt, pit.first.dueAt];
      const open = earliestAt <= at && dueAt + pit.checkS <= keepUntil && at < keepUntil;
      const owned = own.some(({ startsAt }) => startsAt >= at) || listed.some((nth) => nth > (before?.nth ?? 0));
      return open && !owned;
    });
    return orphaned ? [{ code: 'handover-without-owner', where: pit.id }] : [];
  });
}

const nthOf = (work: Work) => (work.kind === 'check' ? work.nth : 0);

const checksOf = (pit: RoundPit, plan: RoundPlan) =>
  plan.assignments.flatMap(({ work, startsAt }) => (work.kind === 'check' && work.pitId === pit.id ? [{ startsAt, nth: nthOf(work) }] : [])).sort((a, b) => a.startsAt - b.startsAt);
