/** A bug, not a refusal: a formula was asked outside the range it holds in. */
export class OutOfRangeError extends RangeError {
  constructor(
    readonly quantity: string,
    readonly value: number,
    readonly min: number,
    readonly max: number,
  ) {
    super(`${quantity} is ${value}; this formula holds from ${min} to ${max}.`);
    this.name = 'OutOfRangeError';
  }
}

/** Passes values in [min, max]; throws OutOfRangeError otherwise, also for NaN. */
export function requireRange(quantity: string, value: number, min: number, max: number): void {
  if (!(value >= min && value <= max)) throw new OutOfRangeError(quantity, value, min, max);
}

/** The value, or the nearer end of [min, max]. */
export const clamp = (value: number, min: number, max: number) => Math.min(max, Math.max(min, value));
