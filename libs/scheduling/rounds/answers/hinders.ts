import type { EpochS, PersonId } from '@stokehold/domain/quantity';
import type { Hindrance, RoundPlan } from '../plan.js';
import { type RoundPerson, type RoundProblem, type Work } from '../problem.js';
import { isSame } from './answered.js';

/** What a piece of work asks for. */
export interface Asked {
  readonly lengthS: number;
  readonly people: number;
  readonly place: string | undefined;
  readonly skill: string | undefined;
}

/** What a piece of work asks for, or nothing if the problem does not know it. */
export function askedOf({ pits, tasks, people }: RoundProblem, work: Work): Asked | undefined {
  if (work.kind === 'check') {
    const pit = pits.find(({ id }) => id === work.pitId);
    return pit && { lengthS: pit.checkS, people: 1, place: pit.place, skill: pit.skill };
  }
  if (work.kind === 'task') {
    const task = tasks.find(({ id }) => id === work.taskId);
    return task && { lengthS: task.lengthS, people: task.people, place: task.place, skill: task.skill };
  }
  const rest = people.flatMap(({ breaks }) => breaks).find(({ id }) => id === work.breakId);
  return rest && { lengthS: rest.lengthS, people: 1, place: undefined, skill: undefined };
}

interface Moment {
  readonly problem: RoundProblem;
  readonly plan: RoundPlan;
  readonly work: Work;
  readonly at: EpochS;
}

/**
 * The first rule that keeps somebody from beginning a piece of work at a moment, as the plan stands: skill, shift, absence, break,
 * other work, the walk. Their own part in this work is no hindrance.
 *
 * @returns the hindrance, or nothing if they could. Held to rounds/answers/hinders.test.ts
 */
export function hindrance(moment: Moment, personId: PersonId): Hindrance | undefined {
  const { problem, work, at } = moment;
  const asked = askedOf(problem, work);
  const person = problem.people.find(({ id }) => id === personId);
  if (!asked || !person) return { personId, code: 'not-on-shift' };
  if (asked.skill !== undefined && !person.skills.includes(asked.skill)) return { personId, code: 'skill' };
  const until = at + asked.lengthS;
  if (at < Math.max(person.startsAt, person.freeFrom) || until > person.endsAt) return { personId, code: 'not-on-shift' };
  if ((person.absent ?? []).some((gone) => gone.from < until && at < gone.until)) return { personId, code: 'absent' };
  return busy(moment, person, until) ?? tooFar(moment, person, asked);
}

function busy({ plan, work, at }: Moment, { id, breaks }: RoundPerson, until: number): Hindrance | undefined {
  const begun = breaks.some(({ startedAt, lengthS }) => startedAt !== undefined && startedAt < until && at < startedAt + lengthS);
  if (begun) return { personId: id, code: 'on-break' };
  const other = plan.assignments.find((one) => one.personIds.includes(id) && !isSame(one.work, work) && one.startsAt < until && at < one.endsAt);
  return other && { personId: id, code: other.work.kind === 'break' ? 'on-break' : 'busy', work: other.work };
}

function tooFar({ problem, plan, work, at }: Moment, person: RoundPerson, { place }: Asked): Hindrance | undefined {
  const done = plan.assignments.filter((one) => one.personIds.includes(person.id) && !isSame(one.work, work) && one.endsAt <= at);
  const last = done.filter((one) => askedOf(problem, one.work)?.place !== undefined).at(-1);
  const from = (last && askedOf(problem, last.work)?.place) ?? person.atPlace;
  const freeAt = Math.max(person.freeFrom, ...done.map(({ endsAt }) => endsAt));
  if (place === undefined || freeAt + walkS(problem, from, place) <= at) return undefined;
  return last ? { personId: person.id, code: 'too-far', work: last.work } : { personId: person.id, code: 'too-far' };
}

const walkS = ({ places, walkS: table }: RoundProblem, from: string, to: string): number => table[places.indexOf(from)]?.[places.indexOf(to)] ?? 0;

/** Everybody who could not begin a piece of work at a moment, each with the first rule that forbids it. */
export const hindrances = (moment: Moment): readonly Hindrance[] => moment.problem.people.flatMap(({ id }) => hindrance(moment, id) ?? []);
