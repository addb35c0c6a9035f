import type { EpochS, RandomStream } from '../quantity/index.js';
import type { Piece } from '../wood/index.js';
import type { Band, BedGrade, FirePosition, PitShape, SplitLeft, Surroundings, WoodOn } from './pit.js';

export type { Air, Band, BedGrade, FirePosition, PitShape, SplitLeft, Surroundings, Weather, WoodOn } from './pit.js';

// Signatures first; the bodies move into their own files.

/** What is believed of one fire at an instant. Opaque and never changed; `beliefToBytes` stores it. */
export interface FireBelief {
  readonly at: EpochS;
  readonly shape: PitShape;
}
export interface Spread { readonly p10: number; readonly p50: number; readonly p90: number }
export type FireMode = 'start-up' | 'burning' | 'bed-nearly-out' | 'out';
export interface FireEstimate {
  readonly at: EpochS;
  readonly mode: FireMode;
  readonly bedKg: Spread;
  readonly glowingBedKg: number;
  readonly bedGrade: BedGrade;
  readonly fullBedKg: number;
  readonly splitsBurning: number;
  readonly splitLeftFrac: number;
  /** p50 per zone of the pit, fire end first. */
  readonly zoneTempC: readonly number[];
  readonly chamberTempC: Spread;
  readonly airKgPerS: number;
  readonly bedLostRiskFrac: number;
  /** Dry wood turned to coals and flame, kg/s, mean of the last hour or so: what the splits still needed are reckoned from. */
  readonly dryKgPerS: number;
  readonly learned: { readonly lossFactor: number; readonly burnFactor: number; readonly coalFactor: number; readonly airFactor: number };
}
export type ProbeEnd = 'fire-end' | 'stack-end';
export interface FireForecast {
  readonly from: EpochS;
  readonly stepS: number;
  readonly chamberTempC: { readonly p10: readonly number[]; readonly p50: readonly number[]; readonly p90: readonly number[] };
  readonly bedKg: readonly number[];
  /** Seconds from `from` until the middle of the fan is outside the band; absent when it stays inside. */
  readonly leavesBandAfterS?: number;
}
export type DueWhy = 'band' | 'bed' | 'last-look' | 'start-up' | 'hot';
export interface Due { readonly earliestAt: EpochS; readonly dueAt: EpochS; readonly latestSafeAt: EpochS; readonly why: DueWhy }
export type AdviceAction = 'rake' | 'one' | 'two' | 'one-thin' | 'one-thick' | 'two-thin';
export type AdviceReasonCode =
  | 'bed-nearly-out' | 'bed-low' | 'below-band' | 'above-band' | 'split-has-life' | 'split-nearly-gone' | 'holds-band'
  | 'not-yet-lit' | 'nothing-known';
export interface AdviceChoice {
  readonly action: AdviceAction;
  readonly lookAgainS: number;
  /** Price of this choice, °F outside the band a minute and what else is weighed; only for comparing choices. */
  readonly cost: number;
  /** Kelvin-minutes expected outside the band over the next hour and a half. */
  readonly outOfBandKMin: number;
  readonly bedLostRiskFrac: number;
  /** If nothing more were done after it; absent when the band is held to the horizon. */
  readonly leavesBandAt?: EpochS;
}
export interface Advice {
  readonly madeAt: EpochS;
  readonly action: AdviceAction;
  readonly lookAgainS: number;
  readonly layFreshOnDoorSide: boolean;
  readonly reason: {
    readonly code: AdviceReasonCode; readonly bedKg: number; readonly fullBedKg: number; readonly tempC: number; readonly splitLeftFrac: number;
  };
  readonly leavesBandAt?: EpochS;
  /** Best of each other action, cheapest first. */
  readonly alternatives: readonly AdviceChoice[];
  readonly source: 'forecast' | 'pencil-rule';
  /** Pieces that the advice asks for and the cart does not hold. */
  readonly shortOnCart: number;
}
export interface WoodAtHand extends Piece { readonly onCart: number }
/** A simulated pit with parameters of its own. */
export interface PitTruth { readonly at: EpochS; readonly shape: PitShape }
export interface TruthSeen {
  readonly bed: BedGrade; readonly left: SplitLeft; readonly fireEndTempC: number; readonly stackEndTempC: number;
  readonly zoneTempC: readonly number[]; readonly chamberTempC: number; readonly bedKg: number; readonly glowingBedKg: number;
  readonly splitLifeSum: number; readonly splitsBurning: number; readonly bedLost: boolean;
}

export declare function kindle(start: {
  readonly shape: PitShape; readonly at: EpochS; readonly state: 'cold' | 'embers' | BedGrade; readonly chamberTempC?: number;
  readonly ambientTempC: number; readonly seed: number;
}): FireBelief;
export declare function advance(belief: FireBelief, span: Surroundings & { readonly to: EpochS }): FireBelief;
export declare function seeReadings(belief: FireBelief, seen: { readonly fireEndTempC?: number; readonly stackEndTempC?: number }): {
  readonly belief: FireBelief; readonly rejected: readonly ProbeEnd[]; readonly lost: readonly ProbeEnd[];
};
export declare function seeCheck(belief: FireBelief, seen: {
  readonly bed?: BedGrade; readonly left?: SplitLeft; readonly fireEndTempC?: number; readonly stackEndTempC?: number;
  readonly on: WoodOn; readonly position: FirePosition;
}): FireBelief;
export declare function beliefToBytes(belief: FireBelief): Uint8Array;
export declare function beliefFromBytes(bytes: Uint8Array): FireBelief;
export declare function estimateOf(belief: FireBelief): FireEstimate;
export declare function forecast(belief: FireBelief, ask: Surroundings & { readonly horizonS: number; readonly stepS: number; readonly band: Band }): FireForecast;
export declare function dueOf(belief: FireBelief, ask: Surroundings & { readonly band: Band; readonly lastLookAt: EpochS }): Due;
export declare function advise(belief: FireBelief, ask: Surroundings & {
  readonly band: Band; readonly wood: WoodAtHand; readonly effort?: 'quick' | 'full'; readonly seed: number;
}): Advice;
export declare function pencilRule(seen: { readonly splitLifeSum: number; readonly chamberTempC: number; readonly band: Band }): AdviceAction;
export declare function ruleA(seen: { readonly bed: BedGrade }): AdviceAction;
export declare function ruleB(seen: { readonly bed: BedGrade; readonly splitLifeSum: number; readonly chamberTempC: number; readonly band: Band }): AdviceAction;
export declare function igniteTruth(start: {
  readonly shape: PitShape; readonly at: EpochS; readonly ambientTempC: number; readonly random: RandomStream; readonly spread?: number;
}): PitTruth;
export declare function stepTruth(truth: PitTruth, span: Surroundings & { readonly to: EpochS }, on?: WoodOn & { readonly position?: FirePosition }): PitTruth;
export declare function gradeOf(truth: PitTruth): TruthSeen;
export declare function piecesOf(action: AdviceAction, standard: Piece): readonly Piece[];
export { dueMoved, heldDue } from './due-held.js';
export { isAnotherFire, isLit, kindlingOf } from './lit.js';
export type { CarriedBefore, Kindling } from './lit.js';
export { firePositionOf } from './position.js';
