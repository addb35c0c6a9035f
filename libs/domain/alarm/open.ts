import type { EpochS } from '../quantity/index.js';
import type { AlarmCondition } from './conditions.js';
import type { Standing } from './state.js';

/** An alarm that is not back to normal. */
export interface OpenAlarm extends AlarmCondition, Standing {
  readonly id: string;
  /** When its condition began, the last time it did. */
  readonly raisedAt: EpochS;
  readonly acknowledgedAt: EpochS | undefined;
}
