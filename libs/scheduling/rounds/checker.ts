import type { PersonId } from '@stokehold/domain/quantity';
import { recountLevels } from './checker-levels.js';
import { handovers, stretches } from './checker-shifts.js';
import { windowsOf } from './checker-windows.js';
import type { Assignment, Levels, RoundPlan } from './plan.js';
import { workKey, type RoundPerson, type RoundProblem, type Work } from './problem.js';

/** A rule that a plan breaks. `where` is the work's key, the person, or the level. */
export interface Violation {
  readonly code:
    | 'unknown-work' | 'unknown-person' | 'work-twice' | 'work-missing' | 'check-missing' | 'unplaced-without-reason'
    | 'wrong-number-of-people' | 'wrong-length' | 'two-things-at-once' | 'cannot-walk-there' | 'outside-shift' | 'absent'
    | 'skill' | 'pin' | 'frozen-changed' | 'before-earliest' | 'break-owner' | 'break-outside-window' | 'stretch-too-long'
    | 'handover-without-owner' | 'checks-out-of-order' | 'checks-overlap' | 'wrong-window' | 'wrong-level' | 'below-bound';
  readonly where: string;
  readonly personId?: PersonId;
}

/**
 * Every rule that a plan breaks, from nothing: it shares the problem and plan types with the planner and none of its code,
 * so it also judges plans made by hand. Lateness is no violation; lateness not owned up to is. An empty list means the plan
 * may be shown. Rules: cover, one thing at a time, walking, shifts, breaks, skills, pins, facts, pairs, chains, windows,
 * stretches, hand-overs, levels, bound. Held to rounds/checker.test.ts, where each rule is made to bite.
 */
export function checkRounds(problem: RoundProblem, plan: RoundPlan): readonly Violation[] {
  const strangers = [...plan.assignments, ...plan.unplaced].filter(({ work }) => !isKnown(problem, work)).map(({ work }): Violation => ({ code: 'unknown-work', where: workKey(work) }));
  if (strangers.length > 0) return strangers;
  const known = plan.assignments;
  const isFact = factsOf(problem);
  const windows = windowsOf(problem, plan);
  return [
    ...cover(problem, plan, windows),
    ...known.filter(({ work }) => !isFact(work)).flatMap((assignment) => [...ofWork(problem, assignment), ...decisions(problem, assignment)]),
    ...problem.people.flatMap((person) => ofPerson(problem, person, known, isFact)),
    ...facts(problem, known),
    ...problem.pits.flatMap((pit) => chain(known.filter(({ work }) => work.kind === 'check' && work.pitId === pit.id))),
    ...printed(plan, windows),
    ...stretches(problem, plan),
    ...handovers(problem, plan),
    ...levels(problem, plan, windows),
  ];
}

type IsFact = (work: Work) => boolean;
type Windows = ReturnType<typeof windowsOf>;

function isKnown({ pits, tasks, people }: RoundProblem, work: Work): boolean {
  if (work.kind === 'check') return pits.some((pit) => pit.id === work.pitId && work.nth >= (pit.firstNth ?? 1));
  return work.kind === 'task' ? tasks.some((task) => task.id === work.taskId) : people.some((person) => person.breaks.some((rest) => rest.id === work.breakId));
}

/** Which work is frozen or a begun break. */
function factsOf({ frozen, people }: RoundProblem): IsFact {
  const begun = people.flatMap(({ breaks }) => breaks.flatMap(({ id, startedAt }) => (startedAt === undefined ? [] : [`break/${id}`])));
  const keys = new Set([...frozen.map(({ work }) => workKey(work)), ...begun]);
  return (work) => keys.has(workKey(work));
}

