import type { EpochS, PersonId } from '@stokehold/domain/quantity';
import type { Work } from './problem.js';

/** Why a person may not do a piece of work; the first rule that forbids it. */
export type Hindrance = {
  readonly personId: PersonId;
  readonly code: 'skill' | 'pinned-elsewhere' | 'not-on-shift' | 'absent' | 'on-break' | 'busy' | 'too-far';
  /** What they are busy with, where that is the reason. */
  readonly work?: Work;
};

/** Why an assignment is as it is: nearest of those free, pinned, frozen, the only one with the skill... */
export interface AssignmentReason {
  readonly code: 'only-one-able' | 'nearest' | 'evens-load' | 'pinned' | 'frozen' | 'own-break';
  /** Why it starts after due or past latest: who was hindered by what. Empty when it is on time. */
  readonly late: readonly Hindrance[];
}

export interface UnplacedReason {
  readonly code: 'nobody-on-shift' | 'nobody-with-skill' | 'no-two-together' | 'no-time-left' | 'pin-in-the-way';
  readonly hindrances: readonly Hindrance[];
  /** The least that would admit it. */
  readonly relax: { readonly code: 'one-person-more' | 'teach-skill' | 'later-latest' | 'drop-pin'; readonly byS?: number; readonly skill?: string };
}

export interface Assignment {
  readonly work: Work;
  /** In order of id; as many as the work needs. */
  readonly personIds: readonly PersonId[];
  readonly startsAt: EpochS;
  readonly endsAt: EpochS;
  readonly dueAt?: EpochS;
  /** For a check its latest safe, for a task or break its latest start. */
  readonly latestSafeAt?: EpochS;
  /** Latest safe minus start; negative when it is past. */
  readonly slackS?: number;
  /** Start after due, s; 0 when on time. */
  readonly lateS: number;
  /** Start after latest safe (latest), s; 0 when before. */
  readonly pastLatestS: number;
  /** Start before earliest, s: flagged, priced like lateness. */
  readonly earlyS: number;
  readonly reason: AssignmentReason;
}

/**
 * What a plan is worth, in strict order from first to last: no amount of a later level buys one unit of an earlier.
 * Only while promises are kept, lateness and promises share a level at the rate `promiseS`.
 */
export interface Levels {
  /** Seconds past latest safe, over all checks and over each fire's time after its last check. */
  readonly unsafeS: number;
  readonly unsafeChecks: number;
  /** Tasks and breaks that found no place. */
  readonly unplaced: number;
  /** Tasks and breaks begun after their latest, s. */
  readonly pastLatestS: number;
  /** Checks after due or before earliest, seconds x weight of the pit. */
  readonly lateWeightedS: number;
  /** Tasks after due, seconds x weight. */
  readonly tasksLateS: number;
  /** Largest less smallest work by shift length, in millionths. */
  readonly uneven: number;
  /** The same of unpleasant work. */
  readonly unevenUnpleasant: number;
  /** Changed promises, in half units: a person within 30 min 10, within 2 h 4, later 2; a start by over 5 min half of it. */
  readonly promises: number;
  readonly walkS: number;
}

/** What can be said before planning: no plan can be better than this. */
export interface Bound {
  /** Seconds past latest safe that the walk to the first checks makes unavoidable. */
  readonly unsafeS: number;
  /** Weighted seconds after due that the walk to the first checks makes unavoidable. */
  readonly lateWeightedS: number;
  /** People needed for no lateness, by work alone; and for no check past latest safe. */
  readonly peopleForDue: number;
  readonly peopleForSafe: number;
  /** People needed if every pit belonged to one person, pits given out largest first. */
  readonly peopleIfPitsBound: number;
  /** In a plan that keeps every fire and does every task, the busiest person works at least this long, s. */
  readonly busiestS: number;
}

export interface RoundPlan {
  /** In order of start, then of work key. */
  readonly assignments: readonly Assignment[];
  readonly unplaced: readonly { readonly work: Work; readonly reason: UnplacedReason }[];
  readonly levels: Levels;
  readonly bound: Bound;
}

/** A plan and how it was found: the same problem, seed and iterations give the same `planHash`. */
export interface PlanResult {
  readonly plan: RoundPlan;
  readonly seed: number;
  readonly iterations: number;
  /** The stop rule, the caller's cancel, or there was nothing that could be moved. */
  readonly endedBy: 'stop' | 'cancelled' | 'nothing-to-move';
  readonly problemHash: number;
  readonly planHash: number;
  /** Levels of the dispatch the search began with. */
  readonly dispatched: Levels;
  /** Weighted seconds of lateness above the bound; 0 proves the plan best at this level. */
  readonly gapWeightedS: number;
}

export interface PlanChange {
  readonly code: 'new' | 'gone' | 'moved' | 'other-person' | 'moved-other-person';
  readonly work: Work;
  readonly personsBefore: readonly PersonId[];
  readonly personsAfter: readonly PersonId[];
  readonly startBefore?: EpochS;
  readonly startAfter?: EpochS;
  readonly because: ChangeCause;
}

/** Why an assignment changed. */
export interface ChangeCause {
  readonly code: 'person-not-there' | 'due-moved' | 'work-before-ran-over' | 'made-room' | 'new-work' | 'not-needed' | 'no-place';
  readonly personId?: PersonId;
  /** The work that ran over or that room was made for. */
  readonly work?: Work;
}

export interface Repair extends PlanResult {
  readonly changes: readonly PlanChange[];
}

/** One hour of the night, for everybody (`skill` absent) or for one skill. */
export interface LoadHour {
  readonly fromAt: EpochS;
  readonly untilAt: EpochS;
  readonly skill?: string;
  /** Checks at their due gap with the walk to them, and tasks, s. */
  readonly neededS: number;
  /** The same with checks at their latest safe gap and no walking, s. */
  readonly neededForSafeS: number;
  /** People there, less breaks and absences, s. */
  readonly presentS: number;
  /** needed / present; where nobody is present, needed against one person. */
  readonly loadFrac: number;
  /** More is needed than present: something will be late. */
  readonly fails: boolean;
  readonly tight: boolean;
  /** Whole people missing for a load of 1. */
  readonly missingPeople: number;
  readonly mend: LoadMend;
}

export interface LoadMend {
  readonly code: 'none' | 'move-tasks' | 'call-people' | 'bank-fires-or-call';
  readonly people: number;
}

/** A run of one person's work without a wait of more than a few minutes; derived, not planned. */
export interface Round {
  readonly personId: PersonId;
  readonly startsAt: EpochS;
  readonly endsAt: EpochS;
  readonly assignments: readonly Assignment[];
}
