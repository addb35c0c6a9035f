import type { RoundPerson, RoundPit, RoundProblem, RoundTask, Work } from './problem.js';

// The order in which people, pits and tasks stand in the planner's tables: by what they are, then by what they are tied to,
// then by id. So names decide only between things that are alike in everything, and another name for a pit gives the
// same night under that name.

export interface NightOrder {
  readonly people: readonly RoundPerson[];
  readonly pits: readonly RoundPit[];
  readonly tasks: readonly RoundTask[];
}

export function nightOrder(problem: RoundProblem): NightOrder {
  const rankOf = ranksOf(webOf(problem));
  const inOrder = <T extends { readonly id: string }>(things: readonly T[], kind: Kind): readonly T[] =>
    [...things].sort((a, b) => rankOf(keyOf(kind, a.id)) - rankOf(keyOf(kind, b.id)) || (a.id < b.id ? -1 : 1));
  return { people: inOrder(problem.people, 'person'), pits: inOrder(problem.pits, 'pit'), tasks: inOrder(problem.tasks, 'task') };
}

type Kind = 'person' | 'pit' | 'task' | 'break' | 'place' | 'fact';
type Marks = readonly (string | number)[];

const keyOf = (kind: Kind, id: string | number) => `${kind} ${id}`;

/** A person, a pit, a task, a break, a place or a fact: what it is by itself, and what it is tied to, and how. */
interface Knot {
  readonly mark: string;
  readonly ties: { readonly to: Knot; readonly how: string | number }[];
}

const personMarks = ({ startsAt, endsAt, freeFrom, stretchS = 0, workedS = 0, unpleasantS = 0, skills, absent = [] }: RoundPerson): Marks =>
  [startsAt, endsAt, freeFrom, stretchS, workedS, unpleasantS, [...skills].sort().join(' '), ...absent.map(({ from, until }) => `${from} ${until}`).sort()];

const pitMarks = ({ weight, firstNth = 1, first, gap, checkS, skill = '', keepUntil }: RoundPit): Marks =>
  [first.dueAt, first.earliestAt, first.latestSafeAt, gap.dueS, gap.earliestS, gap.latestSafeS, weight, checkS, firstNth, skill, keepUntil ?? 0];

const taskMarks = ({ kind, lengthS, earliestAt, dueAt, latestAt, people, skill = '', weight = 1, unpleasant = false }: RoundTask): Marks =>
  [dueAt, earliestAt, latestAt, lengthS, people, kind, skill, weight, unpleasant ? 1 : 0];

/** The whole problem as knots that are tied both ways: everyone and everything to its place, the places by their walks, what is frozen, pinned and promised to its work and its people. */
function webOf(problem: RoundProblem): ReadonlyMap<string, Knot> {
  const web = new Map<string, Knot>();
  const knot = (key: string, marks: Marks): string => {
    web.set(key, { mark: `${key.slice(0, key.indexOf(' '))}|${marks.join('|')}`, ties: [] });
    return key;
  };
  const tie = (one: string, other: string, how: string | number = '') => {
    const [a, b] = [web.get(one), web.get(other)];
    if (!a || !b) return; // a promise of what is no longer there
    a.ties.push({ to: b, how });
    b.ties.push({ to: a, how });
  };
  const at = (key: string, place: string) => tie(key, keyOf('place', place));
  for (const place of problem.places) knot(keyOf('place', place), []);
  problem.places.forEach((from, i) => problem.places.forEach((to, j) => web.get(keyOf('place', from))!.ties.push({ to: web.get(keyOf('place', to))!, how: `${problem.walkS[i]![j]!} ${problem.walkS[j]![i]!}` })));
  for (const pit of problem.pits) at(knot(keyOf('pit', pit.id), pitMarks(pit)), pit.place);
  for (const task of problem.tasks) at(knot(keyOf('task', task.id), taskMarks(task)), task.place);
  for (const person of problem.people) {
    const key = knot(keyOf('person', person.id), personMarks(person));
    at(key, person.atPlace);
    for (const { id, lengthS, earliestAt, latestAt, startedAt = 0 } of person.breaks) tie(knot(keyOf('break', id), [lengthS, earliestAt, latestAt, startedAt]), key);
  }
  factsOf(problem).forEach(({ work, personIds, marks }, i) => {
    const key = knot(keyOf('fact', i), marks);
    tie(key, work.kind === 'check' ? keyOf('pit', work.pitId) : work.kind === 'task' ? keyOf('task', work.taskId) : keyOf('break', work.breakId));
    for (const id of personIds) tie(key, keyOf('person', id));
  });
  return web;
}

const nth = (work: Work) => (work.kind === 'check' ? work.nth : 0);

/** What is frozen, pinned and promised, by time and without names. */
const factsOf = ({ frozen, pins, promises }: RoundProblem) => [
  ...frozen.map(({ work, personIds, startsAt, endsAt }) => ({ work, personIds, marks: ['frozen', startsAt, endsAt, nth(work)] })),
  ...promises.map(({ work, personIds, startsAt }) => ({ work, personIds, marks: ['promise', startsAt, nth(work)] })),
  ...pins.map(({ work, personIds = [], startsAt = 0 }) => ({ work, personIds, marks: ['pin', startsAt, nth(work)] })),
];

/**
 * The rank of each knot: first by its own mark, then again and again by its rank and the ranks that it is tied to, until
 * nothing more is told apart.
 * Source: colour refinement, B. Weisfeiler and A. Leman, "The reduction of a graph to canonical form", 1968; from memory.
 */
function ranksOf(web: ReadonlyMap<string, Knot>): (key: string) => number {
  const knots = [...web.values()];
  let { ranks, kinds } = ranked(knots, ({ mark }) => mark);
  for (let before = 0; before < kinds; ) {
    before = kinds;
    const known = ranks;
    ({ ranks, kinds } = ranked(knots, (knot) => `${padded(known.get(knot)!)}|${knot.ties.map(({ to, how }) => `${known.get(to)!} ${how}`).sort().join('|')}`));
  }
  return (key) => ranks.get(web.get(key)!)!;
}

const padded = (rank: number) => String(rank).padStart(6, '0');

function ranked(knots: readonly Knot[], markOf: (knot: Knot) => string): { readonly ranks: ReadonlyMap<Knot, number>; readonly kinds: number } {
  const marks = knots.map(markOf);
  const rankOf = new Map([...new Set(marks)].sort().map((mark, rank) => [mark, rank]));
  return { ranks: new Map(knots.map((knot, i) => [knot, rankOf.get(marks[i]!)!])), kinds: rankOf.size };
}
