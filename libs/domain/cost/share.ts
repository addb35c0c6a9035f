import { type Cents, cents, requireRange } from '../quantity/index.js';

/** Every double is a whole number over a power of two: all of them over the same one, exactly. IEEE 754-2019, 3.4. */
function exactParts(weights: readonly number[]): readonly bigint[] {
  const bits = new DataView(new ArrayBuffer(8));
  const split = weights.map((weight) => {
    bits.setFloat64(0, weight);
    const word = bits.getBigUint64(0);
    const exponent = Number((word >> 52n) & 0x7ffn);
    const fraction = word & 0xfffffffffffffn;
    return exponent === 0 ? { whole: fraction, shift: 1 } : { whole: fraction | 0x10000000000000n, shift: exponent };
  });
  const least = split.reduce((all, { whole, shift }) => (whole > 0n ? Math.min(all, shift) : all), 2047);
  return split.map(({ whole, shift }) => (whole > 0n ? whole << BigInt(shift - least) : 0n));
}

/**
 * Splits an amount by whole weights so that the shares are whole cents and add up to it exactly, reckoned without rounding: each
 * gets the whole cents of its part, and the cents left over go to the largest remainders, the earlier one first where they are equal.
 * Source: the largest-remainder method of apportionment (Hamilton, 1792), from memory.
 *
 * @param amount   whole cents, 0 or more
 * @param weights  each 0 or more; all zero shares evenly
 * @returns one share per weight. Held to tests/published/cost-shares.test.ts
 */
export function shareByParts(amount: Cents, weights: readonly bigint[]): readonly Cents[] {
  requireRange('amount (cents)', amount, 0, Number.MAX_SAFE_INTEGER);
  const total = weights.reduce((sum, weight) => sum + weight, 0n);
  if (total === 0n) return weights.length === 0 ? [] : shareByParts(amount, weights.map(() => 1n));
  const whole = BigInt(amount);
  const parts = weights.map((weight, i) => ({ i, share: (whole * weight) / total, remainder: (whole * weight) % total }));
  const left = Number(whole - parts.reduce((sum, { share }) => sum + share, 0n));
  const shares = parts.map(({ share }) => Number(share));
  const byRemainder = [...parts].sort((a, b) => (a.remainder === b.remainder ? a.i - b.i : a.remainder > b.remainder ? -1 : 1));
  for (const { i } of byRemainder.slice(0, left)) shares[i]! += 1;
  return shares.map(cents);
}

/**
 * The same by weights that are any numbers: taken as exactly what they are, without rounding.
 *
 * @param amount   whole cents, 0 or more
 * @param weights  each 0 or more; all zero shares evenly
 * @returns one share per weight; empty when there are no weights
 */
export function shareCents(amount: Cents, weights: readonly number[]): readonly Cents[] {
  for (const weight of weights) requireRange('weight', weight, 0, Number.MAX_VALUE);
  return shareByParts(amount, exactParts(weights));
}
