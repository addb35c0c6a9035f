import type { EpochS, PersonId, PitId, TaskId } from '@stokehold/domain/quantity';
import { parameterOf, type Ranges } from '../search/index.js';

// What the planner and its checker both know, and all that they share. Whole seconds everywhere.

/** What somebody does: the nth check of a pit (counted through the shift), a task, or a break. */
export type Work =
  | { readonly kind: 'check'; readonly pitId: PitId; readonly nth: number }
  | { readonly kind: 'task'; readonly taskId: TaskId }
  | { readonly kind: 'break'; readonly breakId: string };

/** One name for a piece of work: 'check/pit-4/3', 'task/load-2', 'break/ana-1'. */
export function workKey(work: Work): string {
  if (work.kind === 'check') return `check/${work.pitId}/${work.nth}`;
  return work.kind === 'task' ? `task/${work.taskId}` : `break/${work.breakId}`;
}

/** When an absent person is not there: from, inclusive, until, exclusive. */
export interface Absence {
  readonly from: EpochS;
  readonly until: EpochS;
}

/** A break begins at or after `earliestAt` and has begun by `latestAt`; nobody is called out of it. */
export interface BreakWindow {
  readonly id: string;
  /** 0 s to 4 h. */
  readonly lengthS: number;
  readonly earliestAt: EpochS;
  readonly latestAt: EpochS;
  /** When it really began; from then on it is a fact. */
  readonly startedAt?: EpochS;
}

export interface RoundPerson {
  readonly id: PersonId;
  readonly startsAt: EpochS;
  readonly endsAt: EpochS;
  readonly skills: readonly string[];
  /** Where they stand when they become free. */
  readonly atPlace: string;
  /** Free for other work from here on: the later of now, their shift, and the end of what they do. */
  readonly freeFrom: EpochS;
  readonly absent?: readonly Absence[];
  readonly breaks: readonly BreakWindow[];
  /** Longest time of work from one break to the next, 10 min to 16 h; without it the windows of the breaks alone count. */
  readonly stretchS?: number;
  /** Work done before `from` that counts for an even load, s. Default 0. */
  readonly workedS?: number;
  /** Of it, unpleasant work, s. Default 0. */
  readonly unpleasantS?: number;
}

export interface RoundPit {
  readonly id: PitId;
  readonly place: string;
  /** How much a late second here costs against another pit: a whole number, 1 to 9. */
  readonly weight: number;
  readonly lastCheckAt?: EpochS;
  /** Number of the next check, counted through the shift, so that a promise keeps its number. Default 1. */
  readonly firstNth?: number;
  /** Window of the next check, from the forecast of the fire. Times in the past are welcome: then it is late. */
  readonly first: { readonly earliestAt: EpochS; readonly dueAt: EpochS; readonly latestSafeAt: EpochS };
  /** Windows of the later checks, each counted from the real start of the check before: 0 <= earliest < due <= latest safe. */
  readonly gap: { readonly earliestS: number; readonly dueS: number; readonly latestSafeS: number };
  readonly checkS: number;
  /** Needed to check this pit; without it, everybody may. */
  readonly skill?: string;
  /** The fire is kept until here. Default: the problem's `until`. */
  readonly keepUntil?: EpochS;
}

export interface RoundTask {
  readonly id: TaskId;
  /** light, load, turn, wrap, probe, unload, haul, trim, clear-ash, handover; the planner does not read it. */
  readonly kind: string;
  readonly place: string;
  readonly lengthS: number;
  /** It may start from here, should start by `dueAt` and must start by `latestAt`. */
  readonly earliestAt: EpochS;
  readonly dueAt: EpochS;
  readonly latestAt: EpochS;
  /** Two people start it in the same second. */
  readonly people: 1 | 2;
  readonly skill?: string;
  /** A whole number, 1 to 9. Default 1. */
  readonly weight?: number;
  /** Counts for the fair sharing of unpleasant work (hauling, ash). Default false. */
  readonly unpleasant?: boolean;
}

/** Work that has begun or is about to: it stays, to the second and to the person. */
export interface FrozenWork {
  readonly work: Work;
  readonly personIds: readonly PersonId[];
  readonly startsAt: EpochS;
  readonly endsAt: EpochS;
}

/** Somebody's decision: this person, this start, or both. */
export interface Pin {
  readonly work: Work;
  readonly personIds?: readonly PersonId[];
  readonly startsAt?: EpochS;
}

/** An assignment already shown to someone. */
export interface WorkPromise {
  readonly work: Work;
  readonly personIds: readonly PersonId[];
  readonly startsAt: EpochS;
}

/** The soft prices and habits of the planner; hard rules have no price. Defaults and ranges: `PARAMETERS`. */
export interface RoundParameters {
  /** Wanted gap between checks as a part of the due gap, where hands are not short: leaves room for being a little late. */
  readonly gapFrac: number;
  /** How early a check may start before its even place, as a part of the due gap. */
  readonly earlyFrac: number;
  /** What one changed promise may cost in weighted seconds of lateness, when re-planning. */
  readonly promiseS: number;
  /** Load above which a night is tight, though it may hold. */
  readonly tightFrac: number;
  /** A wait longer than this ends a round, s. */
  readonly roundWaitS: number;
  /** 1: an even load comes before short walks; 0: only walks count. */
  readonly evenly: number;
}

/** Default, least and greatest value of each parameter. Source: common practice, no source; tests/bench/rounds.mjs. */
export const PARAMETERS: Ranges<RoundParameters> = {
  gapFrac: { usual: 0.87, min: 0.5, max: 1 },
  earlyFrac: { usual: 0.2, min: 0, max: 0.5 },
  promiseS: { usual: 60, min: 0, max: 3600 },
  tightFrac: { usual: 0.8, min: 0.1, max: 1 },
  roundWaitS: { usual: 240, min: 0, max: 3600 },
  evenly: { usual: 1, min: 0, max: 1 },
};

/** One yard from `from` (now) until `until` (the end of the shift, or some hours ahead). */
export interface RoundProblem {
  readonly from: EpochS;
  readonly until: EpochS;
  readonly places: readonly string[];
  /** Walking from place to place, whole seconds, by index of `places`. */
  readonly walkS: readonly (readonly number[])[];
  readonly people: readonly RoundPerson[];
  readonly pits: readonly RoundPit[];
  readonly tasks: readonly RoundTask[];
  readonly frozen: readonly FrozenWork[];
  readonly pins: readonly Pin[];
  readonly promises: readonly WorkPromise[];
  readonly parameters?: Partial<RoundParameters>;
}

/** The value of a parameter in this problem. */
export const parameter = (problem: RoundProblem, name: keyof RoundParameters): number => parameterOf(PARAMETERS, problem.parameters, name);
