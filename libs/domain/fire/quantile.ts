/** Quantile of sorted numbers by linear interpolation between the two nearest (R type 7). */
export function quantile(sorted: ArrayLike<number>, frac: number): number {
  const place = frac * (sorted.length - 1);
  const below = Math.floor(place);
  const above = Math.min(sorted.length - 1, below + 1);
  return sorted[below]! + (place - below) * (sorted[above]! - sorted[below]!);
}

/** The same of numbers in any order; leaves them as they are. */
export const quantileOf = (values: ArrayLike<number>, frac: number) => quantile(Float64Array.from(values).sort(), frac);
