import { type EpochS } from '@stokehold/domain/quantity';
import { validateRounds, workKey, type FrozenWork, type Pin, type RoundProblem } from '../rounds/index.js';
import type { NightFacts } from './facts.js';

/**
 * The decisions that still hold: not about work that is frozen or done, not for somebody who is away by then, not at a time that
 * is over. A decision that the facts have overtaken falls away, so that it never leaves a fire unlooked at.
 *
 * @param outline  the problem without pins. Held to libs/scheduling/night/problem-of-night.test.ts
 */
export function pinsOf(outline: Omit<RoundProblem, 'pins'>, { pins = [], shown, now }: NightFacts, frozen: readonly FrozenWork[]): readonly Pin[] {
  const fixed = new Set(frozen.map(({ work }) => workKey(work)));
  return pins
    .filter(({ work }) => !fixed.has(workKey(work)))
    .map((pin) => inTime(pin, now))
    .filter((pin) => (pin.personIds !== undefined || pin.startsAt !== undefined) && isThere(outline, pin, startOf(pin, shown, now)))
    .filter((pin) => validateRounds({ ...outline, pins: [pin] }).ok);
}

/** A start that has passed binds nobody; the person still does. */
const inTime = ({ startsAt, ...pin }: Pin, now: EpochS): Pin => (startsAt !== undefined && startsAt >= now ? { ...pin, startsAt } : pin);

const startOf = (pin: Pin, shown: NightFacts['shown'], now: EpochS): EpochS =>
  pin.startsAt ?? shown.find(({ work }) => workKey(work) === workKey(pin.work))?.startsAt ?? now;

function isThere({ people }: Pick<RoundProblem, 'people'>, { personIds = [] }: Pin, at: EpochS): boolean {
  return personIds.every((id) => {
    const person = people.find((one) => one.id === id);
    return person !== undefined && at < person.endsAt && !(person.absent ?? []).some(({ from, until }) => from <= at && at < until);
  });
}
