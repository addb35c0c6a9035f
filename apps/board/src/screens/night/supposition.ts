import { fromIso, later, MINUTE_S, toIso, type EpochS } from '@stokehold/domain/quantity';
import type { Supposition, YardState } from '@stokehold/domain/contract';
import type { Mark } from './lanes.js';

// What is asked by dragging: a mark dropped on another person's lane, a break dropped at another time of its own.

export interface Dragged {
  readonly mark: Mark | undefined;
  readonly breakId: string | undefined;
  /** Whose lane it was taken from and dropped on. */
  readonly fromPerson: string;
  readonly toPerson: string;
  /** Where on the night it was dropped. */
  readonly at: EpochS;
}
const STEP_S = 5 * MINUTE_S;

/** A break goes to the nearest five minutes. */
export const nearestStep = (at: EpochS): EpochS => later(at, Math.round(at / STEP_S) * STEP_S - at);

/** What a drop supposes; nothing where it was dropped on what it was taken from, or where nothing can be supposed. */
export function supposedByDrop({ mark, breakId, fromPerson, toPerson, at }: Dragged, { plan }: Pick<YardState, 'plan'>): Supposition | undefined {
  if (breakId !== undefined) return toPerson === fromPerson ? { code: 'break-moved', breakId, startsAt: toIso(nearestStep(at)) } : undefined;
  const work = mark?.work;
  if (!work || mark.past || toPerson === fromPerson) return undefined;
  const planned = plan?.assignments.find((one) => JSON.stringify(one.work) === JSON.stringify(work));
  if (!planned || planned.people.some((id) => id === toPerson)) return undefined;
  const people = planned.people.map((id) => (id === fromPerson ? toPerson : id)) as typeof planned.people;
  return { code: 'work-given', work, people, startsAt: null };
}

/** The break of a person that has not begun, by person; those who have none left are left out. */
export const breaksToCome = ({ shift }: Pick<YardState, 'shift'>): readonly { readonly id: string; readonly name: string; readonly at: EpochS }[] =>
  (shift?.people ?? []).flatMap(({ name, breaks }) => breaks.filter(({ beganAt }) => beganAt === null).map((rest) => ({ id: rest.id, name, at: fromIso(rest.plannedAt ?? rest.earliestAt) })));

/** Pits that stand in the yard and do not burn tonight. */
export const restingPits = ({ pits }: Pick<YardState, 'pits'>) => pits.filter(({ tonight, pit }) => tonight === null && !pit.retired).map(({ pit }) => pit);
