/** Value and slope of a0 + a1 x + a2 x^2 ... by Horner's rule. */
export function polynomial(coefficients: readonly number[], x: number): { readonly value: number; readonly slope: number } {
  let value = 0;
  let slope = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) {
    slope = slope * x + value;
    value = value * x + coefficients[i]!;
  }
  return { value, slope };
}
