import type { EpochS, PersonId, PitId, ShiftId } from '../quantity/index.js';

/** A break inside a window: it begins at or after `earliestAt` and has begun by `latestAt`. */
export interface Break {
  readonly id: string;
  readonly lengthS: number;
  readonly earliestAt: EpochS;
  readonly latestAt: EpochS;
  /** When it really began and ended, once that is known. */
  readonly beganAt?: EpochS;
  readonly endedAt?: EpochS;
}

/** Time in which somebody was expected and not there: `from` inclusive, `until` exclusive. */
export interface Away {
  readonly from: EpochS;
  readonly until: EpochS;
}

/** Somebody's hours on a shift. */
export interface Hours {
  readonly id: PersonId;
  readonly startsAt: EpochS;
  readonly endsAt: EpochS;
  readonly breaks: readonly Break[];
}

/** Somebody's hours with what was last heard of them. */
export interface KeptPerson extends Hours {
  /** What was reported last. Nobody reported yet: 'here'. */
  readonly presence: 'here' | 'late' | 'away';
  /** Since when that holds. */
  readonly presenceFrom?: EpochS;
  /** late: when they will come. away: when they are back. Without it: until they say that they are here. */
  readonly presenceUntil?: EpochS;
  /** Absences that are over. */
  readonly wasAway: readonly Away[];
}

/** Somebody on the shift that runs, with the name and the skills of the crew list. */
export interface PersonOnShift extends KeptPerson {
  readonly name: string;
  readonly skills: readonly string[];
}

/** A pit that burns in a shift. */
export interface BurningPit {
  readonly pitId: PitId;
  readonly band: { readonly lowC: number; readonly highC: number };
  readonly lightAt: EpochS;
}

/** A shift as it is kept. */
export interface KeptShift {
  readonly id: ShiftId;
  readonly from: EpochS;
  readonly until: EpochS;
  readonly people: readonly KeptPerson[];
  /** By light-up time, then id. */
  readonly pits: readonly BurningPit[];
}

/** The night: from, to, who works when, which pits burn. */
export interface RunningShift extends KeptShift {
  /** By name, then id. */
  readonly people: readonly PersonOnShift[];
}
