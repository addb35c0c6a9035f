import type { EpochS } from '../quantity/index.js';
import type { Cut, WrapKind } from './cut.js';
import type { Learned } from './learn.js';

/** Temperature of the air where the food lies, measured so far and forecast from there; before its start and past its end the nearest value holds. */
export interface AirTemps {
  readonly from: EpochS;
  /** Spacing, s. */
  readonly stepS: number;
  readonly tempC: ArrayLike<number>;
  /** How far each may be off (standard deviation, K); absent: 1.5 K. */
  readonly sdK?: ArrayLike<number>;
}
/** What a probe in the meat showed. */
export interface CoreReading {
  readonly at: EpochS;
  readonly tempC: number;
}
/** By the cut's rule, not at all, or at a time: done already or meant. */
export type WrapPlan = { readonly how: 'by-rule' } | { readonly how: 'never' } | { readonly how: 'at'; readonly at: EpochS; readonly kind: WrapKind };

/** One cook: equal pieces of one cut in one zone. */
export interface FoodCook {
  readonly cut: Cut;
  readonly pieceKg: number;
  /** Thickest section, measured; absent: from the weight. */
  readonly thicknessM?: number;
  /** When it went on, or will. */
  readonly onAt: EpochS;
  /** Absent: the cut's. */
  readonly startTempC?: number;
  readonly air: AirTemps;
  /** Heat from the fire on the side that faces it, W/m2; absent: none. */
  readonly fireWPerM2?: number;
  /** Absent: by the cut's rule. */
  readonly wrap?: WrapPlan;
  /** Any order; each is judged before it is used. Absent: none. */
  readonly readings?: readonly CoreReading[];
  /** What earlier cooks of this cut and this pit taught; absent: nothing yet. */
  readonly learned?: Learned;
  /** Air pressure of the place, Pa; absent: sea level. */
  readonly pressurePa?: number;
  /** Same seed, same forecast; change nothing but the seed and it moves by sampling noise only. */
  readonly seed: number;
  /** Possible cooks that stand for what is not known; 20 to 400, absent: 200. */
  readonly members?: number;
}

/** What became of a reading. Only `used` and `probe-moved` ones correct the forecast. */
export type ReadingVerdict = 'used' | 'probe-moved' | 'reads-pit-air' | 'reads-outside-air' | 'hotter-than-its-air' | 'jumped' | 'before-on';

export type Phase = 'warming' | 'plateau' | 'rising' | 'done';

/** Three figures of a spread: one in ten lies below p10, one in ten above p90. */
export interface Spread3 {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/** When a cook will be done, as a distribution. Read it with `doneByFrac` and `chanceDoneBy`. */
export interface DoneTime {
  readonly onAt: EpochS;
  /** Every member's time in order, each as likely as the other; those that never get there are left out and counted in `neverFrac`. */
  readonly doneAt: readonly EpochS[];
  /** Share that is not done within 36 h in this heat. */
  readonly neverFrac: number;
  /** Middle estimate of what it is doing at `now`. */
  readonly phase: Phase;
  /** Core temperature from `from` on, every `stepS`. */
  readonly core: { readonly from: EpochS; readonly stepS: number; readonly p10: readonly number[]; readonly p50: readonly number[]; readonly p90: readonly number[] };
  /** When the wrap falls due, seconds after `onAt`; absent without one. */
  readonly wrapAfterS?: Spread3;
  /** Weight at done over raw weight. */
  readonly hotYieldFrac: Spread3;
  /** In the order of `readings`. */
  readonly verdicts: readonly ReadingVerdict[];
}

export type CookRefusal =
  | { readonly code: 'weight-missing' }
  | { readonly code: 'piece-weight-out-of-range'; readonly pieceKg: number; readonly min: number; readonly max: number }
  | { readonly code: 'thickness-out-of-range'; readonly thicknessM: number; readonly min: number; readonly max: number }
  | { readonly code: 'air-missing' }
  | { readonly code: 'air-out-of-range'; readonly tempC: number; readonly min: number; readonly max: number }
  | { readonly code: 'start-out-of-range'; readonly tempC: number; readonly min: number; readonly max: number };
