import { HOUR_S, later, MINUTE_S, ok, refuse, type EpochS, type PersonId, type PitId, type Result, type ShiftId } from '../quantity/index.js';
import type { Away, BurningPit, Hours, KeptPerson, KeptShift } from './crew.js';

/** A night with its preparation; longer is two shifts. Source: common practice, no source. */
const LONGEST_SHIFT_S = 24 * HOUR_S;
/** How long before it starts a shift already counts as running, and how far somebody's hours may reach past it. */
export const LEAD_S = 3 * HOUR_S;

/** A shift as somebody wants to have it. */
export interface PlannedShift {
  readonly id: ShiftId;
  readonly from: EpochS;
  readonly until: EpochS;
  readonly people: readonly Hours[];
  readonly pits: readonly BurningPit[];
}

/** Why a shift cannot be planned so; the code is one of the API's refusals. */
export type ShiftRefusal =
  | { readonly code: 'shift-ends-before-it-begins' | 'shift-too-long' | 'shift-has-ended' }
  | { readonly code: 'shift-overlaps'; readonly shiftId: ShiftId }
  | { readonly code: 'person-on-two-shifts' | 'hours-outside-shift'; readonly personId: PersonId }
  | { readonly code: 'break-outside-shift'; readonly personId: PersonId; readonly breakId: string }
  | { readonly code: 'light-outside-shift'; readonly pitId: PitId };

type Found = ShiftRefusal | undefined;
const meet = (one: Away, other: Away) => one.from < other.until && other.from < one.until;
const hoursOf = ({ startsAt, endsAt }: Hours): Away => ({ from: startsAt, until: endsAt });

/**
 * The shift, or the first thing in it that cannot be.
 *
 * @param shift   as wanted
 * @param others  the yard's other shifts, at least those within a day of it
 * @param now     a shift that is over by now is a record and no longer changed
 * @returns the shift, or why not. Held to libs/domain/shift/shift.test.ts
 */
export function plannable(shift: PlannedShift, others: readonly Omit<PlannedShift, 'pits'>[], now: EpochS): Result<PlannedShift, ShiftRefusal> {
  const rest = others.filter(({ id }) => id !== shift.id);
  const refusal = lengthOf(shift, now) ?? overlapOf(shift, rest) ?? peopleOf(shift, rest) ?? lightsOf(shift);
  return refusal ? refuse(refusal) : ok(shift);
}

function lengthOf({ from, until }: PlannedShift, now: EpochS): Found {
  if (!(until > from)) return { code: 'shift-ends-before-it-begins' };
  if (until - from > LONGEST_SHIFT_S) return { code: 'shift-too-long' };
  return until <= now ? { code: 'shift-has-ended' } : undefined;
}

function overlapOf(shift: PlannedShift, others: readonly Omit<PlannedShift, 'pits'>[]): Found {
  const other = others.find((one) => meet(one, shift));
  return other && { code: 'shift-overlaps', shiftId: other.id };
}

function peopleOf(shift: PlannedShift, others: readonly Omit<PlannedShift, 'pits'>[]): Found {
  const reach: Away = { from: later(shift.from, -LEAD_S), until: later(shift.until, LEAD_S) };
  const elsewhere = others.flatMap(({ people }) => people);
  for (const [nth, person] of shift.people.entries()) {
    const { id: personId, startsAt, endsAt } = person;
    const inside = endsAt > startsAt && startsAt >= reach.from && endsAt <= reach.until && meet(hoursOf(person), shift);
    if (!inside) return { code: 'hours-outside-shift', personId };
    const twice = shift.people.findIndex(({ id }) => id === personId) !== nth;
    if (twice || elsewhere.some((one) => one.id === personId && meet(hoursOf(one), hoursOf(person)))) {
      return { code: 'person-on-two-shifts', personId };
    }
    const wrong = person.breaks.find(
      ({ earliestAt, latestAt, lengthS }) => latestAt < earliestAt || earliestAt < startsAt || latestAt + lengthS > endsAt,
    );
    if (wrong) return { code: 'break-outside-shift', personId, breakId: wrong.id };
  }
  return undefined;
}

function lightsOf({ until, pits }: PlannedShift): Found {
  const wrong = pits.find(({ lightAt }) => lightAt >= until);
  return wrong && { code: 'light-outside-shift', pitId: wrong.pitId };
}

/** Laying and lighting a fire, and how early and late that may begin. Source: common practice, no source. */
const LIGHT = { lengthS: 10 * MINUTE_S, earlyS: 10 * MINUTE_S, lateS: 20 * MINUTE_S } as const;

/** The task of lighting one pit. */
export interface LightTask {
  readonly earliestAt: EpochS;
  readonly dueAt: EpochS;
  readonly latestAt: EpochS;
  readonly lengthS: number;
}

/**
 * The task that a pit's light-up time makes, or none where the fire was lit long before the shift and burns on.
 * @param lightAt  when the fire should be lit
 * @param from     start of the shift
 */
export function lightTask(lightAt: EpochS, from: EpochS): LightTask | undefined {
  if (lightAt < from - LEAD_S) return undefined;
  return { earliestAt: later(lightAt, -LIGHT.earlyS), dueAt: lightAt, latestAt: later(lightAt, LIGHT.lateS), lengthS: LIGHT.lengthS };
}

/** The shift of a yard that counts as running: the one under way, else the next from three hours before its start. */
export function runningOf<S extends Away>(shifts: readonly S[], now: EpochS): S | undefined {
  const inOrder = [...shifts].sort((one, other) => one.from - other.from);
  return inOrder.find(({ from, until }) => from <= now && now < until) ?? inOrder.find(({ from }) => from > now && from - LEAD_S <= now);
}

/** The shift after a change: hours and windows as wanted, but a break that has begun and all that was reported stays. */
export function changed(before: KeptShift | undefined, wanted: PlannedShift): KeptShift {
  const people = wanted.people.map((person): KeptPerson => {
    const known = before?.people.find(({ id }) => id === person.id);
    if (!known) return { ...person, presence: 'here', wasAway: [] };
    const begun = known.breaks.filter(({ beganAt }) => beganAt !== undefined);
    const open = person.breaks.filter(({ id }) => !begun.some((rest) => rest.id === id));
    return { ...known, ...person, breaks: [...begun, ...open] };
  });
  return { ...wanted, people };
}
