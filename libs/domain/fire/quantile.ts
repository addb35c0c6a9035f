/** Quantile of sorted numbers by linear interpolation between the two nearest (R type 7). */
export function quantile(sorted: ArrayLike<number>, frac: number): number {
  const place = frac * (sorted.length - 1);
  const below = Math.floor(place);
  const above = Math.min(sorted.length - 1, below + 1);
  return sorted[below]! + (place - below) * (sorted[above]! - sorted[below]!);
}

/** The same of numbers in any order; leaves them as they are. */
export const quantileOf = (values: ArrayLike<number>, frac: number) => quantile(sortFew(Float64Array.from(values)), frac);

/** Sorts a few dozen numbers where they stand, by insertion: faster than the general way at that length. */
export function sortFew(values: Float64Array): Float64Array {
  for (let i = 1; i < values.length; i++) {
    const value = values[i]!;
    let at = i - 1;
    while (at >= 0 && values[at]! > value) {
      values[at + 1] = values[at]!;
      at--;
    }
    values[at + 1] = value;
  }
  return values;
}
