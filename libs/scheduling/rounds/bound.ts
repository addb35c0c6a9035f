import { openingOf, type Opening } from './opening.js';
import type { RoundProblem } from './problem.js';
import type { Bound } from './plan.js';

/**
 * What no plan can beat, before any planning: each part is an explanation as well as a number.
 *
 *     people >= ceil( sum over pits of check length / gap + other work / horizon )      work bound, walking left out
 *     pits one person can own = floor( gap / check length )                             bound-pit bound
 *     unavoidable lateness: of the first looks of the night (opening.ts)                 opening bound
 *
 * Held to tests/published/rounds-classical.test.ts.
 */
export function boundOf(problem: RoundProblem, opening: Opening = openingOf(problem)): Bound {
  const spanS = problem.until - problem.from;
  const restS = problem.people.reduce((sum, person) => sum + person.breaks.reduce((all, rest) => all + rest.lengthS, 0), 0);
  const presentS = problem.people.reduce((sum, person) => sum + Math.max(0, Math.min(person.endsAt, problem.until) - Math.max(person.startsAt, problem.from)), 0);
  const freeFrac = presentS > 0 ? Math.max(0, presentS - restS) / presentS : 1;
  const tasksS = problem.tasks.reduce((sum, task) => sum + task.lengthS * task.people, 0);
  const load = (gap: 'dueS' | 'latestSafeS') => problem.pits.reduce((sum, pit) => sum + pit.checkS / pit.gap[gap], 0) + tasksS / spanS;
  const people = (frac: number) => Math.ceil(frac / Math.max(freeFrac, 1e-9) - 1e-9);
  return {
    ...opening,
    peopleForDue: people(load('dueS')),
    peopleForSafe: people(load('latestSafeS')),
    peopleIfPitsBound: peopleIfBound(problem),
    busiestS: Math.max(0, ...problem.tasks.map((task) => task.lengthS), problem.people.length > 0 ? Math.ceil(leastWorkS(problem, tasksS) / problem.people.length) : 0),
  };
}

/** Work that no plan avoids: tasks, and per pit the checks that the latest safe gaps force. */
function leastWorkS(problem: RoundProblem, tasksS: number): number {
  return problem.pits.reduce((sum, pit) => {
    const keepUntil = Math.min(pit.keepUntil ?? problem.until, problem.until);
    return sum + pit.checkS * Math.max(0, Math.ceil((keepUntil - pit.first.latestSafeAt) / pit.gap.latestSafeS));
  }, tasksS);
}

/** Pits by the skill-free rule: the fewest people if nobody ever looks at another's pit, filled pit by pit. */
function peopleIfBound({ pits }: RoundProblem): number {
  const loads: number[] = [];
  const shares = pits.map((pit) => pit.checkS / pit.gap.dueS).sort((a, b) => b - a);
  for (const share of shares) {
    const fits = loads.findIndex((load) => load + share <= 1 + 1e-9);
    if (fits < 0) loads.push(share);
    else loads[fits]! += share;
  }
  return loads.length;
}

