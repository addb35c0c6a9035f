/** How far a search is. */
export interface Progress {
  readonly iterations: number;
  /** The best so far falls short of what has to be kept and could be, as far as is known. */
  readonly fallsShort?: boolean;
  /** Nothing that somebody waits for can get better. */
  readonly isEnough?: boolean;
}

/** Asked once an iteration; true ends the search. The caller owns the clock. */
export interface StopRule {
  (progress: Progress): boolean;
  /** The most iterations it will allow, where it knows: the search then divides them well. */
  readonly most?: number;
}

/** Ends after a number of iterations: the same seed then gives the same plan on every machine. */
export const afterIterations = (most: number): StopRule => Object.assign(({ iterations }: Progress) => iterations >= most, { most });

/**
 * While somebody waits: ends before its iterations are over where what is found is enough, and goes on past them where it falls
 * short, up to `atMost`. By iterations alone, so that the same seed gives the same plan on every machine.
 */
export const whileWaited = (usual: number, atMost: number): StopRule =>
  Object.assign(({ iterations, fallsShort = false, isEnough = false }: Progress) => isEnough || iterations >= (fallsShort ? Math.max(usual, atMost) : usual), { most: usual });

/** Ends as soon as one of the rules says so: iterations as the budget, a caller's clock or cancel button as the guard. */
export function whicheverFirst(...rules: readonly StopRule[]): StopRule {
  const known = rules.flatMap(({ most }) => (most === undefined ? [] : [most]));
  const rule: StopRule = (progress) => rules.some((one) => one(progress));
  return known.length === 0 ? rule : Object.assign(rule, { most: Math.min(...known) });
}

/** Iterations between two looks at the clock. */
const LOOK_EVERY = 16;

/**
 * A guard by the caller's clock: ends when more than `mostMs` have passed since it was made. A search it cuts short is made
 * again by the iterations it reports.
 *
 * @param nowMs  the caller's clock, ms; the libraries have none
 */
export function withinMs(nowMs: () => number, mostMs: number): StopRule {
  const from = nowMs();
  return ({ iterations }) => iterations % LOOK_EVERY === 0 && nowMs() - from > mostMs;
}
