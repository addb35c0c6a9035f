import type { EpochS } from '../../quantity/index.js';

/** Publications that limits are of; each has its words on the screens. */
export type LimitCode = 'food-code' | 'fsis-appendix-a' | 'fsis-appendix-b';

/** A figure of a published code, as printed: never converted but once, from the °F, and compared unrounded. */
export interface Printed {
  readonly section: string;
  /** The words and figures of the source. */
  readonly printed: string;
  /** The code it is of, where that is not the code of its set. */
  readonly from?: { readonly code: LimitCode; readonly edition: string };
}
/** At or above a temperature for a time. */
export interface HoldRow {
  readonly tempF: number;
  readonly holdS: number;
}
/** One of these rows in full, all parts of the food; `rows` from cold to hot. */
export interface CookingLimit extends Printed {
  readonly rows: readonly HoldRow[];
}
/** The oven that goes with a roast's chart. */
export interface OvenRow {
  readonly oven: 'still-dry' | 'convection' | 'humid';
  readonly belowKg: number | undefined;
  readonly atLeastF?: number;
  readonly atMostF?: number;
}
export interface CoolingStage {
  readonly fromF: number;
  readonly toF: number;
  readonly withinS: number;
}
/** Stages of cooling; each counts from its own `fromF`. */
export interface CoolingLimit extends Printed {
  readonly stages: readonly CoolingStage[];
}
export interface KeepLimit extends Printed {
  readonly tempF: number;
}
export interface ReheatLimit extends Printed {
  readonly tempF: number;
  readonly holdS: number;
  readonly fromF: number;
  readonly withinS: number;
}
export interface TimeControlLimit extends Printed {
  readonly startsColdF: number;
  readonly startsHotF: number | undefined;
  readonly warmestF: number | undefined;
  readonly withinS: number;
}
export type CookingKind = 'intact' | 'ground' | 'poultry' | 'roast';

/** All limits of one code in one edition; a new edition is a new file. */
export interface LimitSet {
  readonly code: LimitCode;
  readonly edition: string;
  readonly cooking: Readonly<Record<CookingKind, CookingLimit>>;
  readonly roastOvens: Printed & { readonly rows: readonly OvenRow[] };
  readonly comeUp: Printed & { readonly fromF: number; readonly toF: number; readonly withinS: number };
  readonly hotHold: KeepLimit;
  readonly hotHoldRoast: KeepLimit;
  readonly coldHold: KeepLimit;
  readonly cooling: CoolingLimit;
  readonly reheat: ReheatLimit;
  readonly timeControl: TimeControlLimit;
  readonly timeControlCold: TimeControlLimit;
}

/** A temperature of one piece of food at one instant; between two of them it is taken as straight. */
export interface FoodTemp {
  readonly at: EpochS;
  readonly tempC: number;
}

export type LimitName = 'cooking' | 'roast-oven' | 'come-up' | 'hot-hold' | 'cold-hold' | 'cooling' | 'reheat' | 'time-control';
/** met: the record shows it. open: still possible. at-risk: will be missed unless something is done now. missed: the record shows it is too late. not-measured: no record. */
export type Outcome = 'met' | 'open' | 'at-risk' | 'missed' | 'not-measured';
/** What can still be done, in the order to try it. */
export type Remedy =
  | 'keep-cooking' | 'raise-heat' | 'reheat-to-limit' | 'cut-smaller' | 'ice-bath' | 'shallow-pans' | 'move-to-colder' | 'serve-now' | 'serve-hot' | 'recook' | 'discard' | 'measure-now'
  | 'ask-process-authority';

/** One record held against one limit: numbers and machine words, never a claim that food is fit. */
export interface Finding {
  readonly limit: LimitName;
  readonly code: LimitCode;
  readonly edition: string;
  readonly section: string;
  readonly outcome: Outcome;
  /** What was measured: the temperature in question and for how long. */
  readonly measured?: { readonly tempC: number; readonly durationS: number };
  readonly required: { readonly tempC: number; readonly durationS: number };
  /** When the limit runs out, if it is running. */
  readonly runsOutAt?: EpochS;
  /** Set when outcome is `missed` or `at-risk`. */
  readonly remedies: readonly Remedy[];
  /** An alarm of this finding cannot be shelved. */
  readonly shelvable: false;
}
