import { decided, notBeforePromise, type Decisions } from './decided.js';
import type { Job } from './night.js';
import type { RoundPlan } from './plan.js';
import { workKey, type RoundPit, type RoundProblem, type RoundTask } from './problem.js';
import { keptSkeleton, type GapFracAt } from './skeleton.js';

const ableBy = (skill: string | undefined, { people }: Decisions) =>
  people.flatMap((person, i) => (skill === undefined || person.skills.includes(skill) ? [i] : []));

/** Starts of the checks of a plan by their work's key, s from `from`. */
export const shownStarts = ({ from }: RoundProblem, before: RoundPlan | undefined): ReadonlyMap<string, number> =>
  new Map((before?.assignments ?? []).flatMap(({ work, startsAt }) => (work.kind === 'check' ? [[workKey(work), startsAt - from] as const] : [])));

interface Laying {
  readonly fracAt: GapFracAt;
  readonly shownS: ReadonlyMap<string, number>;
}

/** The checks of a pit: its frozen ones, those that its skeleton lays, and as many more as a pin means. */
export function checksOf(known: Decisions, pit: RoundPit, p: number, { fracAt, shownS }: Laying): readonly Job[] {
  const { problem } = known;
  const firstNth = pit.firstNth ?? 1;
  const able = ableBy(pit.skill, known);
  const job = (link: number, targetS: number, releaseS: number): Job => {
    const { frozenLengthS, ...facts } = decided(known, { kind: 'check', pitId: pit.id, nth: firstNth + link }, able);
    return {
      kind: 'check', place: problem.places.indexOf(pit.place), lengthS: frozenLengthS ?? pit.checkS, targetS, releaseS: facts.fixedS ?? releaseS,
      latestS: Infinity, hardLatestS: Infinity, weight: pit.weight, people: 1, pit: p, link, unpleasant: false, ...facts,
    };
  };
  const begun = problem.frozen.filter(({ work }) => work.kind === 'check' && work.pitId === pit.id).map(({ startsAt }) => startsAt - problem.from).sort((a, b) => a - b);
  const fromNth = firstNth + begun.length;
  const promisedS = startsFrom((key) => startIn(problem, known.promises.get(key)), pit, fromNth);
  const laid = keptSkeleton(problem, pit, { lastStartS: begun.at(-1), promisedS, shownS: startsFrom((key) => shownS.get(key), pit, fromNth), fracAt });
  const wanted = Math.max(0, ...problem.pins.map(({ work }) => (work.kind === 'check' && work.pitId === pit.id ? work.nth - firstNth + 1 : 0)));
  const jobs = [...begun.map((startS, i) => job(i, startS, startS)), ...laid.map(({ targetS, releaseS }, i) => job(begun.length + i, targetS, releaseS))];
  const lastS = jobs.at(-1)?.targetS ?? Math.max(0, pit.first.dueAt - problem.from);
  for (let i = jobs.length, n = 1; i < wanted; i++, n++) jobs.push(job(i, lastS + n * pit.gap.dueS, lastS + n * pit.gap.dueS));
  return jobs;
}

const startIn = ({ from }: RoundProblem, promise: RoundProblem['promises'][number] | undefined) => promise && promise.startsAt - from;

/** Starts of a pit's checks from the nth on, without a gap in their numbers. */
function startsFrom(startOf: (key: string) => number | undefined, { id: pitId }: RoundPit, fromNth: number): readonly number[] {
  const starts: number[] = [];
  for (let nth = fromNth, startS; (startS = startOf(workKey({ kind: 'check', pitId, nth }))) !== undefined; nth++) starts.push(startS);
  return starts;
}

/** The tasks of the night, as facts, pins and promises leave them. */
export const tasksOf = (known: Decisions, tasks: readonly RoundTask[]): readonly Job[] =>
  tasks.map((task) => {
    const { problem } = known;
    const { frozenLengthS, ...facts } = decided(known, { kind: 'task', taskId: task.id }, ableBy(task.skill, known));
    return {
      kind: 'task', place: problem.places.indexOf(task.place), lengthS: frozenLengthS ?? task.lengthS,
      releaseS: facts.fixedS ?? notBeforePromise(Math.max(0, task.earliestAt - problem.from), task.latestAt - problem.from, facts.promise),
      targetS: task.dueAt - problem.from, latestS: task.latestAt - problem.from, hardLatestS: Infinity,
      weight: task.weight ?? 1, people: facts.frozen ? facts.able.length : task.people, pit: -1, link: 0,
      unpleasant: task.unpleasant ?? false, ...facts,
    };
  });
