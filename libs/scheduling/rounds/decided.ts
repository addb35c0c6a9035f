import type { PersonId } from '@stokehold/domain/quantity';
import { workKey, type RoundPerson, type RoundProblem, type Work } from './problem.js';

/** The people of the night in the planner's order, and what facts, pins and promises say, by the work's key. */
export interface Decisions {
  readonly problem: RoundProblem;
  readonly people: readonly RoundPerson[];
  readonly frozen: ReadonlyMap<string, RoundProblem['frozen'][number]>;
  readonly pins: ReadonlyMap<string, RoundProblem['pins'][number]>;
  readonly promises: ReadonlyMap<string, RoundProblem['promises'][number]>;
}

/** The decisions of a problem, found by key: each piece of work is asked for once. */
export function decisionsOf(problem: RoundProblem, people: readonly RoundPerson[]): Decisions {
  const byKey = <T extends { readonly work: Work }>(things: readonly T[]) => new Map([...things].reverse().map((one) => [workKey(one.work), one]));
  return { problem, people, frozen: byKey(problem.frozen), pins: byKey(problem.pins), promises: byKey(problem.promises) };
}

const indexes = (ids: readonly PersonId[], people: readonly RoundPerson[]) => ids.map((id) => people.findIndex((person) => person.id === id)).sort((a, b) => a - b);

/** Of one piece of work: who may do it or has it, its start where that is fixed, its promise. */
export function decided({ problem: { from }, people, ...known }: Decisions, work: Work, able: readonly number[]) {
  const key = workKey(work);
  const frozen = known.frozen.get(key);
  const pin = known.pins.get(key);
  const promise = known.promises.get(key);
  return {
    key,
    work,
    able: frozen ? indexes(frozen.personIds, people) : pin?.personIds ? indexes(pin.personIds, people) : able,
    fixedS: frozen ? frozen.startsAt - from : pin?.startsAt === undefined ? undefined : pin.startsAt - from,
    frozenLengthS: frozen && frozen.endsAt - frozen.startsAt,
    frozen: frozen !== undefined,
    pinned: pin !== undefined,
    promise: promise && { people: indexes(promise.personIds, people), startS: promise.startsAt - from, units: promiseUnits(promise.startsAt - from) },
  };
}

/** Half units that another person costs: 10 within half an hour, 4 within two hours, 2 later. */
const promiseUnits = (inS: number) => (inS <= 1800 ? 10 : inS <= 7200 ? 4 : 2);

/** Work that may begin but was promised for later waits for its promise. */
export const notBeforePromise = (releaseS: number, latestS: number, promise: { readonly startS: number } | undefined): number =>
  promise && promise.startS <= latestS ? Math.max(releaseS, promise.startS) : releaseS;
