import type { FirePosition } from '@stokehold/domain/fire';
import type { Cut } from '@stokehold/domain/food';
import type { CookId, EpochS, PitId, ServiceId } from '@stokehold/domain/quantity';
import type { CrewStretch } from '../cook-plan/index.js';

/** A pit as it stands and burns. */
export interface LoadingPit {
  readonly id: PitId;
  readonly chamberLengthM: number;
  readonly chamberDiameterM: number;
  readonly fireboxLengthM: number;
  readonly fireboxDiameterM: number;
  readonly zoneLengthsM: readonly number[];
  readonly band: { readonly lowC: number; readonly highC: number };
  readonly lit: boolean;
  /** How far each zone runs off the chamber's mean in this wind, K; empty where nothing is known. */
  readonly zoneShiftK: readonly number[];
  readonly position: FirePosition;
  /** Wood lies in the yard or on its cart that fits this firebox only lengthwise: a fire end free of food lets it burn. */
  readonly longerWood: boolean;
}

/** A cook that is to come or on. */
export interface LoadingCook {
  readonly id: CookId;
  readonly serviceId: ServiceId | null;
  readonly cut: Cut;
  readonly pieces: number;
  readonly weightKg: number;
  /** Where most of it lies, since when; absent while it stands beside the pits. */
  readonly on?: { readonly pitId: PitId; readonly at: EpochS };
  /** Its forecast: one in ten, half, nine in ten, nineteen in twenty are done by then. Absent without a forecast. */
  readonly doneAt?: readonly [p10: EpochS, p50: EpochS, p90: EpochS, p95: EpochS];
  readonly comesOffAt?: EpochS;
}

/** All that the loading and the cook plan of a yard are made from. */
export interface LoadingFacts {
  readonly now: EpochS;
  readonly pits: readonly LoadingPit[];
  readonly cooks: readonly LoadingCook[];
  readonly services: readonly { readonly id: ServiceId; readonly readyBy: EpochS }[];
  readonly crew: readonly CrewStretch[];
  readonly woodCentsPerKg: number;
  readonly crewCentsPerHour: number;
  readonly seed: number;
}

/** Of a zone's grate, what food can cover so that smoke passes between the pieces. Source: common practice, no source. */
export const COVERED_FRAC = 0.8;
/** What a grate of heavy mesh bears, kg per m2. Source: our choice; a yard with another grate weighs less on it. */
export const BEARS_KG_PER_M2 = 150;
