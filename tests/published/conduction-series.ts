// Heat into a slab, a long cylinder and a sphere by their series: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, ch. 5.
// theta = (T - Ta)/(Ti - Ta), Fo = alpha t / L^2, Bi = h L / k, L half thickness or radius.

/** Bessel function of the first kind by its integral, midpoint rule: exact to rounding for a periodic integrand. */
const bessel = (order: number, x: number) => {
  let sum = 0;
  for (let i = 0; i < 100; i++) {
    const angle = (Math.PI * (i + 0.5)) / 100;
    sum += Math.cos(order * angle - x * Math.sin(angle)) / 100;
  }
  return sum;
};

interface Shape {
  /** Zero at the eigenvalues. */
  readonly root: (z: number, biot: number) => number;
  readonly weight: (z: number) => number;
  /** Profile at a share of the way to the surface. */
  readonly profile: (z: number, place: number) => number;
}
export const SLAB: Shape = { root: (z, biot) => z * Math.sin(z) - biot * Math.cos(z), weight: (z) => (4 * Math.sin(z)) / (2 * z + Math.sin(2 * z)), profile: (z, place) => Math.cos(z * place) };
export const CYLINDER: Shape = { root: (z, biot) => z * bessel(1, z) - biot * bessel(0, z), weight: (z) => ((2 / z) * bessel(1, z)) / (bessel(0, z) ** 2 + bessel(1, z) ** 2), profile: (z, place) => bessel(0, z * place) };
export const SPHERE: Shape = {
  root: (z, biot) => (1 - biot) * Math.sin(z) - z * Math.cos(z), weight: (z) => (4 * (Math.sin(z) - z * Math.cos(z))) / (2 * z - Math.sin(2 * z)), profile: (z, place) => (place === 0 ? 1 : Math.sin(z * place) / (z * place)),
};
export const SHAPES = [SLAB, CYLINDER, SPHERE] as const;

export function eigenvalues(shape: Shape, biot: number, count = 12): number[] {
  const found: number[] = [];
  for (let low = 1e-4, step = 0.02; found.length < count; low += step) {
    if (shape.root(low, biot) * shape.root(low + step, biot) > 0) continue;
    let [a, b] = [low, low + step];
    for (let i = 0; i < 60; i++) {
      const middle = (a + b) / 2;
      if (shape.root(a, biot) * shape.root(middle, biot) <= 0) b = middle;
      else a = middle;
    }
    found.push((a + b) / 2);
  }
  return found;
}

/** theta at a place, with the eigenvalues kept so that many times are cheap. */
export function seriesOf(shape: Shape, biot: number, count = 12): (fourier: number, place?: number) => number {
  const terms = eigenvalues(shape, biot, count).map((z) => ({ z, weight: shape.weight(z) }));
  return (fourier, place = 0) => terms.reduce((sum, { z, weight }) => sum + weight * Math.exp(-z * z * fourier) * shape.profile(z, place), 0);
}
