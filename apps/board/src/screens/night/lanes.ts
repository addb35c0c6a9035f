import { fromIso, later, MINUTE_S, type EpochS, type PersonId, type PitId } from '@stokehold/domain/quantity';
import type { Assignment, Band, CookView, PitView, Work, YardState } from '@stokehold/domain/contract';

// The night as lanes: one for each person, one for each pit. Instants only; where they lie on the screen is the drawing's business.

export interface Span {
  readonly from: EpochS;
  readonly until: EpochS;
}
/** Something at one moment: a check seen or planned, a task. `lateS` is how long after it was due. */
export interface Mark {
  readonly kind: 'check' | 'task';
  readonly at: EpochS;
  readonly until: EpochS;
  readonly past: boolean;
  readonly lateS: number;
  readonly pastLatest: boolean;
  readonly pitId: PitId | null;
  readonly taskId: string | null;
  /** The work of the plan, where it is still to come. */
  readonly work: Work | null;
  readonly pinned: boolean;
}
export interface BreakSpan extends Span {
  readonly id: string;
  readonly state: 'planned' | 'window' | 'begun' | 'ended';
}
export interface PersonLane {
  readonly personId: PersonId;
  readonly name: string;
  readonly shift: Span;
  readonly presence: 'here' | 'late' | 'away' | 'not-yet' | 'gone-home';
  /** When they are not there although they should be. */
  readonly missing: Span | null;
  readonly breaks: readonly BreakSpan[];
  readonly marks: readonly Mark[];
}
export interface CookSpan extends Span {
  readonly cook: CookView;
  /** The row inside the lane, 0 at the top: cooks that lie there together do not cover each other. */
  readonly row: number;
  /** Neither off nor with a time to come off: drawn open to the right. */
  readonly open: boolean;
  readonly pieces: number;
}
export interface PitLane {
  readonly pitId: PitId;
  readonly name: string;
  readonly fireEnd: 'left' | 'right';
  readonly band: Band;
  readonly burns: Span;
  readonly marks: readonly Mark[];
  /** From when the next check may be made until it must have been made. */
  readonly window: (Span & { readonly dueAt: EpochS }) | null;
  readonly temps: readonly { readonly at: EpochS; readonly tempC: number }[];
  readonly cooks: readonly CookSpan[];
  readonly cookRows: number;
}

/** What is further from the end of the shift than this is another night's business. */
const REACH_S = 8 * 3600;

/** From the earlier of shift and first fire until the later of shift, last cook and the next service: what the picture spans. */
export function spanOf(state: YardState): Span | undefined {
  const { shift } = state;
  if (!shift) return undefined;
  const starts = [fromIso(shift.startsAt), ...shift.pits.map(({ lightAt }) => fromIso(lightAt))];
  const end = fromIso(shift.endsAt);
  const near = (at: EpochS) => at <= later(end, REACH_S) && at > Math.min(...starts);
  const services = state.services.map(({ readyBy }) => fromIso(readyBy)).filter(near);
  const cooks = state.cooks.flatMap(({ lies, comesOffAt }) => (lies.length > 0 && comesOffAt !== null ? [fromIso(comesOffAt)] : [])).filter(near);
  const margin = 10 * MINUTE_S;
  return { from: later(least(starts), -margin), until: later(greatest([end, ...services, ...cooks]), margin) };
}
const least = (times: readonly EpochS[]) => times.reduce((a, b) => (b < a ? b : a));
const greatest = (times: readonly EpochS[]) => times.reduce((a, b) => (b > a ? b : a));

