import { type EpochS, later, ok, refuse, requireRange, type Result } from '../quantity/index.js';

/** One pit's cart against its fire. */
export interface CartState<PitId extends string> {
  readonly pitId: PitId;
  /** Dry wood on the cart, kg. */
  readonly dryKg: number;
  /** Dry wood a second, as believed of this fire, and one deviation of it as a part. */
  readonly dryKgPerS: number;
  readonly rateDeviationFrac: number;
  /** The fire is kept until here. */
  readonly until: EpochS;
  /** From the word to haul until the wood is there. */
  readonly haulS: number;
}
/** How long a cart lasts, and when to do something about it. */
export interface CartLasts<PitId extends string> {
  readonly pitId: PitId;
  /** Hours, likely and one time in ten. */
  readonly lastsS: number;
  readonly lastsAtLeastS: number;
  readonly emptyAt: EpochS;
  /** Latest moment to set out, so that the wood is there before the cart may be empty; undefined when it lasts to the end. */
  readonly haulBy: EpochS | undefined;
  readonly state: 'lasts' | 'haul-later' | 'haul-now' | 'empty';
  /** Dry wood missing until the end, kg, with its spread. */
  readonly missingKg: number;
}

/** One time in ten lies this many deviations out. Standard normal table. */
const ONE_IN_TEN = 1.2816;
/** Whoever hauls is told this long before the latest moment. Source: common practice, no source (one look at a fire). */
const WORD_AHEAD_S = 30 * 60;
/** A rate taken as this little is a fire that is going out, kg/s. */
const HARDLY_BURNS = 1e-6;

/**
 * How long the wood on a cart lasts.
 *
 *     lasts = m / r          at least = m / (r (1 + 1.28 s))          haul by = now + at least - haul
 *
 * @param cart  dry kg 0 to 5000; rate 0 to 1 kg/s; deviation 0 to 1; haul 0 to 4 h
 * @param now   from when
 * @returns Held to libs/domain/wood/stock.test.ts
 */
export function cartLasts<PitId extends string>(cart: CartState<PitId>, now: EpochS): CartLasts<PitId> {
  requireRange('dry wood on a cart (kg)', cart.dryKg, 0, 5000);
  requireRange('burn rate (kg/s)', cart.dryKgPerS, 0, 1);
  requireRange('deviation of the burn rate', cart.rateDeviationFrac, 0, 1);
  requireRange('haul (s)', cart.haulS, 0, 4 * 3600);
  const leftS = Math.max(0, cart.until - now);
  const rate = Math.max(HARDLY_BURNS, cart.dryKgPerS);
  const fast = rate * (1 + ONE_IN_TEN * cart.rateDeviationFrac);
  const lastsS = Math.floor(cart.dryKg / rate);
  const lastsAtLeastS = Math.floor(cart.dryKg / fast);
  const haulBy = lastsAtLeastS < leftS ? later(now, Math.max(0, lastsAtLeastS - cart.haulS)) : undefined;
  const state = haulBy === undefined ? 'lasts' : cart.dryKg <= 0 ? 'empty' : haulBy - now <= WORD_AHEAD_S ? 'haul-now' : 'haul-later';
  return { pitId: cart.pitId, lastsS, lastsAtLeastS, emptyAt: later(now, lastsS), haulBy, state, missingKg: Math.max(0, fast * leftS - cart.dryKg) };
}

/** The whole yard's wood against the night. */
export interface YardLasts {
  readonly neededKg: number;
  /** What is needed nine times in ten. */
  readonly neededAtMostKg: number;
  readonly leftKg: number;
  /** Mean time until all is burned at tonight's rates, s; undefined when it outlasts the night. */
  readonly lastsS: number | undefined;
  /** enough: nine times in ten. tight: more likely than not. short: the plan must change, or somebody must bring wood. */
  readonly state: 'enough' | 'tight' | 'short';
}

/**
 * Whether the yard's wood lasts the night: carts and ready stack against what every fire will still burn; the fires' deviations are
 * taken as independent, so they add as squares.
 *
 * @param carts    of the fires that burn tonight
 * @param stackKg  dry wood that is ready in the stack, 0 or more
 * @param now      from when
 * @returns Held to libs/domain/wood/stock.test.ts
 */
export function yardLasts(carts: readonly CartState<string>[], stackKg: number, now: EpochS): YardLasts {
  requireRange('dry wood in the stack (kg)', stackKg, 0, 1e7);
  const burns = carts.map((cart) => ({ kg: cart.dryKgPerS * Math.max(0, cart.until - now), deviation: cart.rateDeviationFrac, untilS: Math.max(0, cart.until - now), rate: cart.dryKgPerS }));
  const neededKg = burns.reduce((sum, { kg }) => sum + kg, 0);
  const spreadKg = ONE_IN_TEN * Math.hypot(0, ...burns.map(({ kg, deviation }) => kg * deviation));
  const leftKg = stackKg + carts.reduce((sum, { dryKg }) => sum + dryKg, 0);
  const state = leftKg >= neededKg + spreadKg ? 'enough' : leftKg >= neededKg ? 'tight' : 'short';
  return { neededKg, neededAtMostKg: neededKg + spreadKg, leftKg, lastsS: leftKg >= neededKg ? undefined : gone(burns, leftKg), state };
}

/** When the last of it is burned, fires ending one after the other. */
function gone(burns: readonly { readonly untilS: number; readonly rate: number }[], leftKg: number): number {
  let left = leftKg;
  let from = 0;
  for (const { untilS } of [...burns].sort((a, b) => a.untilS - b.untilS)) {
    const rate = burns.filter((one) => one.untilS > from).reduce((sum, one) => sum + one.rate, 0);
    if (rate * (untilS - from) >= left) return Math.floor(from + left / Math.max(rate, HARDLY_BURNS));
    left -= rate * (untilS - from);
    from = untilS;
  }
  return Math.floor(from);
}

/** A count of what really lies there. */
export interface Recount {
  /** What the book said when the person began to count; undefined when they did not look. */
  readonly bookSeen?: number;
  readonly found: number;
  readonly reason: string;
}
export type RecountRefusal =
  | { readonly code: 'counted-below-zero'; readonly found: number }
  | { readonly code: 'reason-missing' }
  /** Somebody burned, pulled or recounted meanwhile: the count is of a stack that is no more. */
  | { readonly code: 'counted-meanwhile'; readonly bookSeen: number; readonly book: number };

/**
 * Puts a count in place of the book, as an entry of its own with its reason. Two people who count at once: the second is told what
 * changed under their eyes and counts again, so that neither count is lost.
 *
 * @param book     what the ledger says now
 * @param recount  whole splits
 * @returns splits to add to the book, negative when some are missing. Held to libs/domain/wood/stock.test.ts
 */
export function correctionOf(book: number, recount: Recount): Result<{ readonly pieces: number }, RecountRefusal> {
  if (!Number.isInteger(recount.found) || recount.found < 0) return refuse({ code: 'counted-below-zero', found: recount.found });
  if (recount.reason.trim() === '') return refuse({ code: 'reason-missing' });
  if (recount.bookSeen !== undefined && recount.bookSeen !== book) return refuse({ code: 'counted-meanwhile', bookSeen: recount.bookSeen, book });
  return ok({ pieces: recount.found - book });
}
