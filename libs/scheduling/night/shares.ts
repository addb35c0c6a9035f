import { clamp, later, type EpochS, type PersonId } from '@stokehold/domain/quantity';
import { LEAD_S, walkTableS, workedS, type Share } from '@stokehold/domain/shift';
import type { RoundPlan, RoundProblem } from '../rounds/index.js';
import type { Carried, NightFacts, Shown } from './facts.js';
import { CHECK_S, UNPLEASANT } from './practice.js';
import { WOOD_PLACE } from './problem-of-night.js';

type NightPast = Pick<NightFacts, 'shift' | 'looks' | 'tasks' | 'pits' | 'woodPlace' | 'walkSpeedMPerS'> & { readonly shown?: readonly Shown[] };

/** One thing that somebody did or will do: when, where, for how long. */
interface Deed {
  readonly at: EpochS;
  readonly place: string;
  readonly lengthS: number;
  readonly unpleasant: boolean;
}

/**
 * What each had of a night: time there, work, unpleasant work, walking from the wood on. With `shown`, what the plan still has for
 * them counts as done, so that a night under way is told as a whole.
 *
 * @param night  its shift, the checks and tasks done in it, and the yard they were done in
 * @returns one share a person, by the shift's order. Held to libs/scheduling/night/shares.test.ts
 */
export function sharesOfNight(night: NightPast): readonly Share[] {
  const { shift, pits, woodPlace, walkSpeedMPerS } = night;
  const places = [WOOD_PLACE, ...pits.map(({ id }) => id)];
  const table = walkTableS([woodPlace, ...pits], walkSpeedMPerS);
  const [from, until] = [later(shift.from, -LEAD_S), later(shift.until, LEAD_S)];
  return shift.people.map((person) => {
    const deeds = [...done(night, person.id, from, until), ...planned(night, person.id)].sort((one, other) => one.at - other.at);
    return {
      personId: person.id,
      thereS: workedS(person, from, until),
      workedS: sum(deeds, ({ lengthS }) => lengthS),
      unpleasantS: sum(deeds, ({ lengthS, unpleasant }) => (unpleasant ? lengthS : 0)),
      walkedS: sum(deeds, ({ place }, n) => table[places.indexOf(deeds[n - 1]?.place ?? WOOD_PLACE)]?.[places.indexOf(place)] ?? 0),
    };
  });
}

const sum = (deeds: readonly Deed[], of: (deed: Deed, n: number) => number) => deeds.reduce((all, deed, n) => all + of(deed, n), 0);

function done({ looks, tasks }: NightPast, id: PersonId, from: EpochS, until: EpochS): readonly Deed[] {
  const within = (at: EpochS | null): at is EpochS => at !== null && from <= at && at <= until;
  return [
    ...looks.filter(({ personId, seenAt }) => personId === id && within(seenAt)).map(({ pitId, seenAt }) => ({ at: seenAt, place: pitId as string, lengthS: CHECK_S, unpleasant: false })),
    ...tasks.flatMap(({ doneBy, doneAt, pitId, kind, lengthS }) => (doneBy === id && within(doneAt) ? [{ at: doneAt, place: pitId ?? WOOD_PLACE, lengthS, unpleasant: UNPLEASANT.includes(kind) }] : [])),
  ];
}

function planned({ shown = [], tasks }: NightPast, id: PersonId): readonly Deed[] {
  return shown.filter(({ personIds, work }) => personIds.includes(id) && work.kind !== 'break').map(({ work, startsAt, endsAt }) => {
    const task = work.kind === 'task' ? tasks.find((one) => one.id === work.taskId) : undefined;
    return { at: startsAt, place: work.kind === 'check' ? work.pitId : (task?.pitId ?? WOOD_PLACE), lengthS: endsAt - startsAt, unpleasant: task !== undefined && UNPLEASANT.includes(task.kind) };
  });
}

/**
 * How even tonight is, what other nights left behind put aside:
 *
 *     evenness = 1 - (largest - smallest work of a person, each by the length of their shift)
 *
 * @returns 1 when everybody works the same part of their shift, down to 0; undefined where nobody works
 */
export function evennessOf({ people }: Pick<RoundProblem, 'people'>, plan: RoundPlan, carried: ReadonlyMap<PersonId, Carried> = new Map()): number | undefined {
  if (people.length === 0) return undefined;
  const parts = people.map(({ id, workedS: before = 0, startsAt, endsAt }) => {
    const ahead = plan.assignments.filter(({ work, personIds }) => work.kind !== 'break' && personIds.includes(id)).reduce((all, one) => all + one.endsAt - one.startsAt, 0);
    return (before - (carried.get(id)?.workedS ?? 0) + ahead) / (endsAt - startsAt);
  });
  return clamp(1 - (Math.max(...parts) - Math.min(...parts)), 0, 1);
}
