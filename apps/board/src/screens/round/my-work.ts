import type { Assignment, PersonOnShift, PitView, TaskView, YardState } from '@stokehold/domain/contract';

/** One thing that waits for a person, in the order in which the plan has it. */
export type MyWork =
  | { readonly kind: 'check'; readonly view: PitView; readonly atMs: number }
  | { readonly kind: 'task'; readonly task: TaskView; readonly atMs: number }
  | { readonly kind: 'break'; readonly breakId: string; readonly atMs: number };

function workOf(assignment: Assignment, state: YardState): MyWork | undefined {
  const { work } = assignment;
  const atMs = Date.parse(assignment.startsAt);
  if (work.kind === 'check') {
    const view = state.pits.find((one) => one.pit.id === work.pitId);
    return view && { kind: 'check', view, atMs };
  }
  if (work.kind === 'task') {
    const task = state.tasks.find((one) => one.id === work.taskId);
    return task && task.doneAt === null ? { kind: 'task', task, atMs } : undefined;
  }
  return { kind: 'break', breakId: work.breakId, atMs };
}

/** What the plan has for a person, soonest first. */
export function myWork(state: YardState, personId: string): readonly MyWork[] {
  return (state.plan?.assignments ?? [])
    .filter((assignment) => (assignment.people as readonly string[]).includes(personId))
    .map((assignment) => workOf(assignment, state))
    .filter((work) => work !== undefined)
    .sort((a, b) => a.atMs - b.atMs);
}

/** Tonight's fires, the one due first on top; a fire that nothing is known of comes before all. */
export const firesByDue = (state: YardState): readonly PitView[] =>
  state.pits
    .filter((view) => view.tonight !== null)
    .sort((a, b) => Date.parse(a.due?.dueAt ?? a.tonight?.lightAt ?? '') - Date.parse(b.due?.dueAt ?? b.tonight?.lightAt ?? ''));

/**
 * The fire to show: the one chosen by hand; else the next of this person's own; else whichever falls due first.
 * `justDone`: fires whose record is on its way, so that the page does not ask for them again.
 */
export function nextFire(state: YardState, personId: string, chosen: string | undefined, justDone: ReadonlySet<string>): PitView | undefined {
  const mine = myWork(state, personId).flatMap((work) => (work.kind === 'check' ? [work.view] : []));
  const wanted = state.pits.find((view) => view.pit.id === chosen && view.tonight !== null);
  return wanted ?? [...mine, ...firesByDue(state)].find((view) => !justDone.has(view.pit.id));
}

/** Metres from one place on the yard plan to another, as the crow flies. */
export const walkM = (from: { readonly xM: number; readonly yM: number }, to: { readonly xM: number; readonly yM: number }): number =>
  Math.hypot(to.xM - from.xM, to.yM - from.yM);

/** The fire at which this person was last seen; undefined when they recorded none lately. */
export function lastPlace(state: YardState, personId: string): PitView | undefined {
  const seen = state.pits.flatMap((view) => view.checks.filter((check) => check.personId === personId).map((check) => ({ view, at: Date.parse(check.seenAt) })));
  return seen.sort((a, b) => b.at - a.at)[0]?.view;
}

/** This person on the running shift, if they are on it. */
export const meOnShift = (state: YardState, personId: string): PersonOnShift | undefined =>
  state.shift?.people.find((person) => person.personId === personId);
