import { requireRange } from '../quantity/index.js';

/** A place on the yard plan, metres from its top left corner. */
export interface PlanPlace {
  readonly xM: number;
  readonly yM: number;
}

/**
 * Time to walk from each place to each other, straight across the yard, whole seconds rounded up.
 *
 *     t = |a - b| / v
 *
 * @param places    pits and the wood, in the order of the table's rows and columns
 * @param speedMPerS  v, walking speed; 0.3 to 3 m/s
 * @returns the square table, 0 on its diagonal. Source: geometry. Held to libs/domain/shift/walk.test.ts
 */
export function walkTableS(places: readonly PlanPlace[], speedMPerS: number): readonly (readonly number[])[] {
  requireRange('walking speed', speedMPerS, 0.3, 3);
  return places.map((from) => places.map((to) => Math.ceil(Math.hypot(from.xM - to.xM, from.yM - to.yM) / speedMPerS)));
}