/** The crew of the shift, in the order in which they come. */
export function personLanes(state: YardState, now: EpochS): readonly PersonLane[] {
  const people = [...(state.shift?.people ?? [])].sort((a, b) => a.startsAt.localeCompare(b.startsAt) || a.name.localeCompare(b.name));
  return people.map((person) => {
    const shift = { from: fromIso(person.startsAt), until: fromIso(person.endsAt) };
    const until = person.presenceUntil === null ? shift.until : fromIso(person.presenceUntil);
    const absent = person.presence === 'late' || person.presence === 'away';
    const planned = plannedMarks(state, ({ people: whose }) => whose.includes(person.personId));
    const seen = state.pits.flatMap(seenMarks((check) => check.personId === person.personId));
    const finished = state.tasks.filter(({ doneBy }) => doneBy === person.personId).map(taskDone);
    return {
      personId: person.personId,
      name: person.name,
      shift,
      presence: person.presence,
      missing: absent ? { from: person.presence === 'late' ? shift.from : now, until } : null,
      breaks: person.breaks.map(breakSpan),
      marks: [...seen, ...finished, ...planned].sort((a, b) => a.at - b.at),
    };
  });
}

type Rest = NonNullable<YardState['shift']>['people'][number]['breaks'][number];
function breakSpan(rest: Rest): BreakSpan {
  const begin = rest.beganAt ?? rest.plannedAt;
  if (begin === null) {
    return { id: rest.id, state: 'window', from: fromIso(rest.earliestAt), until: later(fromIso(rest.latestAt), rest.lengthS) };
  }
  const from = fromIso(begin);
  const state = rest.beganAt === null ? 'planned' : rest.endedAt === null ? 'begun' : 'ended';
  return { id: rest.id, state, from, until: rest.endedAt === null ? later(from, rest.lengthS) : fromIso(rest.endedAt) };
}

function plannedMarks(state: YardState, mine: (assignment: Assignment) => boolean): readonly Mark[] {
  return (state.plan?.assignments ?? []).filter(mine).flatMap((assignment): Mark[] => {
    const { work } = assignment;
    if (work.kind === 'break') return [];
    const task = work.kind === 'task' ? state.tasks.find(({ id }) => id === work.taskId) : undefined;
    if (task?.doneAt) return [];
    return [{
      kind: work.kind, past: false, at: fromIso(assignment.startsAt), until: fromIso(assignment.endsAt),
      lateS: assignment.lateS, pastLatest: assignment.pastLatestS > 0,
      pitId: work.kind === 'check' ? work.pitId : (task?.pitId ?? null), taskId: work.kind === 'task' ? work.taskId : null, work, pinned: assignment.pinned,
    }];
  });
}

type Look = PitView['checks'][number];
const seenMarks = (mine: (check: Look) => boolean) => ({ pit, checks }: Pick<PitView, 'pit' | 'checks'>): Mark[] =>
  checks.filter(mine).map((check) => {
    const at = fromIso(check.seenAt);
    const lateS = check.wasDueAt === null ? 0 : Math.max(0, at - fromIso(check.wasDueAt));
    return { kind: 'check', past: true, at, until: at, lateS, pastLatest: false, pitId: pit.id, taskId: null, work: null, pinned: false };
  });

type DoneTask = YardState['tasks'][number];
function taskDone(task: DoneTask): Mark {
  const at = fromIso(task.doneAt ?? task.dueAt);
  return { kind: 'task', past: true, at, until: at, lateS: Math.max(0, at - fromIso(task.latestAt)), pastLatest: false, pitId: task.pitId, taskId: task.id, work: null, pinned: false };
}

/** The pits that burn tonight, in the order in which they are lit. */
export function pitLanes(state: YardState, span: Span): readonly PitLane[] {
  const burning = (state.shift?.pits ?? []).map((lit) => ({ lit, view: state.pits.find(({ pit }) => pit.id === lit.pitId) }));
  return burning
    .sort((a, b) => a.lit.lightAt.localeCompare(b.lit.lightAt) || (a.view?.pit.name ?? '').localeCompare(b.view?.pit.name ?? ''))
    .flatMap(({ lit, view }) => (view ? [pitLane(state, view, lit, span)] : []));
}

