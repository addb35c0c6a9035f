import { requireRange } from '../quantity/index.js';

/**
 * Share of an element's radiation that falls on a rectangle facing it, the element's normal through the rectangle's corner.
 *
 *     A = a/c, B = b/c      F = 1/2pi [A/sqrt(1+A^2) atan(B/sqrt(1+A^2)) + B/sqrt(1+B^2) atan(A/sqrt(1+B^2))]   [HOWELL] B-3
 *
 * @param at.aM, at.bM  sides, 0 to 100 m; @param at.cM  distance, above 0
 * @returns 0 to 0.25. Held to tests/published/chamber-view-factors.test.ts
 */
export function elementFacingCorner({ aM, bM, cM }: { readonly aM: number; readonly bM: number; readonly cM: number }): number {
  requireSides(aM, bM, cM);
  const a = aM / cM;
  const b = bM / cM;
  const rootA = Math.sqrt(1 + a * a);
  const rootB = Math.sqrt(1 + b * b);
  return ((a / rootA) * Math.atan(b / rootA) + (b / rootB) * Math.atan(a / rootB)) / (2 * Math.PI);
}

/** The same for an element before the middle of the rectangle: four quarters, each seen from its corner. [HOWELL] B-3. */
export const elementFacingMiddle = ({ aM, bM, cM }: { readonly aM: number; readonly bM: number; readonly cM: number }): number =>
  4 * elementFacingCorner({ aM: aM / 2, bM: bM / 2, cM });

/**
 * Share of an element's radiation that falls on a rectangle standing at right angles, the element at distance c from its corner.
 *
 *     X = a/c, Y = b/c      F = 1/2pi [atan X - 1/sqrt(1+Y^2) atan(X/sqrt(1+Y^2))]                              [HOWELL] B-4
 *
 * @param at.aM  side across the element's normal; @param at.bM  side along it; @param at.cM  distance, above 0
 * @returns 0 to 0.25. Held to tests/published/chamber-view-factors.test.ts
 */
export function elementBesideRectangle({ aM, bM, cM }: { readonly aM: number; readonly bM: number; readonly cM: number }): number {
  requireSides(aM, bM, cM);
  const x = aM / cM;
  const root = Math.sqrt(1 + (bM / cM) ** 2);
  return (Math.atan(x) - Math.atan(x / root) / root) / (2 * Math.PI);
}

/**
 * Share of the radiation of a rectangle that falls on an equal one facing it.
 *
 *     X = a/c, Y = b/c      F = 2/(pi X Y) { ln sqrt((1+X^2)(1+Y^2)/(1+X^2+Y^2)) + X sqrt(1+Y^2) atan(X/sqrt(1+Y^2))
 *                               + Y sqrt(1+X^2) atan(Y/sqrt(1+X^2)) - X atan X - Y atan Y }                     [HOWELL] C-11
 *
 * @returns 0 to 1. Held to tests/published/chamber-view-factors.test.ts
 */
export function facingRectangles({ aM, bM, cM }: { readonly aM: number; readonly bM: number; readonly cM: number }): number {
  requireSides(aM, bM, cM);
  const x = aM / cM;
  const y = bM / cM;
  const rootX = Math.sqrt(1 + x * x);
  const rootY = Math.sqrt(1 + y * y);
  const log = Math.log((rootX * rootY) / Math.sqrt(1 + x * x + y * y));
  const sum = log + x * rootY * Math.atan(x / rootY) + y * rootX * Math.atan(y / rootX) - x * Math.atan(x) - y * Math.atan(y);
  return (2 / (Math.PI * x * y)) * sum;
}

/**
 * Share of the radiation of a rectangle w by l that falls on one of h by l standing on its edge l. H = h/l, W = w/l. [HOWELL] C-14.
 * A printed variant in circulation has (1+W^2) in the last bracket in place of (1+H^2): wrong unless H = W.
 *
 * @returns 0 to 1. Held to tests/published/chamber-view-factors.test.ts
 */
export function rectanglesOnEdge({ hM, wM, lM }: { readonly hM: number; readonly wM: number; readonly lM: number }): number {
  requireSides(hM, wM, lM);
  const h = (hM / lM) ** 2;
  const w = (wM / lM) ** 2;
  const rootH = hM / lM;
  const rootW = wM / lM;
  const rootBoth = Math.sqrt(h + w);
  const logs =
    Math.log(((1 + w) * (1 + h)) / (1 + w + h)) +
    w * Math.log((w * (1 + w + h)) / ((1 + w) * (h + w))) +
    h * Math.log((h * (1 + h + w)) / ((1 + h) * (h + w)));
  const sum = rootW * Math.atan(1 / rootW) + rootH * Math.atan(1 / rootH) - rootBoth * Math.atan(1 / rootBoth) + logs / 4;
  return sum / (Math.PI * rootW);
}

function requireSides(aM: number, bM: number, cM: number): void {
  requireRange('side (m)', aM, 1e-6, 100);
  requireRange('side (m)', bM, 1e-6, 100);
  requireRange('distance or edge (m)', cM, 1e-6, 100);
}
