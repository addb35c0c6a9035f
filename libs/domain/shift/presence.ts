import { later, type EpochS } from '../quantity/index.js';
import { merged } from './away.js';
import type { Away, Break, KeptPerson } from './crew.js';

/** What is heard of somebody: late, away or here. */
export interface PresenceReport {
  readonly state: 'here' | 'late' | 'away';
  readonly until?: EpochS;
  readonly at: EpochS;
}

/** Late without a time, or away without one, means: until they say that they are here. */
function currentAbsence({ presence, presenceFrom, presenceUntil, startsAt, endsAt }: KeptPerson): Away | undefined {
  if (presence === 'here') return undefined;
  const absence = { from: presenceFrom ?? startsAt, until: presenceUntil ?? endsAt };
  return absence.until > absence.from ? absence : undefined;
}

/** When somebody on the shift is not there: absences that are over, and the one reported last. In order of time, none overlapping. */
export function absences(person: KeptPerson): readonly Away[] {
  const current = currentAbsence(person);
  return merged([...person.wasAway, ...(current ? [current] : [])]);
}

/** Since when a report holds: late since the start of their hours, unless they had said that they are here. */
function since(person: KeptPerson, { state, at }: PresenceReport): EpochS {
  const cameAlready = person.presence === 'here' && person.presenceFrom !== undefined;
  return state === 'late' && !cameAlready ? (person.presenceFrom ?? person.startsAt) : at;
}

/**
 * What a report makes of a person: what held before and is over by now becomes a past absence. Somebody who is here before
 * the time they gave was away only until now; late again, or away again while away, only corrects the time.
 */
export function reported(person: KeptPerson, report: PresenceReport): KeptPerson {
  const { state, until, at } = report;
  const { presenceUntil: before, ...rest } = person;
  const told = until !== undefined && state !== 'here' && { presenceUntil: until };
  const corrects = state === person.presence && (state === 'late' || (state === 'away' && (before === undefined || before > at)));
  if (corrects) return { ...rest, ...told };
  const absence = currentAbsence(person);
  const past = absence && absence.from < at ? [{ from: absence.from, until: absence.until < at ? absence.until : at }] : [];
  return { ...rest, presence: state, presenceFrom: since(person, report), ...told, wasAway: [...person.wasAway, ...past] };
}

/** Whether a break is under way; one whose end nobody reported is over when its length has passed. */
export const onBreak = ({ beganAt, endedAt, lengthS }: Break, now: EpochS): boolean =>
  beganAt !== undefined && beganAt <= now && now < (endedAt ?? later(beganAt, lengthS));

/** Whether a break has been taken. */
export const breakOver = ({ beganAt, endedAt, lengthS }: Break, now: EpochS): boolean =>
  beganAt !== undefined && now >= (endedAt ?? later(beganAt, lengthS));

/** A break as it stands after it was reported begun or ended. One that ended and was never reported begun had its length. */
export function breakReported(rest: Break, state: 'begun' | 'ended', at: EpochS): Break {
  if (state === 'begun') return { ...rest, beganAt: rest.beganAt ?? at };
  return { ...rest, beganAt: rest.beganAt ?? later(at, -rest.lengthS), endedAt: rest.endedAt ?? at };
}

/** Where somebody is by what is known: not yet come, late, away, here, gone home. */
export function presenceAt(person: KeptPerson, now: EpochS): 'here' | 'late' | 'away' | 'not-yet' | 'gone-home' {
  if (now >= person.endsAt) return 'gone-home';
  const current = currentAbsence(person);
  const away = current !== undefined && current.from <= now && now < current.until;
  if (away && person.presence !== 'here') return person.presence;
  if (person.presence === 'late' && now < person.startsAt) return 'late';
  return now < person.startsAt ? 'not-yet' : 'here';
}