/** Rule 1: each piece once, planned or listed with a reason; each fire looked after until the end or owned up to. */
function cover(problem: RoundProblem, plan: RoundPlan, { tails }: Windows): readonly Violation[] {
  const found: Violation[] = [];
  const seen = new Set<string>();
  for (const { work } of [...plan.assignments, ...plan.unplaced]) {
    const where = workKey(work);
    if (seen.has(where)) found.push({ code: 'work-twice', where });
    seen.add(where);
  }
  const owed = [...problem.tasks.map((task) => `task/${task.id}`), ...problem.people.flatMap((person) => breaksOwed(problem, person).map((id) => `break/${id}`))];
  found.push(...owed.filter((where) => !seen.has(where)).map((where): Violation => ({ code: 'work-missing', where })));
  for (const { work, reason } of plan.unplaced) {
    if (reason.code === undefined || reason.relax === undefined) found.push({ code: 'unplaced-without-reason', where: workKey(work) });
  }
  for (const { pit, endDueAt, endLatestAt, keepUntil } of tails) {
    const listed = plan.unplaced.some(({ work }) => work.kind === 'check' && work.pitId === pit.id);
    const owed = endDueAt + pit.checkS <= keepUntil || endLatestAt < keepUntil;
    if (owed && !listed) found.push({ code: 'check-missing', where: pit.id });
  }
  return found;
}

/** Breaks still to come or under way of somebody who is there at all. */
function breaksOwed(problem: RoundProblem, person: RoundPerson): readonly string[] {
  const arrives = Math.max(problem.from, person.startsAt);
  let there = arrives;
  const away = [...(person.absent ?? [])].sort((a, b) => a.from - b.from);
  for (const { from, until } of away) if (from <= there && until > there) there = until;
  if (there >= person.endsAt) return [];
  return person.breaks.filter(({ startedAt, lengthS }) => startedAt === undefined || startedAt + lengthS > problem.from).map(({ id }) => id);
}

/** What the work itself asks for unless it is a fact: how many people, of which skill, how long, not before its time. Rules 1, 4, 5, 6. */
function ofWork(problem: RoundProblem, { work, personIds, startsAt, endsAt }: Assignment): readonly Violation[] {
  const where = workKey(work);
  const found: Violation[] = [];
  const needs = { people: 1, lengthS: 0, skill: undefined as string | undefined, earliestAt: problem.from as number };
  if (work.kind === 'check') {
    const pit = problem.pits.find((one) => one.id === work.pitId)!;
    Object.assign(needs, { lengthS: pit.checkS, skill: pit.skill });
  } else if (work.kind === 'task') {
    const task = problem.tasks.find((one) => one.id === work.taskId)!;
    Object.assign(needs, { people: task.people, lengthS: task.lengthS, skill: task.skill, earliestAt: Math.max(task.earliestAt, problem.from) });
  } else {
    const owner = problem.people.find((person) => person.breaks.some((rest) => rest.id === work.breakId))!;
    const rest = owner.breaks.find((one) => one.id === work.breakId)!;
    Object.assign(needs, { lengthS: rest.lengthS, earliestAt: Math.max(rest.earliestAt, problem.from) });
    if (personIds[0] !== owner.id) found.push({ code: 'break-owner', where });
  }
  if (personIds.length !== needs.people || new Set(personIds).size !== personIds.length) found.push({ code: 'wrong-number-of-people', where });
  if (endsAt - startsAt !== needs.lengthS) found.push({ code: 'wrong-length', where });
  if (startsAt < needs.earliestAt) found.push({ code: work.kind === 'break' ? 'break-outside-window' : 'before-earliest', where });
  for (const id of personIds) {
    const person = problem.people.find((one) => one.id === id);
    if (!person) found.push({ code: 'unknown-person', where });
    else if (needs.skill !== undefined && !person.skills.includes(needs.skill)) found.push({ code: 'skill', where, personId: id });
  }
  return found;
}

