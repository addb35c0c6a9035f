import type { EpochS } from '../quantity/index.js';
import type { AirSet } from './air-set.js';
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
  /** When more wood was found than had been recorded, when the belief began again from its probes, and since when the ends differ too much. */
  readonly unrecordedAt?: EpochS;
  readonly divergedAt?: EpochS;
  readonly endsApartSince?: EpochS;
  readonly endsApartK?: number;
  /** Middle of both ends that is expected at an instant if nobody touches the fire, and its spread; see candour.ts. */
  readonly expects?: { readonly at: EpochS; readonly tempC: number; readonly sdK: number };
  /** How far what came lay from what was expected, in squares of the spread: their sum, and how many. */
  readonly surprises?: { readonly count: number; readonly sum: number };
  /** When the advice of the last look wants somebody back. */
  readonly lookAgainAt?: EpochS;
  /** How the air was left at the last look that said so. */
  readonly air?: AirSet;
  /** Dry wood burnt a second, running mean over an hour. */
  readonly dryKgPerS: number;
  /** MEMBERS rows of MEMBER_NUMBERS, see layout.ts. */
  readonly members: Float64Array;
  /** Rows of PAST_NUMBERS, oldest first. */
  readonly past: Float64Array;
}

/** First index of a member's row. */
export const memberAt = (member: number) => member * MEMBER_NUMBERS;
