import type { PersonId } from '@stokehold/domain/quantity';
import { columnsOf, type Columns } from './columns.js';
import { decisionsOf } from './decided.js';
import { blocksOf, hoursOf } from './night-breaks.js';
import { nightOrder } from './night-order.js';
import { checksOf, shownStarts, tasksOf } from './night-work.js';
import { openingOf, type Opening } from './opening.js';
import type { RoundPlan } from './plan.js';
import { parameter, type RoundPerson, type RoundPit, type RoundProblem, type Work } from './problem.js';
import { gapFracOf, keepUntilS } from './skeleton.js';

// The problem by index, in an order that names decide last, in seconds from `from`: what the planner works on. The checker never sees it.

/** A block of one person's time, a check, a task, a break or an absence. */
export interface Job {
  readonly kind: 'check' | 'task' | 'break' | 'absence';
  readonly key: string;
  readonly work: Work | undefined;
  /** Index of the place; -1 where the person happens to be. */
  readonly place: number;
  readonly lengthS: number;
  readonly releaseS: number;
  /** For a check its even place; for others their due. */
  readonly targetS: number;
  /** Tasks and breaks: latest start. */
  readonly latestS: number;
  /** Breaks: never later than this: the latest start, or where facts already broke it, the first moment they leave. */
  readonly hardLatestS: number;
  readonly weight: number;
  readonly people: number;
  /** People who may do it, by index; of a fixed job the ones who do. */
  readonly able: readonly number[];
  /** Its start where a fact or a pin decides it. */
  readonly fixedS: number | undefined;
  /** A fact or an absence: never moved. */
  readonly frozen: boolean;
  readonly pinned: boolean;
  readonly pit: number;
  /** Place in the pit's chain, from 0. */
  readonly link: number;
  readonly unpleasant: boolean;
  readonly promise: { readonly people: readonly number[]; readonly startS: number; readonly units: number } | undefined;
}

export interface NightPerson {
  readonly id: PersonId;
  readonly readyS: number;
  readonly endS: number;
  readonly place: number;
  /** Length of the whole shift, the base of an even load. */
  readonly shiftS: number;
  readonly workedS: number;
  readonly unpleasantS: number;
}

export interface NightPit {
  readonly source: RoundPit;
  readonly keepS: number;
  readonly firstEarliestS: number;
  readonly firstDueS: number;
  readonly firstLatestS: number;
  /** Its checks in order. */
  readonly jobs: readonly number[];
}

export interface Night {
  readonly problem: RoundProblem;
  readonly places: readonly string[];
  readonly walkS: readonly (readonly number[])[];
  /** The longest walk to each place: how early somebody must set out. */
  readonly farthestS: readonly number[];
  readonly people: readonly NightPerson[];
  readonly pits: readonly NightPit[];
  readonly jobs: readonly Job[];
  /** What one half unit of a changed promise costs in weighted seconds, times two. */
  readonly promiseS: number;
  /** Whether an even load comes before short walks. */
  readonly evenly: boolean;
  /** What no plan can avoid. */
  readonly opening: Opening;
  readonly columns: Columns;
}

/**
 * The problem, ready to be planned. It has been validated.
 *
 * @param before  a plan to go on from: its checks keep their places where the fires still allow it
 */
export function nightOf(problem: RoundProblem, before?: RoundPlan): Night {
  const order = nightOrder(problem);
  const known = decisionsOf(problem, order.people);
  const blocks = order.people.map((person, i) => blocksOf(known, person, i));
  const people = order.people.map((person, i) => ({ ...nightPerson(problem, person), endS: blocks[i]!.endS }));
  const jobs: Job[] = [];
  const laying = { fracAt: gapFracOf(problem), shownS: shownStarts(problem, before) };
  const pits = order.pits.map((pit, p): NightPit => {
    const own = checksOf(known, pit, p, laying);
    const firstJob = jobs.length;
    jobs.push(...own);
    return nightPit(problem, pit, own.map((_, i) => firstJob + i));
  });
  jobs.push(...tasksOf(known, order.tasks), ...blocks.flatMap(({ jobs: own }) => own));
  const farthestS = problem.places.map((_, to) => Math.max(0, ...problem.walkS.map((row) => row[to]!)));
  const night = {
    problem, places: problem.places, walkS: problem.walkS, farthestS, people, pits, jobs, promiseS: parameter(problem, 'promiseS'), evenly: parameter(problem, 'evenly') > 0,
    opening: openingOf(problem),
  };
  return { ...night, columns: columnsOf(night) };
}

function nightPit(problem: RoundProblem, pit: RoundPit, jobs: readonly number[]): NightPit {
  const { earliestAt, dueAt, latestSafeAt } = pit.first;
  const { from } = problem;
  return { source: pit, keepS: keepUntilS(problem, pit), firstEarliestS: earliestAt - from, firstDueS: dueAt - from, firstLatestS: latestSafeAt - from, jobs };
}

const nightPerson = (problem: RoundProblem, person: RoundPerson): NightPerson => ({
  id: person.id,
  ...hoursOf(problem, person),
  place: problem.places.indexOf(person.atPlace),
  shiftS: person.endsAt - person.startsAt,
  workedS: person.workedS ?? 0,
  unpleasantS: person.unpleasantS ?? 0,
});
