import { decided, notBeforePromise, type Decisions } from './decided.js';
import type { Job, NightPerson } from './night.js';
import type { RoundPerson, RoundProblem } from './problem.js';
import { withinStretch } from './stretch.js';

/** When somebody is ready for work, and when their shift ends, s from `from`. */
export const hoursOf = ({ from }: RoundProblem, { startsAt, endsAt, freeFrom }: RoundPerson): Pick<NightPerson, 'readyS' | 'endS'> =>
  ({ readyS: Math.max(0, startsAt - from, freeFrom - from), endS: endsAt - from });

/** Breaks and absences of one person; windows of breaks are cut to what facts and stretches of work leave. */
export function blocksOf(known: Decisions, person: RoundPerson, index: number): { readonly jobs: readonly Job[]; readonly endS: number } {
  const { problem } = known;
  const absences = absencesOf(problem, person, index);
  const { readyS, endS: homeS } = hoursOf(problem, person);
  const { breaks, endS } = withinStretch(breaksOf(known, person, index), { readyS, endS: homeS, stretchS: person.stretchS });
  const busy = [
    ...absences.map((job) => [job.releaseS, job.releaseS + job.lengthS] as const),
    ...breaks.flatMap((job) => (job.frozen ? [[job.releaseS, job.releaseS + job.lengthS] as const] : [])),
    ...problem.frozen.flatMap(({ work, personIds, startsAt, endsAt }) =>
      work.kind !== 'break' && personIds.includes(person.id) ? [[startsAt - problem.from, endsAt - problem.from] as const] : []),
  ].sort((a, b) => a[0] - b[0]);
  let freeS = readyS;
  const bounded = breaks.map((job) => {
    if (job.frozen) return job;
    let soonestS = Math.max(freeS, job.releaseS);
    for (const [from, until] of busy) if (soonestS < until && from < soonestS + job.lengthS) soonestS = until;
    freeS = soonestS + job.lengthS;
    return { ...job, hardLatestS: Math.max(Math.min(job.latestS, job.hardLatestS), soonestS) };
  });
  return { jobs: [...bounded, ...absences], endS };
}

/** Breaks still to be kept; one that began is a fact, one that ended before now is history. */
function breaksOf(known: Decisions, person: RoundPerson, index: number): readonly Job[] {
  const { problem, people } = known;
  if (!isThere(problem, person)) return [];
  const open = person.breaks.filter((rest) => rest.startedAt === undefined || rest.startedAt + rest.lengthS > problem.from).sort((a, b) => a.latestAt - b.latestAt || (a.id < b.id ? -1 : 1));
  return open.map((rest, i) => {
    const { frozenLengthS, ...facts } = decided(known, { kind: 'break', breakId: rest.id }, [index]);
    const fixedS = rest.startedAt === undefined ? facts.fixedS : rest.startedAt - problem.from;
    const windowS = rest.latestAt - rest.earliestAt;
    const turn = (index + i) % people.length;
    const targetS = rest.earliestAt - problem.from + Math.floor((windowS * (2 * turn + 1)) / (2 * people.length));
    return {
      kind: 'break', place: -1, lengthS: frozenLengthS ?? rest.lengthS, releaseS: fixedS ?? notBeforePromise(Math.max(0, rest.earliestAt - problem.from), rest.latestAt - problem.from, facts.promise),
      targetS, latestS: rest.latestAt - problem.from, hardLatestS: Infinity, weight: 1, people: 1, pit: -1, link: i, unpleasant: false, ...facts, fixedS,
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
