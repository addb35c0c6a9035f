import { weighLies } from './checker.js';
import type { Lies, PlacementLevels } from './plan.js';
import type { PlacementProblem } from './problem.js';

/**
 * The best levels over every placement of a small pit, each judged by the checker. An oracle for tests; its work grows as
 * the product over cooks of the ways to spread its pieces over the zones and beside the pit.
 */
export function everyPlacement(problem: PlacementProblem): PlacementLevels {
  let best: PlacementLevels = { unplaced: Infinity, priceS: Infinity };
  const extend = (g: number, lies: Lies): void => {
    const group = problem.groups[g];
    if (!group) {
      const { violations, levels } = weighLies(problem, lies);
      if (violations.length === 0 && (levels.unplaced < best.unplaced || (levels.unplaced === best.unplaced && levels.priceS < best.priceS))) best = levels;
      return;
    }
    const spread = (z: number, left: number, laid: Lies): void => {
      const zone = problem.zones[z];
      if (!zone) return extend(g + 1, [...lies, ...laid]);
      for (let pieces = 0; pieces <= left; pieces++) spread(z + 1, left - pieces, pieces === 0 ? laid : [...laid, { cookId: group.id, zoneId: zone.id, pieces }]);
    };
    spread(0, group.pieces, []);
  };
  extend(0, []);
  return best;
}
