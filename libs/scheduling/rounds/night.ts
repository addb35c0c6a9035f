import type { PersonId } from '@stokehold/domain/quantity';
import { parameter, workKey, type RoundPerson, type RoundPit, type RoundProblem, type Work } from './problem.js';
import { keepUntilS, keptSkeleton } from './skeleton.js';

// The problem by index, sorted by id, in seconds from `from`: what the planner works on. The checker never sees it.

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
}

export const byId = <T extends { readonly id: string }>(a: T, b: T) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** The problem, ready to be planned. It has been validated. */
export function nightOf(problem: RoundProblem): Night {
  const sources = [...problem.people].sort(byId);
  const people = sources.map((person) => nightPerson(problem, person));
  const jobs: Job[] = [];
  const pits = [...problem.pits].sort(byId).map((pit, p): NightPit => {
    const own = checksOf(problem, pit, p, sources);
    const firstJob = jobs.length;
    jobs.push(...own);
    return {
      source: pit,
      keepS: keepUntilS(problem, pit),
      firstEarliestS: pit.first.earliestAt - problem.from,
      firstDueS: pit.first.dueAt - problem.from,
      firstLatestS: pit.first.latestSafeAt - problem.from,
      jobs: own.map((_, i) => firstJob + i),
    };
  });
  jobs.push(...tasksOf(problem, sources), ...sources.flatMap((person, i) => blocksOf(problem, person, i, sources)));
  const farthestS = problem.places.map((_, to) => Math.max(0, ...problem.walkS.map((row) => row[to]!)));
  return { problem, places: problem.places, walkS: problem.walkS, farthestS, people, pits, jobs, promiseS: parameter(problem, 'promiseS') };
}

function nightPerson(problem: RoundProblem, person: RoundPerson): NightPerson {
  return {
    id: person.id,
    readyS: Math.max(0, person.startsAt - problem.from, person.freeFrom - problem.from),
    endS: person.endsAt - problem.from,
    place: problem.places.indexOf(person.atPlace),
    shiftS: person.endsAt - person.startsAt,
    workedS: person.workedS ?? 0,
    unpleasantS: person.unpleasantS ?? 0,
  };
}

type Sources = readonly RoundPerson[];
const indexes = (ids: readonly PersonId[], sources: Sources) => ids.map((id) => sources.findIndex((person) => person.id === id)).sort((a, b) => a - b);

/** What facts, pins and promises say of a piece of work. */
function decided(problem: RoundProblem, work: Work, able: readonly number[], sources: Sources) {
  const key = workKey(work);
  const frozen = problem.frozen.find((one) => workKey(one.work) === key);
  const pin = problem.pins.find((one) => workKey(one.work) === key);
  const promise = problem.promises.find((one) => workKey(one.work) === key);
  return {
    key,
    work,
    able: frozen ? indexes(frozen.personIds, sources) : pin?.personIds ? indexes(pin.personIds, sources) : able,
    fixedS: frozen ? frozen.startsAt - problem.from : pin?.startsAt === undefined ? undefined : pin.startsAt - problem.from,
    frozenLengthS: frozen && frozen.endsAt - frozen.startsAt,
    frozen: frozen !== undefined,
    pinned: pin !== undefined,
    promise: promise && {
      people: indexes(promise.personIds, sources),
      startS: promise.startsAt - problem.from,
      units: promiseUnits(promise.startsAt - problem.from),
    },
  };
}

/** Half units that another person costs: 10 within half an hour, 4 within two hours, 2 later. */
const promiseUnits = (inS: number) => (inS <= 1800 ? 10 : inS <= 7200 ? 4 : 2);

const ableBy = (skill: string | undefined, sources: Sources) =>
  sources.flatMap((person, i) => (skill === undefined || person.skills.includes(skill) ? [i] : []));

