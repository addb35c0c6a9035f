import type { CookId, EpochS, PitId, ServiceId } from '@stokehold/domain/quantity';
import type { CookStart } from './problem.js';

/** Why a cook is where and when it is; the first that holds. */
export type CookReason = 'fixed' | 'only-way' | 'shares-a-fire' | 'least-cost' | 'as-early-as-can-be';

export interface PlannedStart extends CookStart {
  readonly serviceId: ServiceId;
  readonly tempC: number;
  readonly wrapAt?: EpochS;
  /** It may go on no later than this and keep its share of the chance; before `onAt` when it is at risk. */
  readonly latestOnAt: EpochS;
  /** Off by here with the planned chance; the pit is counted as taken until then. */
  readonly offBy: EpochS;
  /** Half of the times are shorter. */
  readonly likelyOffAt: EpochS;
  /** From when to when it may be off the pit: earlier it is kept too long, later it does not rest. */
  readonly offNotBefore: EpochS;
  readonly offNotAfter: EpochS;
  /** Chance in a million that it is off too late. */
  readonly lateMillionths: number;
  /** Kept longer than it should be when it comes out short, s. */
  readonly keptTooLongS: number;
  readonly reason: CookReason;
}

export interface PlannedBurn {
  readonly pitId: PitId;
  readonly tempC: number;
  /** Absent for a pit that burns already. */
  readonly lightAt?: EpochS;
  readonly firstOnAt: EpochS;
  readonly lastOffBy: EpochS;
  readonly burnS: number;
  readonly woodKg: number;
  readonly woodCents: number;
  readonly crewS: number;
  /** Most of the grate that is covered at one time, 0 to 1. */
  readonly fullestFrac: number;
}

/** What would lower a service's chance of being late; each alone, the rest of the plan as it is. */
export interface Help {
  readonly code: 'earlier' | 'hotter' | 'wrap' | 'another-pit';
  readonly cookId: CookId;
  readonly start: CookStart;
  /** Chance in a million that the service is late then, and what it costs more. */
  readonly lateMillionths: number;
  readonly moreCents: number;
}

export interface ServiceOutlook {
  readonly serviceId: ServiceId;
  readonly readyBy: EpochS;
  readonly lateMillionths: number;
  readonly atRisk: boolean;
  /** The time it could be promised for with the wanted chance, as planned. Absent while a cook of it has no place. */
  readonly promisableAt?: EpochS;
  readonly help: readonly Help[];
}

export interface CookUnplaced {
  readonly cookId: CookId;
  readonly serviceId: ServiceId;
  /** Every pit, and the first thing that stands against it. */
  readonly hindrances: readonly { readonly pitId: PitId; readonly hindrance: 'not-allowed' | 'no-such-heat' | 'too-heavy' | 'too-large' | 'full' | 'no-time' }[];
}

/** One hour of the crew: seconds of work asked, and seconds of people that may be planned. */
export interface CrewHour {
  readonly from: EpochS;
  readonly neededS: number;
  readonly thereS: number;
}

/** What a plan is worth, in strict order: no amount of a later level buys one unit of an earlier. */
export interface CookPlanLevels {
  readonly unplaced: number;
  /** Chance of being late over each cook's share of its service's limit, summed, millionths. */
  readonly lateMillionths: number;
  readonly keptTooLongS: number;
  /** Work beyond what the people there can be planned for, summed over hours, s. */
  readonly crewOverS: number;
  readonly costCents: number;
}

export interface CookPlan {
  /** In order of time on, then of id. */
  readonly starts: readonly PlannedStart[];
  readonly unplaced: readonly CookUnplaced[];
  readonly burns: readonly PlannedBurn[];
  readonly services: readonly ServiceOutlook[];
  readonly crewHours: readonly CrewHour[];
  readonly levels: CookPlanLevels;
  /** No plan that places every cook in its time costs less. */
  readonly boundCents: number;
  /** The plan costs its bound: there is no better one. */
  readonly proven: boolean;
  readonly iterations: number;
}
