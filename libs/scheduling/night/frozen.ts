import { later } from '@stokehold/domain/quantity';
import { workKey, type FrozenWork, type RoundPerson, type RoundProblem, type Work, type WorkPromise } from '../rounds/index.js';
import type { NightFacts, Shown } from './facts.js';
import { FROZEN_AHEAD_S, PROMISED_AHEAD_S } from './practice.js';

type Outline = Pick<RoundProblem, 'people' | 'pits' | 'tasks'>;
interface Span {
  readonly from: number;
  readonly until: number;
}
const meet = (one: Span, other: Span) => one.from < other.until && other.from < one.until;

/** Whether this work is still to be done: not a check that was made, a task that is done, a break that has begun. */
function isOpen(work: Work, { people, pits, tasks }: Outline): boolean {
  if (work.kind === 'check') return pits.some(({ id, firstNth = 1 }) => id === work.pitId && work.nth >= firstNth);
  if (work.kind === 'task') return tasks.some(({ id }) => id === work.taskId);
  return people.some(({ breaks }) => breaks.some(({ id, startedAt }) => id === work.breakId && startedAt === undefined));
}

/** Whether somebody is there for all of this work: in their hours, not away, not on a break that has begun. */
function isThere({ startsAt, endsAt, absent = [], breaks }: RoundPerson, work: Span): boolean {
  const taken = breaks.flatMap(({ startedAt, lengthS }) => (startedAt === undefined ? [] : [{ from: startedAt, until: startedAt + lengthS }]));
  return startsAt <= work.from && work.until <= endsAt && ![...absent, ...taken].some((gone) => meet(gone, work));
}

/**
 * Work that is under way or begins within two minutes: it stays with its people and to the second. Not frozen is what was done,
 * what its person left or is away from, and a later check of a pit whose next one is not frozen.
 */
export function frozenOf(outline: Outline, { now, shown }: Pick<NightFacts, 'now' | 'shown'>): readonly FrozenWork[] {
  const frozen: Shown[] = [];
  const near = shown.filter(({ startsAt, endsAt }) => startsAt <= now + FROZEN_AHEAD_S && endsAt > now).sort((one, other) => one.startsAt - other.startsAt);
  for (const one of near) {
    const span = { from: one.startsAt, until: one.endsAt };
    const theirs = one.personIds.map((id) => outline.people.find((person) => person.id === id));
    const people = theirs.every((person) => person !== undefined && isThere(person, span));
    const free = !frozen.some((other) => other.personIds.some((id) => one.personIds.includes(id)) && meet({ from: other.startsAt, until: other.endsAt }, span));
    if (isOpen(one.work, outline) && isNext(one.work, outline, frozen) && people && free) frozen.push(one);
  }
  return frozen.map(({ work, personIds, startsAt, endsAt }) => ({ work, personIds, startsAt, endsAt }));
}

/** Checks of a pit are frozen from the next one on, without a hole. */
function isNext(work: Work, { pits }: Outline, frozen: readonly Shown[]): boolean {
  if (work.kind !== 'check') return true;
  const firstNth = pits.find(({ id }) => id === work.pitId)?.firstNth ?? 1;
  const before = frozen.filter((other) => other.work.kind === 'check' && other.work.pitId === work.pitId).length;
  return work.nth === firstNth + before;
}

/** What was shown to people for the next two hours and is still to be done. */
export function promisesOf(outline: Outline, { now, shown }: Pick<NightFacts, 'now' | 'shown'>, frozen: readonly FrozenWork[]): readonly WorkPromise[] {
  const fixed = new Set(frozen.map(({ work }) => workKey(work)));
  const known = (personIds: Shown['personIds']) => personIds.every((id) => outline.people.some((person) => person.id === id));
  return shown
    .filter(({ work, personIds, startsAt }) => startsAt < later(now, PROMISED_AHEAD_S) && !fixed.has(workKey(work)) && isOpen(work, outline) && known(personIds))
    .map(({ work, personIds, startsAt }) => ({ work, personIds, startsAt }));
}