/** Rule 5: somebody's pin is kept, unless facts came first. */
function decisions(problem: RoundProblem, { work, personIds, startsAt }: Assignment): readonly Violation[] {
  if (problem.pins.length === 0) return [];
  const key = workKey(work);
  const pin = problem.pins.find((one) => workKey(one.work) === key);
  const people = pin?.personIds === undefined || (pin.personIds.length === personIds.length && pin.personIds.every((id) => personIds.includes(id)));
  return people && (pin?.startsAt === undefined || pin.startsAt === startsAt) ? [] : [{ code: 'pin', where: workKey(work) }];
}

/** Rule 5: frozen work and begun breaks stay to the second and the person. */
function facts(problem: RoundProblem, known: readonly Assignment[]): readonly Violation[] {
  const begun = problem.people.flatMap((person) =>
    person.breaks.flatMap(({ id, startedAt, lengthS }) =>
      startedAt !== undefined && breaksOwed(problem, person).includes(id)
        ? [{ work: { kind: 'break', breakId: id } as const, personIds: [person.id], startsAt: startedAt as number, endsAt: startedAt + lengthS }] : []));
  const frozen = problem.frozen.filter(({ work }) => !begun.some((rest) => workKey(rest.work) === workKey(work)));
  return [...frozen, ...begun].flatMap((fact): readonly Violation[] => {
    const planned = known.find(({ work }) => workKey(work) === workKey(fact.work));
    const same = planned && planned.startsAt === fact.startsAt && planned.endsAt === fact.endsAt && planned.personIds.length === fact.personIds.length && fact.personIds.every((id) => planned.personIds.includes(id));
    return same ? [] : [{ code: 'frozen-changed', where: workKey(fact.work) }];
  });
}

interface Block {
  readonly startsAt: number;
  readonly endsAt: number;
  readonly place: string | undefined;
  readonly fact: boolean;
  readonly where: string;
  readonly absence: boolean;
}

/** Rules 2, 3, 4: one person's night in order of time. */
function ofPerson(problem: RoundProblem, person: RoundPerson, known: readonly Assignment[], isFact: IsFact): readonly Violation[] {
  const found: Violation[] = [];
  const own = known.filter(({ personIds }) => personIds.includes(person.id));
  const blocks: Block[] = own.map(({ work, startsAt, endsAt }) => ({ startsAt, endsAt, place: placeOf(problem, work), fact: isFact(work), where: workKey(work), absence: false }));
  for (const { from, until } of person.absent ?? []) blocks.push({ startsAt: from, endsAt: until, place: undefined, fact: true, where: 'absence', absence: true });
  blocks.sort((a, b) => a.startsAt - b.startsAt || a.endsAt - b.endsAt);
  let freeAt: number = Math.max(problem.from, person.startsAt, person.freeFrom);
  let place = person.atPlace;
  let last: Block | undefined;
  for (const block of blocks) {
    const walkS = block.place === undefined ? 0 : problem.walkS[problem.places.indexOf(place)]![problem.places.indexOf(block.place)]!;
    const named = { where: block.fact && last && !last.fact ? last.where : block.where, personId: person.id };
    if (!(block.fact && (last?.fact ?? true))) {
      if (block.startsAt < freeAt) found.push({ code: last?.absence || block.absence ? 'absent' : last ? 'two-things-at-once' : 'outside-shift', ...named });
      else if (block.startsAt < freeAt + walkS) found.push({ code: 'cannot-walk-there', ...named });
    }
    if (!block.fact && block.endsAt > person.endsAt) found.push({ code: 'outside-shift', where: block.where, personId: person.id });
    if (block.endsAt > freeAt) freeAt = block.endsAt;
    if (block.place !== undefined) place = block.place;
    last = block;
  }
  return [...found, ...breakWindows(problem, person, own, isFact)];
}

const placeOf = (problem: RoundProblem, work: Work): string | undefined =>
  work.kind === 'check' ? problem.pits.find((pit) => pit.id === work.pitId)?.place : work.kind === 'task' ? problem.tasks.find((task) => task.id === work.taskId)?.place : undefined;

