import { type EpochS, later, ok, refuse, type Result } from '../quantity/index.js';
import type { CookRefusal, FoodCook, WrapPlan } from './cook.js';
import type { Cut } from './cut.js';
import { doneByFrac, forecastDone } from './done-time.js';
import type { Learned } from './learn.js';

/** A piece in steady heat, for planning a night before it is lit. */
export interface SteadyCook {
  readonly cut: Cut;
  readonly pieceKg: number;
  readonly thicknessM?: number;
  readonly airTempC: number;
  /** How far the zone may run off it, K; absent: 4. */
  readonly airSdK?: number;
  readonly fireWPerM2?: number;
  /** Without a time: by the cut's rule, or never. */
  readonly wrap?: Extract<WrapPlan, { readonly how: 'by-rule' | 'never' }>;
  readonly learned?: Learned;
  readonly pressurePa?: number;
  readonly seed: number;
  /** Absent: 40. */
  readonly members?: number;
}
export interface CookingTime {
  /** Cooking times in order, s, each as likely as the other. */
  readonly cookS: readonly number[];
  readonly neverFrac: number;
  /** Weight at done over raw weight, middle. */
  readonly hotYieldFrac: number;
}

/**
 * How long a piece cooks in steady heat: what a planner asks many times. It starts whenever it goes on, so keep the answer.
 * Source: `forecastDone`.
 */
export function cookingTime(ask: SteadyCook): Result<CookingTime, CookRefusal> {
  const { airTempC, airSdK, members, ...cook } = ask;
  const onAt = 0 as EpochS;
  const done = forecastDone({ ...cook, members: members ?? 40, onAt, air: { from: onAt, stepS: 3600, tempC: [airTempC], sdK: [airSdK ?? 4] } }, onAt);
  return done.ok ? ok({ cookS: done.value.doneAt, neverFrac: done.value.neverFrac, hotYieldFrac: done.value.hotYieldFrac.p50 }) : done;
}

/** The time by which a share of such cooks is done, s; undefined when so many never are. Source: none needed. @param frac 0 to 1 */
export const cookSByFrac = (time: CookingTime, frac: number): number | undefined =>
  doneByFrac({ onAt: 0 as EpochS, doneAt: time.cookS as readonly EpochS[], neverFrac: time.neverFrac }, frac);

/** When the pit must be left for a service: no later than its rest allows, no earlier than rest and hold reach. Source: the cut's rest and hold. */
export function offWindow(cut: Cut, serviceAt: EpochS): { readonly earliest: EpochS; readonly latest: EpochS } {
  return { earliest: later(serviceAt, -(cut.rest.mostS + cut.hold.mostS)), latest: later(serviceAt, -cut.rest.leastS) };
}

export type ServiceRefusal =
  | CookRefusal
  | { readonly code: 'service-too-early'; readonly earliestAt: EpochS; readonly cookS: number; readonly restS: number; readonly why: 'cooking' | 'rest' }
  | { readonly code: 'never-done-in-this-heat'; readonly neverFrac: number };

/**
 * The earliest time at which this cook can be served, so that it is late no oftener than `lateFrac`, and what takes most of the
 * way there; refused with that time when the service is earlier. Source: `forecastDone`, the cut's rest.
 *
 * @param ask.serviceAt  absent: only asks for the earliest
 * @param ask.lateFrac   0.01 to 0.5
 */
export function earliestService(
  cook: FoodCook, ask: { readonly now: EpochS; readonly lateFrac: number; readonly serviceAt?: EpochS },
): Result<{ readonly earliestAt: EpochS; readonly doneAt: EpochS }, ServiceRefusal> {
  const done = forecastDone(cook, ask.now);
  if (!done.ok) return done;
  const doneAt = doneByFrac(done.value, 1 - ask.lateFrac);
  if (doneAt === undefined) return refuse({ code: 'never-done-in-this-heat', neverFrac: done.value.neverFrac });
  const from = Math.max(ask.now, cook.onAt);
  const ready = later(Math.max(doneAt, ask.now) as EpochS, cook.cut.rest.leastS);
  if (ask.serviceAt === undefined || ask.serviceAt >= ready) return ok({ earliestAt: ready, doneAt });
  const cookS = Math.max(0, doneAt - from);
  return refuse({ code: 'service-too-early', earliestAt: ready, cookS, restS: cook.cut.rest.leastS, why: cookS >= cook.cut.rest.leastS ? 'cooking' : 'rest' });
}
