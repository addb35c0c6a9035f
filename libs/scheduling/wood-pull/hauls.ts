import { type EpochS, later } from '@stokehold/domain/quantity';
import type { CartLoad, Haul } from './plan.js';
import { parameter, type PullProblem } from './problem.js';

/** When what lies on a cart already is used up by a fire that runs high, from the start of the load's hours. */
function lastsUntil(problem: PullProblem, load: CartLoad, thereJ: number): EpochS {
  let left = thereJ;
  for (const { from, until, needJ, spreadJ } of problem.pits.find(({ id }) => id === load.pitId)!.hours.filter((hour) => hour.from >= load.from && hour.until <= load.until)) {
    const highJ = needJ + parameter(problem, 'reserveDeviations') * spreadJ;
    if (highJ > left) return later(from, Math.floor(((until - from) * left) / highJ));
    left -= highJ;
  }
  return load.until;
}

/** Heat of the wood of a load that lies on its pit's cart already, J. */
function thereJ(problem: PullProblem, load: CartLoad): number {
  return load.wood.reduce((sum, wood) => {
    const pile = problem.piles.find(({ id }) => id === wood.pileId)!;
    const way = problem.ways.find(({ pitId, lotId }) => pitId === load.pitId && lotId === wood.lotId);
    return pile.cartOf === load.pitId ? sum + wood.pieces * ((wood.way === 'as-is' ? way?.asIs : way?.trimmed)?.heatJ ?? 0) : sum;
  }, 0);
}

/**
 * A haul for every load that is not on its cart yet. There by the start of its hours, because until then the cart holds the need
 * and its reserve, or as long as what lies there lasts a fire that runs high; due half an hour before; not before half of the load's
 * place on the cart is free.
 *
 *     length = ways * 2 walk + pieces * handling
 */
export function haulsOf(problem: PullProblem, loads: readonly CartLoad[]): readonly Haul[] {
  return loads.flatMap((load, i) => {
    const pit = problem.pits.find(({ id }) => id === load.pitId)!;
    const away = load.wood.flatMap((wood) => {
      const pile = problem.piles.find(({ id }) => id === wood.pileId)!;
      return pile.cartOf === load.pitId || wood.isOffcut ? [] : [{ place: pile.place, pieces: wood.pieces }];
    });
    if (away.length === 0) return [];
    const fromPlaces = [...new Set(away.map(({ place }) => place))].sort();
    const walkS = fromPlaces.reduce((sum, place) => {
      const pieces = away.filter((one) => one.place === place).reduce((all, one) => all + one.pieces, 0);
      const ways = Math.ceil(pieces / parameter(problem, 'piecesPerWay'));
      return sum + ways * 2 * problem.walkS[problem.places.indexOf(place)]![problem.places.indexOf(pit.place)]!;
    }, 0);
    const pieces = away.reduce((sum, one) => sum + one.pieces, 0);
    const lengthS = Math.max(60, Math.ceil(walkS + pieces * parameter(problem, 'handlingS')));
    const latestAt = Math.max(problem.from, later(lastsUntil(problem, load, thereJ(problem, load)), -lengthS)) as EpochS;
    const dueAt = Math.max(problem.from, later(latestAt, -parameter(problem, 'haulAheadS'))) as EpochS;
    const before = loads[i - 1]?.pitId === load.pitId ? loads[i - 1] : undefined;
    const halfGone = before ? later(before.from, (before.until - before.from) / 2) : problem.from;
    return [{ pitId: load.pitId, load: i, pieces, fromPlaces, lengthS, earliestAt: Math.min(dueAt, Math.max(problem.from, halfGone)) as EpochS, dueAt, latestAt }];
  });
}
