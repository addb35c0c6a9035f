import { later, MINUTE_S, type PersonId } from '@stokehold/domain/quantity';
import type { Hindrance, RoundPlan } from '../plan.js';
import type { RoundPerson, RoundProblem, Work } from '../problem.js';
import { answered, assignmentOf, isSame, type AnswerOptions } from './answered.js';
import { askedOf, hindrances } from './hinders.js';

/** One thing that could be given way on. */
export type Relaxation =
  | { readonly code: 'drop-pin' }
  | { readonly code: 'skip-break'; readonly personId: PersonId; readonly breakId: string }
  | { readonly code: 'later-latest'; readonly byS: number }
  | { readonly code: 'teach-skill'; readonly personId: PersonId; readonly skill: string }
  | { readonly code: 'one-person-more'; readonly skill?: string };

/** Why a piece of work is late or has no place, and the least that would admit it in time. */
export interface WhyNot {
  readonly state: 'in-time' | 'late' | 'past-latest' | 'unplaced';
  readonly lateS: number;
  readonly hindrances: readonly Hindrance[];
  /** Nothing where it is in time, or where nothing tried here helps. */
  readonly relax: Relaxation | undefined;
}

/** A start so little after due is in time. */
const BEARABLE_S = MINUTE_S;
/** Later latest starts that are tried, in steps that double. */
const LATER_S = [5, 10, 20, 40, 80, 160].map((minutes) => minutes * MINUTE_S);

/**
 * Why not in time: who was hindered by what when it was due, and the least relaxation that admits it. Each relaxation is tried on a
 * copy of the night, from the least to the greatest: a decision given up, a break moved away, a later latest start, a skill
 * learned, one person more.
 *
 * @returns the answer, or nothing where the problem knows no such work. Held to rounds/answers/why-not.test.ts
 */
export function whyNot(problem: RoundProblem, plan: RoundPlan, work: Work, options: AnswerOptions): WhyNot | undefined {
  if (!askedOf(problem, work)) return undefined;
  const assignment = assignmentOf(plan, work);
  const unplaced = plan.unplaced.find((one) => isSame(one.work, work));
  if (!assignment && !unplaced) return undefined;
  const state = !assignment ? 'unplaced' : assignment.pastLatestS > 0 ? 'past-latest' : assignment.lateS > BEARABLE_S ? 'late' : 'in-time';
  const lateS = assignment?.lateS ?? 0;
  if (state === 'in-time') return { state, lateS, hindrances: [], relax: undefined };
  const due = assignment?.dueAt ?? dueOf(problem, work);
  const found = hindrances({ problem, plan, work, at: due < problem.from ? problem.from : due });
  const relax = relaxations(problem, work, found).find((one) => admits(relaxed(problem, work, one), plan, work, options));
  return { state, lateS, hindrances: found.length > 0 ? found : (unplaced?.reason.hindrances ?? []), relax };
}

/** When it should be done; a check that is in no plan, as soon as its fire wants it. */
function dueOf({ pits, tasks, people, from }: RoundProblem, work: Work) {
  if (work.kind === 'check') return pits.find(({ id }) => id === work.pitId)?.first.dueAt ?? from;
  if (work.kind === 'task') return tasks.find(({ id }) => id === work.taskId)?.dueAt ?? from;
  return people.flatMap(({ breaks }) => breaks).find(({ id }) => id === work.breakId)?.latestAt ?? from;
}

function relaxations(problem: RoundProblem, work: Work, found: readonly Hindrance[]): readonly Relaxation[] {
  const skill = askedOf(problem, work)?.skill;
  const pins = problem.pins.some((pin) => isSame(pin.work, work)) ? [{ code: 'drop-pin' } as const] : [];
  const breaks = found.flatMap(({ code, personId, work: other }) => (code === 'on-break' && other?.kind === 'break' ? [{ code: 'skip-break' as const, personId, breakId: other.breakId }] : []));
  const later = work.kind === 'check' ? [] : LATER_S.map((byS) => ({ code: 'later-latest' as const, byS }));
  const taught = skill === undefined ? [] : found.flatMap(({ code, personId }) => (code === 'skill' ? [{ code: 'teach-skill' as const, personId, skill }] : []));
  return [...pins, ...breaks, ...later, ...taught, { code: 'one-person-more', ...(skill !== undefined && { skill }) }];
}

/** A copy of the problem in which one thing is given way on. */
function relaxed(problem: RoundProblem, work: Work, relax: Relaxation): RoundProblem {
  switch (relax.code) {
    case 'drop-pin':
      return { ...problem, pins: problem.pins.filter((pin) => !isSame(pin.work, work)) };
    case 'skip-break':
      return withPerson(problem, relax.personId, (person) => ({ ...person, breaks: person.breaks.filter(({ id }) => id !== relax.breakId) }));
    case 'later-latest':
      return { ...problem, tasks: problem.tasks.map((task) => (work.kind === 'task' && task.id === work.taskId ? { ...task, latestAt: later(task.latestAt, relax.byS) } : task)) };
    case 'teach-skill':
      return withPerson(problem, relax.personId, (person) => ({ ...person, skills: [...person.skills, relax.skill] }));
    case 'one-person-more':
      return { ...problem, people: [...problem.people, oneMore(problem, work)] };
  }
}

const withPerson = (problem: RoundProblem, id: PersonId, change: (person: RoundPerson) => RoundPerson): RoundProblem => ({
  ...problem, people: problem.people.map((person) => (person.id === id ? change(person) : person)),
});

/** Somebody who comes for this work alone, stands beside it and can do it. */
function oneMore(problem: RoundProblem, work: Work): RoundPerson {
  const asked = askedOf(problem, work);
  return {
    id: 'one-more' as PersonId, startsAt: problem.from, endsAt: problem.until, freeFrom: problem.from, breaks: [],
    skills: asked?.skill === undefined ? [] : [asked.skill], atPlace: asked?.place ?? problem.places[0] ?? '',
  };
}

function admits(problem: RoundProblem, plan: RoundPlan, work: Work, options: AnswerOptions): boolean {
  const placed = assignmentOf(answered(problem, plan, options).plan, work);
  return placed !== undefined && placed.pastLatestS === 0 && (work.kind !== 'check' || placed.lateS <= BEARABLE_S);
}
