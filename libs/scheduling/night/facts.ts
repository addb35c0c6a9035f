import type { EpochS, PersonId, PitId, ShiftId, TaskId } from '@stokehold/domain/quantity';
import type { PlanPlace, RunningShift } from '@stokehold/domain/shift';
import type { Pin, Work } from '../rounds/index.js';

/** When a burning fire wants its next look, from the forecast. */
export interface FireWindow {
  readonly pitId: PitId;
  readonly earliestAt: EpochS;
  readonly dueAt: EpochS;
  readonly latestSafeAt: EpochS;
  /** Windows of the looks after the next, counted from the look before; without them the usual ones. */
  readonly gap?: LookGap;
}

export interface LookGap {
  readonly earliestS: number;
  readonly dueS: number;
  readonly latestSafeS: number;
}

/** A fire check of this shift. */
export interface Look {
  readonly pitId: PitId;
  readonly personId: PersonId | null;
  readonly seenAt: EpochS;
}

/** A task of the night, done or not. */
export interface NightTask {
  readonly id: TaskId;
  readonly shiftId: ShiftId | null;
  readonly kind: 'light' | 'load' | 'turn' | 'wrap' | 'probe' | 'unload' | 'haul' | 'trim' | 'clear-ash';
  readonly pitId: PitId | null;
  readonly earliestAt: EpochS;
  readonly dueAt: EpochS;
  readonly latestAt: EpochS;
  readonly lengthS: number;
  readonly people: 1 | 2;
  readonly doneAt: EpochS | null;
  readonly doneBy: PersonId | null;
}

/** An assignment of the plan that people see now. */
export interface Shown {
  readonly work: Work;
  readonly personIds: readonly PersonId[];
  readonly startsAt: EpochS;
  readonly endsAt: EpochS;
  /** When it should start; by it a moved due time is told from a moved start. */
  readonly dueAt?: EpochS;
  /** Start after due, past latest, before earliest, s. Default 0. */
  readonly lateS?: number;
  readonly pastLatestS?: number;
  readonly earlyS?: number;
}

/** All that is known of the running night when its rounds are planned. */
export interface NightFacts {
  readonly now: EpochS;
  readonly shift: RunningShift;
  readonly woodPlace: PlanPlace;
  readonly walkSpeedMPerS: number;
  /** Every pit that stands in the yard, by name and id. */
  readonly pits: readonly (PlanPlace & { readonly id: PitId })[];
  /** What is believed of the fires; of a pit of the shift that is not among them nothing is known. */
  readonly fires: readonly FireWindow[];
  /** The fire checks since the shift's people began, in order of time. */
  readonly looks: readonly Look[];
  readonly tasks: readonly NightTask[];
  readonly shown: readonly Shown[];
  /** Somebody's decisions about the work of this night: who, when, or both. */
  readonly pins?: readonly Pin[];
  /** What each has done more than their share over the last nights, s; evened out as far as nothing weightier stands against it. */
  readonly carried?: ReadonlyMap<PersonId, Carried>;
}

/** Work that somebody has ahead of the others from other nights. */
export interface Carried {
  readonly workedS: number;
  readonly unpleasantS: number;
}