function checksOf(problem: RoundProblem, pit: RoundPit, p: number, sources: Sources): readonly Job[] {
  const firstNth = pit.firstNth ?? 1;
  const able = ableBy(pit.skill, sources);
  const job = (link: number, targetS: number, releaseS: number): Job => {
    const { frozenLengthS, ...facts } = decided(problem, { kind: 'check', pitId: pit.id, nth: firstNth + link }, able, sources);
    return {
      kind: 'check', place: problem.places.indexOf(pit.place), lengthS: frozenLengthS ?? pit.checkS, targetS, releaseS: facts.fixedS ?? releaseS,
      latestS: Infinity, hardLatestS: Infinity, weight: pit.weight, people: 1, pit: p, link, unpleasant: false, ...facts,
    };
  };
  const begun = problem.frozen.filter(({ work }) => work.kind === 'check' && work.pitId === pit.id).map(({ startsAt }) => startsAt - problem.from).sort((a, b) => a - b);
  const laid = keptSkeleton(problem, pit, begun.at(-1), promisedStarts(problem, pit, firstNth + begun.length));
  const wanted = Math.max(0, ...problem.pins.map(({ work }) => (work.kind === 'check' && work.pitId === pit.id ? work.nth - firstNth + 1 : 0)));
  const jobs = [...begun.map((startS, i) => job(i, startS, startS)), ...laid.map(({ targetS, releaseS }, i) => job(begun.length + i, targetS, releaseS))];
  const lastS = jobs.at(-1)?.targetS ?? Math.max(0, pit.first.dueAt - problem.from);
  for (let i = jobs.length, n = 1; i < wanted; i++, n++) jobs.push(job(i, lastS + n * pit.gap.dueS, lastS + n * pit.gap.dueS));
  return jobs;
}

/** Promised starts of a pit's checks from the nth on, without a gap in their numbers. */
function promisedStarts(problem: RoundProblem, pit: RoundPit, fromNth: number): readonly number[] {
  const byNth = new Map(problem.promises.flatMap(({ work, startsAt }) => (work.kind === 'check' && work.pitId === pit.id ? [[work.nth, startsAt - problem.from] as const] : [])));
  const starts: number[] = [];
  for (let nth = fromNth; byNth.has(nth); nth++) starts.push(byNth.get(nth)!);
  return starts;
}

/** Work that may begin but was promised for later waits for its promise. */
const notBeforePromise = (releaseS: number, latestS: number, promise: Job['promise']) => (promise && promise.startS <= latestS ? Math.max(releaseS, promise.startS) : releaseS);

const tasksOf = (problem: RoundProblem, sources: Sources): readonly Job[] =>
  [...problem.tasks].sort(byId).map((task) => {
    const { frozenLengthS, ...facts } = decided(problem, { kind: 'task', taskId: task.id }, ableBy(task.skill, sources), sources);
    return {
      kind: 'task', place: problem.places.indexOf(task.place), lengthS: frozenLengthS ?? task.lengthS,
      releaseS: facts.fixedS ?? notBeforePromise(Math.max(0, task.earliestAt - problem.from), task.latestAt - problem.from, facts.promise), targetS: task.dueAt - problem.from, latestS: task.latestAt - problem.from, hardLatestS: Infinity,
      weight: task.weight ?? 1, people: facts.frozen ? facts.able.length : task.people, pit: -1, link: 0,
      unpleasant: task.unpleasant ?? false, ...facts,
    };
  });

function blocksOf(problem: RoundProblem, person: RoundPerson, index: number, sources: Sources): readonly Job[] {
  const absences = absencesOf(problem, person, index);
  const breaks = breaksOf(problem, person, index, sources);
  const busy = [
    ...absences.map((job) => [job.releaseS, job.releaseS + job.lengthS] as const),
    ...breaks.flatMap((job) => (job.frozen ? [[job.releaseS, job.releaseS + job.lengthS] as const] : [])),
    ...problem.frozen.flatMap(({ work, personIds, startsAt, endsAt }) =>
      work.kind !== 'break' && personIds.includes(person.id) ? [[startsAt - problem.from, endsAt - problem.from] as const] : []),
  ].sort((a, b) => a[0] - b[0]);
  let freeS = nightPerson(problem, person).readyS;
  const bounded = breaks.map((job) => {
    if (job.frozen) return job;
    let soonestS = Math.max(freeS, job.releaseS);
    for (const [from, until] of busy) if (soonestS < until && from < soonestS + job.lengthS) soonestS = until;
    freeS = soonestS + job.lengthS;
    return { ...job, hardLatestS: Math.max(job.latestS, soonestS) };
  });
  return [...bounded, ...absences];
}

