import { requireRange } from '../quantity/index.js';

/** First zeros of the Bessel function J0: the modes of a cylinder. [CRANK] ch. 5, values from any table of functions. */
const J0_ZEROS = [2.40482555769577, 5.52007811028631, 8.65372791291101, 11.7915344390143, 14.9309177084878, 18.0710639679109, 21.2116366298793, 24.3524715307493];
const SLAB_TERMS = 40;

/**
 * Moisture still above equilibrium in a long drying piece, of what there was: mean of the section, surface at equilibrium.
 *
 *     slab      E = sum 8 / (pi^2 (2n+1)^2) exp(-(2n+1)^2 pi^2 Fo / 4),    Fo = D t / l^2, l HALF the thickness
 *     cylinder  E = sum 4 / a_n^2 exp(-a_n^2 Fo),  J0(a_n) = 0,            Fo = D t / a^2                          [CRANK]
 *
 * Below Fo = 0.02 the cylinder uses the short-time series E = 1 - 4 sqrt(Fo/pi) + Fo + Fo^1.5 / (3 sqrt(pi)).
 *
 * @param shape    slab for a board, cylinder for a round or a split
 * @param fourier  Fo, 0 to 1000
 * @returns E, 1 down to 0. Held to tests/published/wood-seasoning.test.ts
 */
export function leftToDry(shape: 'slab' | 'cylinder', fourier: number): number {
  requireRange('Fourier number', fourier, 0, 1000);
  if (shape === 'cylinder') {
    if (fourier < 0.02) return 1 - 4 * Math.sqrt(fourier / Math.PI) + fourier + fourier ** 1.5 / (3 * Math.sqrt(Math.PI));
    return J0_ZEROS.reduce((sum, zero) => sum + (4 / (zero * zero)) * Math.exp(-zero * zero * fourier), 0);
  }
  if (fourier < 0.02) return 1 - 2 * Math.sqrt(fourier / Math.PI);
  let sum = 0;
  for (let n = 0; n < SLAB_TERMS; n++) {
    const odd = 2 * n + 1;
    sum += (8 / (Math.PI ** 2 * odd ** 2)) * Math.exp(-(odd ** 2) * Math.PI ** 2 * (fourier / 4));
  }
  return sum;
}

/**
 * The slowest mode as a first-order rate: k = pi^2 D / (4 l^2) or 5.783 D / a^2. [CRANK]
 *
 * @param shape       slab or cylinder
 * @param diffusion   D across the grain, 1e-12 to 1e-8 m2/s
 * @param halfSizeM   l or a, 0.002 to 0.5 m
 * @returns k, 1/s
 */
export function dryingRatePerS(shape: 'slab' | 'cylinder', diffusion: number, halfSizeM: number): number {
  requireRange('diffusion (m2/s)', diffusion, 1e-12, 1e-8);
  requireRange('half thickness (m)', halfSizeM, 0.002, 0.5);
  const mode = shape === 'slab' ? Math.PI ** 2 / 4 : J0_ZEROS[0]! ** 2;
  return (mode * diffusion) / halfSizeM ** 2;
}
