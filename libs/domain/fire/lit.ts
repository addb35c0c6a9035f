import { type EpochS, HOUR_S, later, MINUTE_S } from '../quantity/index.js';
import type { FireMode } from './estimate.js';
import type { PitLearned } from './learned.js';
import type { Band, BedGrade } from './pit.js';

/** What tells of a fire that was carried before whether it still burns. */
export interface CarriedBefore {
  readonly believedAt: EpochS;
  readonly mode: FireMode;
}

/** A fire that nobody fed for so long is out: the model's bed is lost after about 175 minutes without wood. Source: our fit, P8 of tests/published/common-practice.test.ts. */
const UNFED_S = 3 * HOUR_S;
/** Until so long after lighting a fire nobody has looked at is believed as it was lit; later, somebody must have kept it. Source: our rule. */
const START_UP_S = 90 * MINUTE_S;

/** Whether a fire burned on into this light-up time, or a new one is lit at it. */
const goesOn = (before: CarriedBefore, lightAt: EpochS): boolean =>
  before.believedAt >= lightAt || (before.mode !== 'out' && lightAt - before.believedAt < UNFED_S);

/**
 * Whether a pit's fire burns: its light-up time has come, or it was lit earlier and burns on.
 *
 * @param before  what was believed last, absent for a pit whose fire was never carried
 */
export const isLit = (lightAt: EpochS, before: CarriedBefore | undefined, now: EpochS): boolean =>
  now >= lightAt || (before !== undefined && before.mode !== 'out' && goesOn(before, lightAt));

/** Whether what was believed last belongs to a fire that is out, and another one was lit since. */
export const isAnotherFire = (lightAt: EpochS, before: CarriedBefore | undefined): boolean => before === undefined || !goesOn(before, lightAt);

/** How a fire begins that nobody has looked at yet. */
export interface Kindling {
  readonly at: EpochS;
  readonly state: 'cold' | BedGrade;
  readonly chamberTempC?: number;
  /** What earlier nights taught of this pit; without it the pit is as set up. */
  readonly learned?: PitLearned;
}

/**
 * The first belief of a fire: cold at its light-up time; where that is long past, somebody kept the fire all the while, so a
 * fair bed in the middle of the band.
 */
export function kindlingOf(lightAt: EpochS, band: Band, now: EpochS): Kindling {
  if (now <= later(lightAt, START_UP_S)) return { at: lightAt, state: 'cold' };
  return { at: now, state: 'fair', chamberTempC: (band.lowC + band.highC) / 2 };
}