/** Rule 4: a break begins in its window, or at the first moment that facts leave when they have already broken it. */
function breakWindows(problem: RoundProblem, person: RoundPerson, own: readonly Assignment[], isFact: IsFact): readonly Violation[] {
  const taken = [
    ...(person.absent ?? []).map(({ from, until }) => [from, until] as const),
    ...problem.frozen.filter(({ personIds }) => personIds.includes(person.id)).map(({ startsAt, endsAt }) => [startsAt, endsAt] as const),
    ...person.breaks.flatMap(({ startedAt, lengthS }) => (startedAt === undefined ? [] : [[startedAt, startedAt + lengthS] as const])),
  ].sort((a, b) => a[0] - b[0]);
  let free: number = Math.max(problem.from, person.startsAt, person.freeFrom);
  const found: Violation[] = [];
  for (const rest of [...person.breaks].sort((a, b) => a.latestAt - b.latestAt || (a.id < b.id ? -1 : 1))) {
    const work: Work = { kind: 'break', breakId: rest.id };
    if (isFact(work)) continue;
    let soonest = Math.max(free, rest.earliestAt);
    for (const [from, until] of taken) if (soonest < until && from < soonest + rest.lengthS) soonest = until;
    free = soonest + rest.lengthS;
    const planned = own.find((assignment) => workKey(assignment.work) === workKey(work));
    const pinned = problem.pins.some((pin) => pin.startsAt !== undefined && workKey(pin.work) === workKey(work));
    if (planned && !pinned && planned.startsAt > Math.max(rest.latestAt, soonest)) found.push({ code: 'break-outside-window', where: workKey(work), personId: person.id });
  }
  return found;
}

/** Rule 7: the checks of one pit follow each other, none begun before the one before it ended. */
function chain(checks: readonly Assignment[]): readonly Violation[] {
  const nth = ({ work }: Assignment) => (work.kind === 'check' ? work.nth : 0);
  const inTime = [...checks].sort((a, b) => a.startsAt - b.startsAt || nth(a) - nth(b));
  return inTime.slice(1).flatMap((check, i): readonly Violation[] => {
    const before = inTime[i]!;
    const where = workKey(check.work);
    if (nth(check) <= nth(before)) return [{ code: 'checks-out-of-order', where }];
    return check.startsAt < before.endsAt ? [{ code: 'checks-overlap', where }] : [];
  });
}

/** Rules 7, 8: due, latest safe, slack, lateness and earliness as printed are those that follow from the real starts. */
function printed(plan: RoundPlan, { byKey }: Windows): readonly Violation[] {
  return plan.assignments.flatMap((assignment): readonly Violation[] => {
    const where = workKey(assignment.work);
    const window = byKey.get(where);
    if (!window) return [];
    const { startsAt } = assignment;
    const same =
      assignment.dueAt === window.dueAt && assignment.latestSafeAt === window.latestAt && assignment.slackS === window.latestAt - startsAt &&
      assignment.lateS === Math.max(0, startsAt - window.dueAt) && assignment.pastLatestS === Math.max(0, startsAt - window.latestAt) &&
      assignment.earlyS === Math.max(0, window.earliestAt - startsAt);
    return same ? [] : [{ code: 'wrong-window', where }];
  });
}

/** Rule 9: each level counted again is the planner's number, and none is better than the bound. */
function levels(problem: RoundProblem, plan: RoundPlan, windows: Windows): readonly Violation[] {
  const counted = recountLevels(problem, plan, windows);
  const wrong = (Object.keys(counted) as (keyof Levels)[]).filter((level) => counted[level] !== plan.levels[level]);
  const beaten = (['unsafeS', 'lateWeightedS'] as const).filter((level) => counted[level] < plan.bound[level]);
  return [...wrong.map((where): Violation => ({ code: 'wrong-level', where })), ...beaten.map((where): Violation => ({ code: 'below-bound', where }))];
}
