import type { Assignment, ChangeCause, PlanChange, RoundPlan } from './plan.js';
import { workKey, type RoundProblem, type WorkPromise } from './problem.js';

/** A start that moves by no more than this is no change to anyone, s. */
const UNNOTICED_S = 60;

/** What a new plan changes of an older one, each with its cause, in order of the older or the new start. */
export function changesBetween(problem: RoundProblem, before: RoundPlan, after: RoundPlan): readonly PlanChange[] {
  const old = new Map(before.assignments.map((one) => [workKey(one.work), one]));
  const fresh = new Map(after.assignments.map((one) => [workKey(one.work), one]));
  const keys = [...new Set([...old.keys(), ...fresh.keys()])];
  return keys
    .flatMap((key) => changeOf(problem, after, old.get(key), fresh.get(key)))
    .sort((a, b) => at(a) - at(b) || (workKey(a.work) < workKey(b.work) ? -1 : 1));
}

const at = ({ startBefore, startAfter }: PlanChange) => startAfter ?? startBefore ?? 0;

function changeOf(problem: RoundProblem, after: RoundPlan, was: Assignment | undefined, is: Assignment | undefined): readonly PlanChange[] {
  const work = (is ?? was)!.work;
  const facts = {
    work, personsBefore: was?.personIds ?? [], personsAfter: is?.personIds ?? [],
    ...(was ? { startBefore: was.startsAt } : {}), ...(is ? { startAfter: is.startsAt } : {}),
  };
  if (!was) return [{ code: 'new', ...facts, because: { code: 'new-work' } }];
  if (!is) {
    if (was.endsAt <= problem.from) return [];
    const missed = after.unplaced.some((one) => workKey(one.work) === workKey(work));
    return [{ code: 'gone', ...facts, because: { code: missed ? 'no-place' : 'not-needed' } }];
  }
  const otherPerson = was.personIds.length !== is.personIds.length || was.personIds.some((id) => !is.personIds.includes(id));
  const moved = Math.abs(was.startsAt - is.startsAt) > UNNOTICED_S;
  if (!otherPerson && !moved) return [];
  const code = otherPerson ? (moved ? 'moved-other-person' : 'other-person') : 'moved';
  return [{ code, ...facts, because: causeOf(problem, after, was, is) }];
}

/** The plainest cause the facts give: someone is not there, the fire's due moved, the work before ran over; else room was made. */
function causeOf(problem: RoundProblem, after: RoundPlan, was: Assignment, is: Assignment): ChangeCause {
  for (const id of was.personIds) {
    const person = problem.people.find((one) => one.id === id);
    const there = person && was.startsAt >= person.startsAt && was.endsAt <= person.endsAt && !person.absent?.some(({ from, until }) => from < was.endsAt && was.startsAt < until);
    if (!there) return { code: 'person-not-there', personId: id };
  }
  if (was.dueAt !== undefined && is.dueAt !== undefined && Math.abs(was.dueAt - is.dueAt) > UNNOTICED_S) return { code: 'due-moved' };
  for (const id of was.personIds) {
    const ran = problem.frozen.find((one) => one.personIds.includes(id) && one.startsAt <= was.startsAt && one.endsAt > was.startsAt);
    if (ran && workKey(ran.work) !== workKey(was.work)) return { code: 'work-before-ran-over', personId: id, work: ran.work };
    const person = problem.people.find((one) => one.id === id);
    if (person && person.freeFrom > was.startsAt) return { code: 'work-before-ran-over', personId: id };
  }
  const inItsPlace = after.assignments.find((one) => workKey(one.work) !== workKey(was.work) && one.personIds.some((id) => was.personIds.includes(id)) && one.startsAt < was.endsAt && was.startsAt < one.endsAt);
  return inItsPlace ? { code: 'made-room', work: inItsPlace.work } : { code: 'made-room' };
}

/** What a plan promised to people from now on. */
export const promisesOf = (plan: RoundPlan, from: number): readonly WorkPromise[] =>
  plan.assignments.filter(({ startsAt }) => startsAt >= from).map(({ work, personIds, startsAt }) => ({ work, personIds, startsAt }));
