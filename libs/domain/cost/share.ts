import { type Cents, cents, requireRange } from '../quantity/index.js';

/**
 * Splits an amount by weights so that the shares are whole cents and add up to it exactly: each gets the whole cents of its
 * part, and the cents left over go to the largest remainders, the earlier one first where they are equal.
 * Source: the largest-remainder method of apportionment (Hamilton, 1792), from memory.
 *
 * @param amount   whole cents, 0 or more
 * @param weights  each 0 or more; all zero shares evenly
 * @returns one share per weight; empty when there are no weights
 */
export function shareCents(amount: Cents, weights: readonly number[]): readonly Cents[] {
  requireRange('amount (cents)', amount, 0, Number.MAX_SAFE_INTEGER);
  for (const weight of weights) requireRange('weight', weight, 0, Number.MAX_VALUE);
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const parts = weights.map((weight) => (sum > 0 ? (amount * weight) / sum : amount / weights.length));
  const shares = parts.map(Math.floor);
  let left = amount - shares.reduce((total, share) => total + share, 0);
  const byRemainder = parts.map((part, i) => ({ i, remainder: part - Math.floor(part) })).sort((a, b) => b.remainder - a.remainder || a.i - b.i);
  for (const { i } of byRemainder) {
    if (left <= 0) break;
    shares[i] = (shares[i] ?? 0) + 1;
    left -= 1;
  }
  return shares.map(cents);
}
