import { type EpochS, ok, refuse, type Result } from '../quantity/index.js';
import type { AirTemps, CookRefusal, DoneTime, FoodCook, Spread3 } from './cook.js';
import type { WrapKind } from './cut.js';
import { forecastDone } from './done-time.js';
import { airAt, LONGEST_COOK_S } from './roll.js';

/** What might be done, or might happen, to a cook. */
export type Change =
  | { readonly what: 'opened'; readonly at: EpochS; readonly forS: number; readonly outsideC: number }
  | { readonly what: 'slump'; readonly at: EpochS; readonly forS: number; readonly byK: number }
  | { readonly what: 'hotter'; readonly at: EpochS; readonly byK: number }
  | { readonly what: 'wrap'; readonly at: EpochS; readonly kind: WrapKind }
  | { readonly what: 'no-wrap' };

export interface WhatIf {
  readonly before: DoneTime;
  readonly after: DoneTime;
  /** Later (plus) or earlier (minus) than without the change, s; of the middle and of the time that nineteen of twenty keep. */
  readonly middleS: number | undefined;
  readonly lateS: number | undefined;
  readonly yieldFrac: Spread3;
}

/** Air falls most of the way to outside with the lid open and comes back with this time constant once it is shut, s. Source: our choice; common practice, no source. */
const BACK_S = 420;
const OPEN_SHARE = 0.65;
/** Spacing of the changed air, s. Source: our choice. */
const GRAIN_S = 120;

/** By how much the air differs at an instant after the change. */
function shiftK(change: Change, at: number, airC: number): number {
  if (change.what === 'hotter') return at >= change.at ? change.byK : 0;
  if (change.what === 'slump') {
    // Down within a quarter of its time, back within another: a fire sags and is brought back, it does not switch.
    const through = (at - change.at) / Math.max(1, change.forS);
    return through <= 0 || through >= 1 ? 0 : -change.byK * Math.min(1, 4 * through, 4 * (1 - through));
  }
  if (change.what !== 'opened' || at < change.at) return 0;
  const drop = OPEN_SHARE * (airC - change.outsideC);
  return at < change.at + change.forS ? -drop : -drop * Math.exp(-(at - change.at - change.forS) / BACK_S);
}

/** The air of a cook with a change in it. Source: our choice. */
export function changedAir(cook: FoodCook, change: Change): AirTemps {
  if (change.what === 'wrap' || change.what === 'no-wrap') return cook.air;
  const { air } = cook;
  const from = cook.onAt;
  const points = Math.ceil(LONGEST_COOK_S / GRAIN_S);
  const tempC = new Float64Array(points);
  const sdK = new Float64Array(points);
  for (let i = 0; i < points; i++) {
    const at = from + i * GRAIN_S;
    const airC = airAt(air, at);
    tempC[i] = airC + shiftK(change, at, airC);
    sdK[i] = air.sdK ? airAt(air, at, air.sdK) : 1.5;
  }
  return { from, stepS: GRAIN_S, tempC, sdK };
}

/**
 * What a change would do to the done time: the same possible cooks with and without it, so that the difference is the change's and
 * not chance's. Source: `forecastDone`.
 */
export function whatIf(cook: FoodCook, now: EpochS, change: Change): Result<WhatIf, CookRefusal | { readonly code: 'already-wrapped' }> {
  if (change.what === 'wrap' && cook.wrap?.how === 'at' && cook.wrap.at <= now) return refuse({ code: 'already-wrapped' });
  const wrap = change.what === 'wrap' ? { how: 'at' as const, at: change.at, kind: change.kind } : change.what === 'no-wrap' ? { how: 'never' as const } : cook.wrap;
  const before = forecastDone(cook, now);
  if (!before.ok) return before;
  const after = forecastDone({ ...cook, air: changedAir(cook, change), ...(wrap && { wrap }) }, now);
  if (!after.ok) return after;
  const at = (done: DoneTime, frac: number) => done.doneAt[Math.floor(frac * (done.doneAt.length - 1))];
  const between = (frac: number) => {
    const [was, is] = [at(before.value, frac), at(after.value, frac)];
    return was === undefined || is === undefined ? undefined : is - was;
  };
  return ok({ before: before.value, after: after.value, middleS: between(0.5), lateS: between(0.95), yieldFrac: after.value.hotYieldFrac });
}
