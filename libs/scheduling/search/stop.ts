/** Asked once an iteration; true ends the search. The caller owns the clock. */
export type StopRule = (progress: { readonly iterations: number }) => boolean;

/** Ends after a number of iterations: the same seed then gives the same plan on every machine. */
export const afterIterations =
  (most: number): StopRule =>
  ({ iterations }) =>
    iterations >= most;

/** Ends as soon as one of the rules says so: iterations as the budget, a caller's clock or cancel button as the guard. */
export const whicheverFirst =
  (...rules: readonly StopRule[]): StopRule =>
  (progress) =>
    rules.some((rule) => rule(progress));
