import type { CookId, EpochS, PitId } from '@stokehold/domain/quantity';
import { parameterOf, type Ranges } from '../search/index.js';

// What the planner of a pit's grates and its checker both know, and all that they share.

/** A stretch of one grate, from the fire end towards the stack end, and what it is like there in this wind with this fire. */
export interface PlacementZone {
  /** One name per pit, such as '1' or '1 upper'. */
  readonly id: string;
  /** 0 the lowest grate; a grate above drips on those below it. */
  readonly grate: number;
  /** Along the chamber from the fire end, m. */
  readonly fromM: number;
  readonly toM: number;
  /** Grate that food can cover, with room left for smoke between the pieces; above 0 m2. */
  readonly areaM2: number;
  /** What this stretch of grate bears, kg. */
  readonly bearsKg: number;
  readonly airTempC: number;
  /** Radiant heat from the fire on a side that faces it, W/m2. */
  readonly radiantWPerM2: number;
  /** One of the zones near the fire: while all of them are empty, splits may lie lengthwise in the firebox. */
  readonly fireEnd: boolean;
}

/** The pieces of one cook: alike, and they come and go together. */
export interface PlacementGroup {
  readonly id: CookId;
  readonly pieces: number;
  /** Grate that one piece covers, above 0 m2. */
  readonly pieceAreaM2: number;
  readonly pieceKg: number;
  readonly onAt: EpochS;
  /** When it is expected to come off. */
  readonly offAt: EpochS;
  /** Air temperature that its cook was planned for. */
  readonly wantedTempC: number;
  /** Radiant heat that its near side bears all cook long, W/m2. */
  readonly bearsWPerM2: number;
  /** Raw juices may fall on food of the same or a greater rank only: intact meat 1, ground or injected 2, poultry 3. */
  readonly dripRank: number;
  /** How much a piece without a place counts, 1 to 9. Default 1. */
  readonly weight?: number;
}

/** Soft prices, in seconds of a crew member's work; hard rules have no price. */
export interface PlacementParameters {
  /** One piece, one kelvin off the temperature it was planned for. */
  readonly perKelvinS: number;
  /** Turning one piece once. */
  readonly turnS: number;
  /** One piece that takes all the radiant heat it bears; half of it costs half. */
  readonly exposureS: number;
  /** Each zone more over which a cook is spread. */
  readonly spreadS: number;
  /** Two cooks in one zone that come off at different times: what stays is disturbed. */
  readonly disturbS: number;
  /** A piece on a lower grate that comes off before the one above it. */
  readonly reachS: number;
  /** An hour in which food lies at the fire end, so that only splits that lie across may be used. */
  readonly fireEndPerHourS: number;
  /** Heat above what it bears that a side may take before it is turned away, J/m2. */
  readonly doseJPerM2: number;
  /** A piece that would have to be turned more often than this has no place there, s. */
  readonly leastTurnS: number;
}

/** Default, least and greatest value of each parameter. Source: common practice, no source; our choice of its price. */
export const PLACEMENT_PARAMETERS: Ranges<PlacementParameters> = {
  perKelvinS: { usual: 12, min: 0, max: 3600 },
  turnS: { usual: 30, min: 0, max: 3600 },
  exposureS: { usual: 60, min: 0, max: 3600 },
  spreadS: { usual: 90, min: 0, max: 3600 },
  disturbS: { usual: 60, min: 0, max: 3600 },
  reachS: { usual: 120, min: 0, max: 3600 },
  fireEndPerHourS: { usual: 60, min: 0, max: 3600 },
  doseJPerM2: { usual: 4e6, min: 1e4, max: 1e9 },
  leastTurnS: { usual: 1800, min: 60, max: 86_400 },
};

/** One pit and what is to lie on it. */
export interface PlacementProblem {
  readonly pitId: PitId;
  /** What all its grates together bear, kg. */
  readonly bearsKg: number;
  readonly zones: readonly PlacementZone[];
  readonly groups: readonly PlacementGroup[];
  readonly parameters?: Partial<PlacementParameters>;
}

/** The value of a parameter in this problem. */
export const placementParameter = (problem: PlacementProblem, name: keyof PlacementParameters): number => parameterOf(PLACEMENT_PARAMETERS, problem.parameters, name);

/** Most cooks and zones of one pit. */
export const MOST_GROUPS = 12;
export const MOST_ZONES = 12;
