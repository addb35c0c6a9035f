import { workKey, type RoundPerson, type RoundPit, type RoundProblem, type RoundTask, type Work } from './problem.js';

// The order in which people, pits and tasks stand in the planner's tables: by what they are, then by id. So names decide
// only between things that are alike in everything, and another name for a pit gives the same night under that name.

export interface NightOrder {
  readonly people: readonly RoundPerson[];
  readonly pits: readonly RoundPit[];
  readonly tasks: readonly RoundTask[];
}

export function nightOrder(problem: RoundProblem): NightOrder {
  const whereabouts = new Map(problem.places.map((place, i) => [place, [...problem.walkS[i]!].sort((a, b) => a - b).join(' ')]));
  const facts = factsOf(problem);
  const workOf = (work: Work) => facts.ofWork.get(workKey(work)) ?? '';
  const breaks = (person: RoundPerson) => person.breaks.map(({ lengthS, earliestAt, latestAt, startedAt }) => [lengthS, earliestAt, latestAt, startedAt ?? 0].join(' ')).sort();
  const absences = (person: RoundPerson) => (person.absent ?? []).map(({ from, until }) => `${from} ${until}`).sort();
  return {
    people: inOrder(problem.people, (person) => [...personMarks(person), [...person.skills].sort().join(' '), whereabouts.get(person.atPlace) ?? '', ...breaks(person), ...absences(person), facts.ofPerson.get(person.id) ?? '']),
    pits: inOrder(problem.pits, (pit) => [...pitMarks(pit), whereabouts.get(pit.place) ?? '', facts.ofPit.get(pit.id) ?? '']),
    tasks: inOrder(problem.tasks, (task) => [...taskMarks(task), whereabouts.get(task.place) ?? '', workOf({ kind: 'task', taskId: task.id })]),
  };
}

type Marks = readonly (string | number)[];

const personMarks = ({ startsAt, endsAt, freeFrom, stretchS = 0, workedS = 0, unpleasantS = 0 }: RoundPerson): Marks => [startsAt, endsAt, freeFrom, stretchS, workedS, unpleasantS];

const pitMarks = ({ weight, firstNth = 1, first, gap, checkS, skill = '', keepUntil }: RoundPit): Marks =>
  [first.dueAt, first.earliestAt, first.latestSafeAt, gap.dueS, gap.earliestS, gap.latestSafeS, weight, checkS, firstNth, skill, keepUntil ?? 0];

const taskMarks = ({ kind, lengthS, earliestAt, dueAt, latestAt, people, skill = '', weight = 1, unpleasant = false }: RoundTask): Marks =>
  [dueAt, earliestAt, latestAt, lengthS, people, kind, skill, weight, unpleasant ? 1 : 0];

/** What is frozen, pinned and promised of each piece of work, pit and person, by time and without names. */
function factsOf({ frozen, pins, promises }: RoundProblem) {
  const ofWork = new Map<string, string[]>();
  const ofPit = new Map<string, string[]>();
  const ofPerson = new Map<string, string[]>();
  const add = (map: Map<string, string[]>, key: string, fact: string) => {
    const known = map.get(key);
    if (known) known.push(fact);
    else map.set(key, [fact]);
  };
  const note = (work: Work, personIds: readonly string[], fact: string) => {
    add(ofWork, workKey(work), fact);
    if (work.kind === 'check') add(ofPit, work.pitId, `${fact} ${work.nth}`);
    for (const id of personIds) add(ofPerson, id, `${fact} ${work.kind}`);
  };
  for (const { work, personIds, startsAt, endsAt } of frozen) note(work, personIds, `frozen ${startsAt} ${endsAt} ${personIds.length}`);
  for (const { work, personIds, startsAt } of promises) note(work, personIds, `promise ${startsAt} ${personIds.length}`);
  for (const { work, personIds = [], startsAt = 0 } of pins) note(work, personIds, `pin ${startsAt} ${personIds.length}`);
  const joined = (map: Map<string, string[]>) => new Map([...map].map(([key, all]) => [key, all.sort().join(';')]));
  return { ofWork: joined(ofWork), ofPit: joined(ofPit), ofPerson: joined(ofPerson) };
}

function inOrder<T extends { readonly id: string }>(things: readonly T[], marksOf: (thing: T) => Marks): readonly T[] {
  const marked = things.map((thing) => ({ thing, mark: marksOf(thing).join('|') }));
  return marked.sort((a, b) => (a.mark < b.mark ? -1 : a.mark > b.mark ? 1 : a.thing.id < b.thing.id ? -1 : 1)).map(({ thing }) => thing);
}
