import type { EpochS } from '../quantity/index.js';
import { MEMBER_NUMBERS } from './layout.js';
import type { FirePosition, PitShape } from './pit.js';

/** Members of the ensemble: that many possible fires stand for what is not known of the real one. */
export const MEMBERS = 40;

/** What was believed minute by minute: instant, median of the chamber, its lowest twentieth, share of members with the bed nearly out. */
export const PAST_NUMBERS = 4;
/** So many of those minutes are kept. */
export const PAST_MINUTES = 90;

/**
 * What is believed of one fire at an instant. Opaque: read it with `estimateOf`, `forecast`, `dueOf`, `advise`; every
 * function returns a new one and changes none. `beliefToBytes` stores it.
 */
export interface FireBelief {
  readonly at: EpochS;
  readonly shape: PitShape;
  readonly seed: number;
  readonly position: FirePosition;
  /** Lit from cold and not yet graded: forecasts rest on the lighting alone. */
  readonly ungraded: boolean;
  /** Places taken on the grate. */
  readonly pieces: number;
  /** Last grade or temperature that was used. */
  readonly lastSeenAt?: EpochS;
  readonly lastTempAt?: EpochS;
  readonly fireEndRejectedSince?: EpochS;
  readonly stackEndRejectedSince?: EpochS;
  /** Dry wood burnt a second, running mean over an hour. */
  readonly dryKgPerS: number;
  /** MEMBERS rows of MEMBER_NUMBERS, see layout.ts. */
  readonly members: Float64Array;
  /** Rows of PAST_NUMBERS, oldest first. */
  readonly past: Float64Array;
}

/** First index of a member's row. */
export const memberAt = (member: number) => member * MEMBER_NUMBERS;
