import { later, MINUTE_S, type EpochS } from '../quantity/index.js';
import { merged, overlapS } from './away.js';
import type { Away, Break, KeptPerson } from './crew.js';
import { absences } from './presence.js';

/**
 * A rest up to 20 min is working time; a meal break of 30 min is none. Between the two the rules differ from place to
 * place: it counts as working time here. [CFR29-785] 785.18 and 785.19, from memory; local law decides.
 */
const PAID_REST_S = 30 * MINUTE_S;

const taken = (breaks: readonly Break[]): readonly Away[] =>
  breaks.flatMap(({ beganAt, endedAt, lengthS }) => (beganAt === undefined ? [] : [{ from: beganAt, until: endedAt ?? later(beganAt, lengthS) }]));

function thereLess(person: KeptPerson, span: Away, breaks: readonly Break[]): number {
  const there: Away = {
    from: person.startsAt > span.from ? person.startsAt : span.from,
    until: person.endsAt < span.until ? person.endsAt : span.until,
  };
  if (there.until <= there.from) return 0;
  const off = merged([...absences(person), ...taken(breaks)]);
  return there.until - there.from - off.reduce((sum, stretch) => sum + overlapS(stretch, there), 0);
}

/**
 * Time somebody was there and not on break between two instants.
 * @returns s, whole. Held to libs/domain/shift/hours.test.ts
 */
export const workedS = (person: KeptPerson, from: EpochS, until: EpochS): number => thereLess(person, { from, until }, person.breaks);

/**
 * Time of somebody that is paid between two instants: short rests are, meal breaks are not.
 * @returns s, whole. Source: [CFR29-785], from memory. Held to libs/domain/shift/hours.test.ts
 */
export const paidS = (person: KeptPerson, from: EpochS, until: EpochS): number =>
  thereLess(person, { from, until }, person.breaks.filter(({ lengthS }) => lengthS >= PAID_REST_S));
