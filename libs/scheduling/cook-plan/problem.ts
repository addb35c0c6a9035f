import type { CookId, EpochS, PitId, ServiceId } from '@stokehold/domain/quantity';
import { parameterOf, type Ranges } from '../search/index.js';

// What the cook planner and its checker both know, and all that they share. Whole seconds and cents; chances as counts.

/** A temperature that a pit may be held at through its whole burn, and what an hour of it takes. */
export interface PitHeat {
  readonly tempC: number;
  readonly woodKgPerHour: number;
  readonly woodCentsPerHour: number;
}

export interface CookPit {
  readonly id: PitId;
  /** Grate that food can cover, all zones together, m2; and what they bear, kg. */
  readonly areaM2: number;
  readonly bearsKg: number;
  readonly heats: readonly PitHeat[];
  /** From lighting until food may go on, s. */
  readonly warmUpS: number;
  /** Fire checks of this pit keep one person busy for so many seconds an hour. */
  readonly crewSPerHour: number;
  /** Not lit before, food off by. Default: the problem's `from` and `until`. */
  readonly usableFrom?: EpochS;
  readonly usableUntil?: EpochS;
  /** It burns already, at one of its heats: food may go on at once. */
  readonly burningAtC?: number;
}

/**
 * One way to cook it: at this temperature, wrapped or not. The times it may take are equally likely, sorted, from a
 * forecast; when there are fewer times than `outOf`, the rest never gets done this way.
 */
export interface CookWay {
  readonly tempC: number;
  /** Wrapped so long after it goes on, s; absent: not wrapped. */
  readonly wrapAfterS?: number;
  readonly takesS: readonly number[];
  readonly outOf: number;
  /** What this way costs more than the barest, cents: wrap and its work. */
  readonly cents: number;
  /** Only on this pit: what was learned there. */
  readonly pitId?: PitId;
}

/** Where and how a cook goes on: a fact once it is on, or somebody's decision. */
export interface CookStart {
  readonly cookId: CookId;
  readonly pitId: PitId;
  /** Index into the cook's ways. */
  readonly way: number;
  readonly onAt: EpochS;
}

export interface PlannedCook {
  readonly id: CookId;
  readonly serviceId: ServiceId;
  /** All pieces together, m2 of grate and kg. */
  readonly areaM2: number;
  readonly massKg: number;
  readonly pieceKg: number;
  readonly ways: readonly CookWay[];
  /** It must be off so long before its service, s; and may be off no longer before it (rest and hold together). */
  readonly restLeastS: number;
  readonly keepMostS: number;
  /** Work of one person, s. */
  readonly loadS: number;
  readonly wrapS: number;
  readonly unloadS: number;
  /** Pits that may take it. Default: all. */
  readonly pitIds?: readonly PitId[];
  readonly fixed?: Omit<CookStart, 'cookId'>;
}

export interface PlannedService {
  readonly id: ServiceId;
  readonly readyBy: EpochS;
}

/** So many people are there from, inclusive, until, exclusive. */
export interface CrewStretch {
  readonly from: EpochS;
  readonly until: EpochS;
  readonly people: number;
}

export interface CookPlanParameters {
  /** Chance that a service may be late; a cook of a service of n gets an n-th of it, whatever their dependence. */
  readonly lateFrac: number;
  /** Share of the cooks' times that may come out so short that the food is kept too long. */
  readonly shortFrac: number;
  /** Cooks start, and pits are counted, in steps of so many seconds. */
  readonly stepS: number;
  /** Of their time, people can be planned for so much; the rest is walking, breaks and surprises. */
  readonly crewFrac: number;
  readonly crewCentsPerHour: number;
  /** Keeping one cook hot beyond its rest for an hour. */
  readonly holdCentsPerHour: number;
}

/** Default, least and greatest value of each parameter. Source: common practice, no source; prices are a yard's own. */
export const COOK_PLAN_PARAMETERS: Ranges<CookPlanParameters> = {
  lateFrac: { usual: 0.05, min: 0, max: 0.5 },
  shortFrac: { usual: 0.05, min: 0, max: 0.5 },
  stepS: { usual: 900, min: 60, max: 7200 },
  crewFrac: { usual: 0.8, min: 0.1, max: 1 },
  crewCentsPerHour: { usual: 2000, min: 0, max: 100_000 },
  holdCentsPerHour: { usual: 100, min: 0, max: 100_000 },
};

/** One yard from `from` (now) until `until`. */
export interface CookPlanProblem {
  readonly from: EpochS;
  readonly until: EpochS;
  readonly pits: readonly CookPit[];
  readonly cooks: readonly PlannedCook[];
  readonly services: readonly PlannedService[];
  readonly crew: readonly CrewStretch[];
  readonly parameters?: Partial<CookPlanParameters>;
}

/** The value of a parameter in this problem. */
export const cookPlanParameter = (problem: CookPlanProblem, name: keyof CookPlanParameters): number => parameterOf(COOK_PLAN_PARAMETERS, problem.parameters, name);

export const MOST_PITS = 24;
export const MOST_COOKS = 120;
