import type { CrewMember, PayRulesView } from '@stokehold/domain/contract';
import { type PaidPerson, payOf, PLAIN_PAY, type Span } from '@stokehold/domain/cost';
import { cents, type EpochS, later } from '@stokehold/domain/quantity';
import { absences, type KeptPerson, type KeptShift } from '@stokehold/domain/shift';
import { nextWallTime } from '../platform/index.js';

/** What holds until a yard sets its own: short rests are paid, nights as any hour. */
export const USUAL_RULES: PayRulesView = { ...PLAIN_PAY, nightFrom: '22:00', nightUntil: '06:00' };

/** The yard's night hours as instants, as far as they touch a stretch of time; none where the yard pays nothing more for them. */
export function nightsIn(span: Span, rules: PayRulesView, timeZone: string): readonly Span[] {
  const nights: Span[] = [];
  if (rules.nightExtraPermille === 0) return nights;
  for (let at = later(span.from, -2 * 86_400); at < span.until; ) {
    const from = nextWallTime(at, rules.nightFrom, timeZone);
    nights.push({ from, until: nextWallTime(from, rules.nightUntil, timeZone) });
    at = from;
  }
  return nights;
}

const clip = (span: Span, { from, until }: Span): Span => ({ from: Math.max(span.from, from) as EpochS, until: Math.min(span.until, until) as EpochS });

/** Somebody's time in a stretch: their hours less absences, and the breaks they took in it. */
export function workedIn(person: KeptPerson, stretch: Span): { readonly spans: readonly Span[]; readonly breaks: readonly Span[] } {
  const hours = clip({ from: person.startsAt, until: person.endsAt }, stretch);
  const away = absences(person);
  const spans = away.reduce<readonly Span[]>((parts, gone) => parts.flatMap((part) => [clip(part, { from: part.from, until: gone.from }), clip(part, { from: gone.until, until: part.until })]).filter(({ from, until }) => until > from), hours.until > hours.from ? [hours] : []);
  const breaks = person.breaks.flatMap(({ beganAt, endedAt, lengthS }) => (beganAt === undefined ? [] : [{ from: beganAt, until: endedAt ?? later(beganAt, lengthS) }]));
  return { spans, breaks };
}

/** What everybody's time between two instants costs by the yard's rules. */
export function paidIn(shifts: readonly KeptShift[], stretch: Span, pay: { readonly crew: readonly CrewMember[]; readonly rules: PayRulesView; readonly nights: readonly Span[] }): readonly PaidPerson[] {
  const people = shifts.flatMap((shift) => shift.people);
  const ids = [...new Set(people.map(({ id }) => id))].sort();
  return ids.flatMap((personId): readonly PaidPerson[] => {
    const times = people.filter(({ id }) => id === personId).map((person) => workedIn(person, stretch));
    const centsPerHour = pay.crew.find(({ id }) => id === personId)?.rateCentsPerHour ?? 0;
    const paid = payOf({ spans: times.flatMap(({ spans }) => spans), breaks: times.flatMap(({ breaks }) => breaks), centsPerHour }, pay.rules, pay.nights);
    return paid.paidS > 0 ? [{ personId, paidS: paid.paidS, costCents: cents(paid.costCents) }] : [];
  });
}
