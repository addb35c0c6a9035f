import type { EpochS, LotId, PitId } from '@stokehold/domain/quantity';
import { parameterOf, type Ranges } from '../search/index.js';

// What the planner and its checker both know, and all that they share. Whole seconds, whole joules, whole splits; money in whole mills,
// a tenth of a cent, so that a step to the stack has a price too.

/** Wood of one lot lying in one place: in the stack, or on a pit's cart. */
export interface WoodPile {
  readonly id: string;
  readonly lotId: LotId;
  readonly place: string;
  /** The cart it lies on; that pit need not haul it. */
  readonly cartOf?: PitId;
  /** Whole splits, 0 or more. */
  readonly pieces: number;
}

export interface PullLot {
  readonly id: LotId;
  readonly species: string;
  /** One split with its water, kg. */
  readonly pieceKg: number;
  readonly priceMills: number;
  /** Thousandths of moisture above good wood; 0 for dry wood. */
  readonly wetPoints: number;
  /** What it costs to leave an older ready lot lying and open this one: first in, first ready. */
  readonly laterMills: number;
  /** Left over from trimming: for lighting and for after the wrap. Whoever lights or tends takes them along: no haul, no room on a cart. */
  readonly offcut?: boolean;
}

/** How a lot may be burned in a pit; without an entry it may not: too wet, too long, or somebody decided so. */
export interface PullWay {
  readonly pitId: PitId;
  readonly lotId: LotId;
  /** As it is: heat of one split that its fire gets, J, and how it lies. */
  readonly asIs?: { readonly heatJ: number; readonly lies: 'across' | 'lengthwise' };
  /** Trimmed to lie across: what is left of the heat, and what the saw costs. */
  readonly trimmed?: { readonly heatJ: number; readonly trimMills: number; readonly cuts: number; readonly offcuts: number };
}

/** The kitchen's wish for an hour: of the heat, so much from these species. */
export interface SpeciesShare {
  readonly species: readonly string[];
  readonly leastFrac: number;
  readonly mostFrac: number;
}

/** One hour, or a part of one, of a pit's fire. */
export interface PullHour {
  readonly from: EpochS;
  readonly until: EpochS;
  /** Heat of wood that the fire will want, and one deviation of it; a fire that runs high runs high all night. */
  readonly needJ: number;
  readonly spreadJ: number;
  /** Food lies at the fire end: the fire must stay by the door, so wood lies across. */
  readonly across: boolean;
  /** Lighting, or all food is wrapped: offcuts will do. */
  readonly offcuts: boolean;
  readonly mix: readonly SpeciesShare[];
}

export interface PullPit {
  readonly id: PitId;
  readonly place: string;
  /** What its cart takes, kg. */
  readonly cartKg: number;
  /** In order of time, without gaps or overlap. */
  readonly hours: readonly PullHour[];
}

/** Splits of a lot that a pit was told it would get: another lot costs. */
export interface PullPromise {
  readonly pitId: PitId;
  readonly lotId: LotId;
  readonly pieces: number;
}

/** Soft prices and habits; hard rules (stock, fit, dryness, the cart's load) have no price. Defaults and ranges: `PARAMETERS`. */
export interface PullParameters {
  /** Heat carried beyond the need, in deviations. */
  readonly reserveDeviations: number;
  /** A megajoule of the need that is not there. */
  readonly shortMillsPerMj: number;
  /** A megajoule of the reserve that is not there. */
  readonly reserveMillsPerMj: number;
  /** A megajoule of the wrong species. */
  readonly mixMillsPerMj: number;
  /** One thousandth of moisture above good wood, for each split. */
  readonly wetMills: number;
  /** One thousandth of the wettest pit's mean above good wood: no pit is left with the wet lot. */
  readonly fairMills: number;
  /** A second on the way with a cart, both ways and for its load. */
  readonly walkMillsPerS: number;
  /** Splits that a hand cart takes in one way. */
  readonly piecesPerWay: number;
  /** Each split of a lot that its pit was not told it would get, once it was told of any. */
  readonly changeMills: number;
  /** Seconds to lay one split on a cart and take it off. */
  readonly handlingS: number;
  /** How long before it must be there the haul is due, s. */
  readonly haulAheadS: number;
}

/** Default, least and greatest value of each parameter. Source: common practice, no source; tests/bench/wood.mjs. */
export const PARAMETERS: Ranges<PullParameters> = {
  reserveDeviations: { usual: 1.2816, min: 0, max: 4 },
  shortMillsPerMj: { usual: 5000, min: 100, max: 1e6 },
  reserveMillsPerMj: { usual: 300, min: 0, max: 1e5 },
  mixMillsPerMj: { usual: 60, min: 0, max: 1e5 },
  wetMills: { usual: 4, min: 0, max: 1000 },
  fairMills: { usual: 200, min: 0, max: 1e5 },
  walkMillsPerS: { usual: 6, min: 0, max: 1000 },
  piecesPerWay: { usual: 20, min: 1, max: 500 },
  changeMills: { usual: 150, min: 0, max: 1e5 },
  handlingS: { usual: 8, min: 0, max: 300 },
  haulAheadS: { usual: 1800, min: 0, max: 4 * 3600 },
};

/** The wood of one yard from `from` (now) until the last fire ends. */
export interface PullProblem {
  readonly from: EpochS;
  readonly places: readonly string[];
  /** Walking from place to place, whole seconds, by index of `places`. */
  readonly walkS: readonly (readonly number[])[];
  readonly lots: readonly PullLot[];
  readonly piles: readonly WoodPile[];
  readonly pits: readonly PullPit[];
  readonly ways: readonly PullWay[];
  readonly promises: readonly PullPromise[];
  readonly parameters?: Partial<PullParameters>;
}

/** The value of a parameter in this problem. */
export const parameter = (problem: PullProblem, name: keyof PullParameters): number => parameterOf(PARAMETERS, problem.parameters, name);