function pitLane(state: YardState, view: PitView, lit: { band: Band; lightAt: string }, span: Span): PitLane {
  const { pit, due } = view;
  const planned = plannedMarks(state, ({ work }) => work.kind === 'check' && work.pitId === pit.id);
  const cooks = inRows(state.cooks.flatMap((cook) => cookSpan(cook, pit.id, span) ?? []));
  return {
    pitId: pit.id,
    name: pit.name,
    fireEnd: pit.fireEnd,
    band: lit.band,
    burns: { from: fromIso(lit.lightAt), until: state.shift ? fromIso(state.shift.endsAt) : span.until },
    marks: [...seenMarks(() => true)(view), ...planned].sort((a, b) => a.at - b.at),
    window: due && { from: fromIso(due.earliestAt), dueAt: fromIso(due.dueAt), until: fromIso(due.latestSafeAt) },
    temps: view.past.map(({ at, tempC }) => ({ at: fromIso(at), tempC })),
    cooks,
    cookRows: Math.max(0, ...cooks.map(({ row }) => row + 1)),
  };
}

/** When a cook lies on this pit: from going on until it comes off; a planned one that lies nowhere yet is not drawn. */
function cookSpan(cook: CookView, pitId: PitId, span: Span): Omit<CookSpan, 'row'> | undefined {
  const here = cook.lies.filter((lie) => lie.pitId === pitId);
  if (here.length === 0 || cook.onAt === null) return undefined;
  const end = cook.offAt ?? cook.comesOffAt;
  const until = end === null ? span.until : fromIso(end);
  const from = fromIso(cook.onAt);
  if (until <= span.from || from >= span.until) return undefined;
  return { cook, from, until, open: end === null, pieces: here.reduce((sum, { pieces }) => sum + pieces, 0) };
}

/** Each span into the first row that is free by then. */
export function inRows<S extends Span>(spans: readonly S[]): readonly (S & { readonly row: number })[] {
  const freeAt: number[] = [];
  return [...spans].sort((a, b) => a.from - b.from || b.until - a.until).map((span) => {
    const found = freeAt.findIndex((at) => at <= span.from);
    const row = found < 0 ? freeAt.length : found;
    freeAt[row] = span.until;
    return { ...span, row };
  });
}

/** A pit that has not reached its band by then is late, not starting up: bed and heavy steel together. Common practice, no source. */
const START_UP_S = 135 * MINUTE_S;
type Measured = Pick<PitLane, 'temps' | 'band' | 'burns'>;

/** The readings that count against the band: from when it was first reached, or should have been. */
function counted({ temps, band, burns }: Measured): PitLane['temps'] {
  const reached = temps.find(({ at, tempC }) => at >= burns.from && tempC >= band.lowC)?.at ?? Infinity;
  const from = Math.min(reached, burns.from + START_UP_S);
  return temps.filter(({ at }) => at >= from);
}

/** How much of the measured time the pit was inside its band, 0 to 1; undefined where nothing counts yet. */
export function bandKeptFrac(lane: Measured): number | undefined {
  const readings = counted(lane);
  if (readings.length === 0) return undefined;
  const inside = readings.filter(({ tempC }) => tempC >= lane.band.lowC && tempC <= lane.band.highC);
  return inside.length / readings.length;
}

/** Stretches of time in which the measured line stays on one side: in the band, below it, above it. */
export function bandStretches(lane: Measured): readonly (Span & { readonly side: 'in' | 'below' | 'above' })[] {
  const { lowC, highC } = lane.band;
  const sideOf = (tempC: number) => (tempC < lowC ? 'below' : tempC > highC ? 'above' : 'in');
  const stretches: { from: EpochS; until: EpochS; side: 'in' | 'below' | 'above' }[] = [];
  for (const { at, tempC } of counted(lane)) {
    const last = stretches.at(-1);
    const side = sideOf(tempC);
    if (last) last.until = at;
    if (last?.side !== side) stretches.push({ from: at, until: at, side });
  }
  return stretches.filter(({ from, until }) => until > from);
}