/** Breaks still to be kept; one that began is a fact, one that ended before now is history. */
function breaksOf(problem: RoundProblem, person: RoundPerson, index: number, sources: Sources): readonly Job[] {
  if (!isThere(problem, person)) return [];
  const open = person.breaks.filter((rest) => rest.startedAt === undefined || rest.startedAt + rest.lengthS > problem.from).sort((a, b) => a.latestAt - b.latestAt || byId(a, b));
  return open.map((rest, i) => {
    const { frozenLengthS, ...facts } = decided(problem, { kind: 'break', breakId: rest.id }, [index], sources);
    const fixedS = rest.startedAt === undefined ? facts.fixedS : rest.startedAt - problem.from;
    const windowS = rest.latestAt - rest.earliestAt;
    const turn = (index + i) % sources.length;
    const targetS = rest.earliestAt - problem.from + Math.floor((windowS * (2 * turn + 1)) / (2 * sources.length));
    return {
      kind: 'break', place: -1, lengthS: frozenLengthS ?? rest.lengthS, releaseS: fixedS ?? notBeforePromise(Math.max(0, rest.earliestAt - problem.from), rest.latestAt - problem.from, facts.promise), targetS,
      latestS: rest.latestAt - problem.from, hardLatestS: Infinity, weight: 1, people: 1, pit: -1, link: i, unpleasant: false, ...facts, fixedS,
      frozen: facts.frozen || rest.startedAt !== undefined,
    };
  });
}

/** Whether somebody is there at all from now on; who has gone home or is ill owes no break. */
function isThere(problem: RoundProblem, person: RoundPerson): boolean {
  let atS = Math.max(problem.from, person.startsAt);
  for (const absence of [...(person.absent ?? [])].sort((a, b) => a.from - b.from)) if (absence.from <= atS) atS = Math.max(atS, absence.until);
  return atS < person.endsAt;
}

/** Absences as blocks without work; joined where they meet, and cut where somebody works although absent. */
function absencesOf(problem: RoundProblem, person: RoundPerson, index: number): readonly Job[] {
  const facts = [
    ...problem.frozen.filter(({ personIds }) => personIds.includes(person.id)).map(({ startsAt, endsAt }) => ({ from: startsAt as number, until: endsAt as number })),
    ...person.breaks.flatMap((rest) => (rest.startedAt === undefined ? [] : [{ from: rest.startedAt as number, until: rest.startedAt + rest.lengthS }])),
  ];
  let blocks = (person.absent ?? []).map(({ from, until }) => ({ from: from as number, until: until as number }));
  for (const fact of facts) {
    blocks = blocks.flatMap((block) => [
      { from: block.from, until: Math.min(block.until, fact.from) },
      { from: Math.max(block.from, fact.until), until: block.until },
    ].filter((part) => part.from < part.until));
  }
  const joined: { from: number; until: number }[] = [];
  for (const block of blocks.filter(({ from, until }) => from < until && until > problem.from).sort((a, b) => a.from - b.from)) {
    const last = joined.at(-1);
    if (last && block.from <= last.until) last.until = Math.max(last.until, block.until);
    else joined.push({ ...block });
  }
  return joined.map(({ from, until }, i) => ({
    kind: 'absence', key: `absence/${person.id}/${i}`, work: undefined, place: -1, lengthS: until - from, releaseS: from - problem.from,
    targetS: from - problem.from, latestS: Infinity, hardLatestS: Infinity, weight: 1, people: 1, able: [index], fixedS: from - problem.from, frozen: true, pinned: false,
    pit: -1, link: i, unpleasant: false, promise: undefined,
  }));
}
