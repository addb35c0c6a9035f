/**
 * The outline of a bed of coals, `fullFrac` of a full one high, standing on `baseY` from `x` over `width`;
 * a full bed is `tall` high. An svg path.
 */
export function coalsPath(fullFrac: number, x: number, baseY: number, width: number, tall: number): string {
  const height = tall * Math.min(1.15, Math.max(0, fullFrac));
  if (height < 1) return '';
  const heaps = [0.72, 1, 0.9, 0.62];
  const step = width / heaps.length;
  const bumps = heaps.map((heap, n) => {
    const end = n === heaps.length - 1 ? baseY : baseY - height * 0.32;
    // A quadratic's top lies half way to its control point: twice as far away gives the height that is meant.
    return `Q${x + (n + 0.5) * step} ${baseY - height * heap * 1.7} ${x + (n + 1) * step} ${end}`;
  });
  return `M${x} ${baseY}${bumps.join('')}Z`;
}
