import type { CookId, EpochS, PitId } from '@stokehold/domain/quantity';

/** Why a zone was not, or could not be, taken. */
export type ZoneHindrance = 'scorches' | 'too-heavy' | 'drips' | 'dripped-on' | 'full';

/** What speaks for the place; the first that holds. */
export type PlacingReason = 'only-place' | 'cooler-side' | 'right-heat' | 'fire-end-free' | 'least-price';

/** A zone that a piece could lie in instead, and what one piece there would cost more, s; a hindrance where it could not. */
export interface Elsewhere {
  readonly zoneId: string;
  readonly moreS?: number;
  readonly hindrance?: ZoneHindrance;
}

export interface Placing {
  readonly cookId: CookId;
  readonly zoneId: string;
  readonly pieces: number;
  readonly airTempC: number;
  readonly radiantWPerM2: number;
  /** Off what it was planned for, K; negative is cooler. */
  readonly offByK: number;
  readonly comesOffAt: EpochS;
  /** Turn the side that faces the fire away every so often, s; absent when it bears the heat. */
  readonly turnEveryS?: number;
  readonly reason: PlacingReason;
  readonly elsewhere: readonly Elsewhere[];
}

export interface Unplaced {
  readonly cookId: CookId;
  readonly pieces: number;
  readonly hindrances: readonly { readonly zoneId: string; readonly hindrance: ZoneHindrance }[];
}

/** Turn these pieces at this time; or let pieces of two zones change places, so that all get the same heat. */
export type Handling =
  | { readonly kind: 'turn'; readonly at: EpochS; readonly cookId: CookId; readonly zoneId: string; readonly pieces: number }
  | { readonly kind: 'swap'; readonly at: EpochS; readonly cookId: CookId; readonly zoneId: string; readonly withZoneId: string; readonly pieces: number };

/** A stretch of time in which nothing lies at the fire end: splits may lie lengthwise. */
export interface FireEndFree {
  readonly from: EpochS;
  readonly until: EpochS;
}

/** What a placement is worth: no price buys a place for a piece. */
export interface PlacementLevels {
  /** Pieces without a place x weight. */
  readonly unplaced: number;
  readonly priceS: number;
}

export interface PlacementPlan {
  readonly pitId: PitId;
  /** In order of cook, then of zone in the problem. */
  readonly placings: readonly Placing[];
  readonly unplaced: readonly Unplaced[];
  /** In order of time. */
  readonly handlings: readonly Handling[];
  /** From the first cook on until the last off. */
  readonly fireEndFree: readonly FireEndFree[];
  readonly levels: PlacementLevels;
  /** No placement can be better than this. */
  readonly bound: PlacementLevels;
  /** True when every better placement is shown not to exist. */
  readonly proven: boolean;
}

/** Pieces by cook and zone and nothing more: what a hand may move. */
export type Lies = readonly { readonly cookId: CookId; readonly zoneId: string; readonly pieces: number }[];
