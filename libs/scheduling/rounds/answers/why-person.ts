import type { PersonId } from '@stokehold/domain/quantity';
import type { Assignment, AssignmentReason, Hindrance, Levels } from '../plan.js';
import type { RoundPlan } from '../plan.js';
import type { RoundProblem, Work } from '../problem.js';
import { validateRounds } from '../validate.js';
import { answered, assignmentOf, isSame, pinned, type AnswerOptions } from './answered.js';
import { isBetter } from './better.js';
import { askedOf, hindrance } from './hinders.js';
import { levelsApart, type LevelCost } from './levels-apart.js';

/** Somebody else for a piece of work, and what each level would cost. */
export interface Alternative {
  readonly personIds: readonly PersonId[];
  readonly costs: readonly LevelCost[];
  readonly startsAt: Assignment['startsAt'];
}

/** Why somebody has a piece of work. */
export interface WhyPerson {
  readonly assignment: Assignment;
  readonly reason: AssignmentReason['code'];
  /** The best two others, the better one first. */
  readonly others: readonly Alternative[];
  /** Everybody else, with the first rule that keeps them from it at its time; without one they would only cost more. */
  readonly hindered: readonly Hindrance[];
}

const BEST = 2;

/**
 * Why this person: for everybody else who may, the night is planned again with them in their place, and the levels are compared.
 * Work that is frozen or a break has no others.
 *
 * @param plan  a plan of this problem, or the one people see
 * @returns the answer, or nothing where the plan has no such work. Held to rounds/answers/why-person.test.ts
 */
export function whyPerson(problem: RoundProblem, plan: RoundPlan, work: Work, options: AnswerOptions): WhyPerson | undefined {
  const assignment = assignmentOf(plan, work);
  if (!assignment) return undefined;
  const moment = { problem, plan, work, at: assignment.startsAt };
  const rest = problem.people.filter(({ id }) => !assignment.personIds.includes(id));
  const hindered = rest.flatMap(({ id }) => hindrance(moment, id) ?? []);
  if (isFixed(problem, work)) return { assignment, reason: reasonOf(problem, assignment), others: [], hindered };
  const base = answered(problem, plan, options).plan;
  const tried = rest.flatMap(({ id }) => insteadOf(assignment, id).flatMap((personIds) => alternative({ problem, plan: base, work, personIds, options }) ?? []));
  const others = bestOfEach(tried, problem).map(({ levels, ...other }) => ({ ...other, costs: levelsApart(base.levels, levels) }));
  const named = new Set(others.flatMap(({ personIds }) => personIds));
  return { assignment, reason: reasonOf(problem, assignment, assignmentOf(base, work)), others, hindered: hindered.filter(({ personId }) => !named.has(personId)) };
}

const isFixed = (problem: RoundProblem, work: Work): boolean => work.kind === 'break' || problem.frozen.some((one) => isSame(one.work, work));

/** The people with this one in the place of each of them in turn. */
const insteadOf = ({ personIds }: Assignment, id: PersonId): readonly (readonly PersonId[])[] =>
  personIds.map((gone) => personIds.map((one) => (one === gone ? id : one)).sort());

interface Trying {
  readonly problem: RoundProblem;
  readonly plan: RoundPlan;
  readonly work: Work;
  readonly personIds: readonly PersonId[];
  readonly options: AnswerOptions;
}
type Tried = Omit<Alternative, 'costs'> & { readonly levels: Levels };

function alternative({ problem, plan, work, personIds, options }: Trying): Tried | undefined {
  const wanted = pinned(problem, { work, personIds });
  if (!validateRounds(wanted).ok) return undefined;
  const found = answered(wanted, plan, options).plan;
  const placed = assignmentOf(found, work);
  return placed && { personIds, startsAt: placed.startsAt, levels: found.levels };
}

function bestOfEach(tried: readonly Tried[], problem: RoundProblem): readonly Tried[] {
  const order = [...tried].sort((one, other) => (isBetter(one.levels, other.levels, problem) ? -1 : isBetter(other.levels, one.levels, problem) ? 1 : 0));
  return order.slice(0, BEST);
}

/** The reason that a plan made now gives, where it agrees. */
function reasonOf(problem: RoundProblem, { work, personIds }: Assignment, now?: Assignment): AssignmentReason['code'] {
  if (work.kind === 'break') return 'own-break';
  if (problem.frozen.some((one) => isSame(one.work, work))) return 'frozen';
  if (problem.pins.some((pin) => isSame(pin.work, work) && pin.personIds !== undefined)) return 'pinned';
  const skill = askedOf(problem, work)?.skill;
  const able = problem.people.filter(({ skills }) => skill === undefined || skills.includes(skill));
  if (able.length <= personIds.length) return 'only-one-able';
  const agrees = now?.personIds.length === personIds.length && personIds.every((id) => now.personIds.includes(id));
  return agrees && now.reason.code === 'nearest' ? 'nearest' : 'evens-load';
}
