/** A line through points in px, for the `d` of a path; with fewer than two points there is none. */
export const lineOf = (points: readonly (readonly [x: number, y: number])[]): string =>
  points.length > 1 ? `M${points.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}` : '';
