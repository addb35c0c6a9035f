import type { OnShift, PersonOnShift as PersonView, PlanShift, ShiftView } from '@stokehold/domain/contract';
import { type EpochS, fromIso, toIso } from '@stokehold/domain/quantity';
import { type Break, onBreak, type PersonOnShift, type PlannedShift, presenceAt, type RunningShift } from '@stokehold/domain/shift';

const isoOrNull = (at: EpochS | undefined) => (at === undefined ? null : toIso(at));

const hoursOf = ({ personId, startsAt, endsAt, breaks }: OnShift): PlannedShift['people'][number] => ({
  id: personId,
  startsAt: fromIso(startsAt),
  endsAt: fromIso(endsAt),
  breaks: breaks.map(({ id, lengthS, earliestAt, latestAt }) => ({ id, lengthS, earliestAt: fromIso(earliestAt), latestAt: fromIso(latestAt) })),
});

/** The shift as it was asked for, in the words of the domain. */
export const plannedOf = ({ id, startsAt, endsAt, people, pits }: PlanShift): PlannedShift => ({
  id,
  from: fromIso(startsAt),
  until: fromIso(endsAt),
  people: people.map(hoursOf),
  pits: pits.map(({ pitId, band, lightAt }) => ({ pitId, band, lightAt: fromIso(lightAt) })),
});

/** When the plan wants each break to begin, by the break's id. */
export type BreakTimes = ReadonlyMap<string, EpochS>;

const breakView = (rest: Break, planned: BreakTimes): PersonView['breaks'][number] => ({
  id: rest.id,
  lengthS: rest.lengthS,
  earliestAt: toIso(rest.earliestAt),
  latestAt: toIso(rest.latestAt),
  beganAt: isoOrNull(rest.beganAt),
  endedAt: isoOrNull(rest.endedAt),
  plannedAt: isoOrNull(planned.get(rest.id)),
});

function personView(person: PersonOnShift, now: EpochS, planned: BreakTimes): PersonView {
  const presence = presenceAt(person, now);
  return {
    personId: person.id,
    name: person.name,
    startsAt: toIso(person.startsAt),
    endsAt: toIso(person.endsAt),
    presence,
    presenceUntil: presence === 'late' || presence === 'away' ? isoOrNull(person.presenceUntil) : null,
    onBreak: person.breaks.some((rest) => onBreak(rest, now)),
    breaks: person.breaks.map((rest) => breakView(rest, planned)),
  };
}

export const shiftView = (shift: RunningShift, now: EpochS, planned: BreakTimes): ShiftView => ({
  id: shift.id,
  startsAt: toIso(shift.from),
  endsAt: toIso(shift.until),
  people: shift.people.map((person) => personView(person, now, planned)),
  pits: shift.pits.map(({ pitId, band, lightAt }) => ({ pitId, band, lightAt: toIso(lightAt) })),
});
