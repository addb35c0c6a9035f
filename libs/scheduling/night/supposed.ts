import { later, MINUTE_S, type EpochS, type PersonId, type PitId, type TaskId } from '@stokehold/domain/quantity';
import { workKey, type Pin, type RoundPerson, type RoundProblem } from '../rounds/index.js';
import { CHECK_S, USUAL_GAP } from './practice.js';

/** Something that might happen tonight. */
export type Supposition =
  | { readonly code: 'person-less'; readonly personId: PersonId; readonly fromAt: EpochS }
  | { readonly code: 'person-late'; readonly personId: PersonId; readonly byS: number }
  | { readonly code: 'pit-more'; readonly pitId: PitId; readonly lightAt: EpochS }
  | { readonly code: 'break-moved'; readonly breakId: string; readonly startsAt: EpochS }
  | { readonly code: 'work-given'; readonly pin: Pin };

/** Laying and lighting a fire. Source: common practice, no source. */
const LIGHT_S = 10 * MINUTE_S;

/**
 * The night as it would be: somebody away from a time on, somebody coming or back later, one pit more, a break at another time, work
 * in other hands or at another time. A supposition about what the night does not know changes nothing.
 *
 * @param problem  the night as it is, of problemOfNight
 * @returns a copy; validateRounds judges it. Held to libs/scheduling/night/supposed.test.ts
 */
export function supposed(problem: RoundProblem, what: Supposition): RoundProblem {
  switch (what.code) {
    case 'person-less':
      return awayFrom(problem, what.personId, { from: what.fromAt });
    case 'person-late': {
      const person = problem.people.find(({ id }) => id === what.personId);
      const from = person && person.startsAt > problem.from ? person.startsAt : problem.from;
      return awayFrom(problem, what.personId, { from, until: later(from, what.byS) });
    }
    case 'pit-more':
      return withPit(problem, what.pitId, what.lightAt < problem.from ? problem.from : what.lightAt);
    case 'break-moved':
      return changing(problem, ({ breaks }) => breaks.some(({ id }) => id === what.breakId), (person) => ({
        ...person, breaks: person.breaks.map((rest) => (rest.id === what.breakId ? { ...rest, earliestAt: what.startsAt, latestAt: what.startsAt } : rest)),
      }));
    case 'work-given':
      return { ...problem, pins: [...problem.pins.filter(({ work }) => workKey(work) !== workKey(what.pin.work)), what.pin] };
  }
}

const changing = (problem: RoundProblem, whom: (person: RoundPerson) => boolean, change: (person: RoundPerson) => RoundPerson): RoundProblem => ({
  ...problem, people: problem.people.map((person) => (whom(person) ? change(person) : person)),
});

/** What is frozen in the hands of somebody who is away is free again. */
function awayFrom(problem: RoundProblem, id: PersonId, gone: { readonly from: EpochS; readonly until?: EpochS }): RoundProblem {
  const away = changing(problem, (person) => person.id === id, (person) => {
    const until = gone.until ?? person.endsAt;
    const absent = until > gone.from ? [...(person.absent ?? []), { from: gone.from, until }] : (person.absent ?? []);
    return { ...person, absent, breaks: person.breaks.filter(({ startedAt }) => startedAt === undefined) };
  });
  const until = gone.until ?? problem.until;
  return {
    ...away,
    frozen: problem.frozen.filter(({ personIds, startsAt, endsAt }) => !personIds.includes(id) || endsAt <= gone.from || startsAt >= until),
    pins: problem.pins.filter(({ personIds = [] }) => !personIds.includes(id)),
  };
}

function withPit(problem: RoundProblem, pitId: PitId, lightAt: EpochS): RoundProblem {
  if (problem.pits.some(({ id }) => id === pitId) || !problem.places.includes(pitId)) return problem;
  const lit = later(lightAt, LIGHT_S);
  const first = { earliestAt: later(lit, USUAL_GAP.earliestS), dueAt: later(lit, USUAL_GAP.dueS), latestSafeAt: later(lit, USUAL_GAP.latestSafeS) };
  return {
    ...problem,
    pits: [...problem.pits, { id: pitId, place: pitId, weight: 1, firstNth: 1, checkS: CHECK_S, skill: 'fire', gap: USUAL_GAP, first }],
    // The supposed task goes by the id of its pit: it is told to people like any other, and no task has it.
    tasks: [...problem.tasks, {
      id: pitId as string as TaskId, kind: 'light', place: pitId, lengthS: LIGHT_S, earliestAt: lightAt, dueAt: lightAt, latestAt: later(lightAt, 2 * LIGHT_S),
      people: 1, skill: 'fire', unpleasant: false,
    }],
  };
}
