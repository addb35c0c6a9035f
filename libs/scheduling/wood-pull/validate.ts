import { ok, refuse, type Result } from '@stokehold/domain/quantity';
import { firstWrong, outOfRange } from '../search/index.js';
import { PARAMETERS, type PullParameters, type PullPit, type PullProblem } from './problem.js';

/** Why a problem is no problem; `where` names the part that has to be mended. */
export type PullRefusal =
  | { readonly code: 'same-id-twice' | 'unknown-lot' | 'unknown-pit' | 'unknown-place' | 'not-whole' | 'below-zero' | 'no-hours' | 'hours-out-of-order' | 'share-out-of-range' | 'way-empty' | 'way-twice'; readonly where: string }
  | { readonly code: 'walking-table-not-square'; readonly where: 'walkS' }
  | { readonly code: 'cart-takes-nothing'; readonly where: string }
  | { readonly code: 'parameter-out-of-range'; readonly where: keyof PullParameters };

type Found = PullRefusal | undefined;

/**
 * A problem that the planner and its checker can trust, or the first thing wrong with it by name. Too little wood is no refusal: it
 * gets a plan that says what is short. Held to wood-pull.test.ts.
 */
export function validatePull(problem: PullProblem): Result<PullProblem, PullRefusal> {
  const refusal = idsOf(problem) ?? namesOf(problem) ?? numbersOf(problem) ?? firstWrong(problem.pits, pitOf) ?? waysOf(problem) ?? parametersOf(problem);
  return refusal ? refuse(refusal) : ok(problem);
}

function idsOf({ lots, piles, pits, places }: PullProblem): Found {
  const twice = (ids: readonly string[]) => ids.find((id, i) => ids.indexOf(id) !== i);
  const again = twice(lots.map(({ id }) => id)) ?? twice(piles.map(({ id }) => id)) ?? twice(pits.map(({ id }) => id)) ?? twice(places);
  return again === undefined ? undefined : { code: 'same-id-twice', where: again };
}

function namesOf({ lots, piles, pits, ways, promises, places, walkS }: PullProblem): Found {
  if (walkS.length !== places.length || walkS.some((row) => row.length !== places.length)) return { code: 'walking-table-not-square', where: 'walkS' };
  const isLot = (id: string) => lots.some((lot) => lot.id === id);
  const isPit = (id: string) => pits.some((pit) => pit.id === id);
  return (
    firstWrong(piles, ({ id, lotId, place, cartOf }) =>
      !isLot(lotId) ? { code: 'unknown-lot', where: id } : !places.includes(place) ? { code: 'unknown-place', where: id } : cartOf !== undefined && !isPit(cartOf) ? { code: 'unknown-pit', where: id } : undefined) ??
    firstWrong(pits, ({ id, place }) => (places.includes(place) ? undefined : { code: 'unknown-place', where: id })) ??
    firstWrong([...ways, ...promises], ({ pitId, lotId }) => (!isLot(lotId) ? { code: 'unknown-lot', where: `${pitId} ${lotId}` } : !isPit(pitId) ? { code: 'unknown-pit', where: `${pitId} ${lotId}` } : undefined))
  );
}

function numbersOf({ lots, piles, walkS, promises }: PullProblem): Found {
  const amounts: readonly (readonly [string, number, boolean])[] = [
    ...piles.map(({ id, pieces }) => [id, pieces, true] as const),
    ...promises.map(({ lotId, pieces }) => [lotId, pieces, true] as const),
    ...lots.flatMap(({ id, priceMills, wetPoints, laterMills, pieceKg }) => [[id, priceMills, true], [id, wetPoints, true], [id, laterMills, true], [id, pieceKg, false]] as const),
    ...walkS.flatMap((row, i) => row.map((walk, j) => [`walkS.${i}.${j}`, walk, true] as const)),
  ];
  return firstWrong(amounts, ([where, value, whole]) => (!(value >= 0) ? { code: 'below-zero', where } : whole && !Number.isSafeInteger(value) ? { code: 'not-whole', where } : undefined));
}

function pitOf(pit: PullPit): Found {
  if (!(pit.cartKg > 0)) return { code: 'cart-takes-nothing', where: pit.id };
  if (pit.hours.length === 0) return { code: 'no-hours', where: pit.id };
  return firstWrong(pit.hours.map((hour, i) => ({ hour, before: pit.hours[i - 1] })), ({ hour, before }) => {
    if (hour.until <= hour.from || (before && before.until !== hour.from)) return { code: 'hours-out-of-order', where: pit.id };
    if (!(hour.needJ >= 0 && hour.spreadJ >= 0)) return { code: 'below-zero', where: pit.id };
    if (!Number.isSafeInteger(hour.needJ) || !Number.isSafeInteger(hour.spreadJ)) return { code: 'not-whole', where: pit.id };
    const wrong = hour.mix.some(({ leastFrac, mostFrac }) => !(leastFrac >= 0 && leastFrac <= mostFrac && mostFrac <= 1));
    return wrong ? { code: 'share-out-of-range', where: pit.id } : undefined;
  });
}

function waysOf({ ways }: PullProblem): Found {
  const keys = new Set<string>();
  return firstWrong(ways, (way) => {
    const where = `${way.pitId} ${way.lotId}`;
    if (keys.has(where)) return { code: 'way-twice', where };
    keys.add(where);
    if (!way.asIs && !way.trimmed) return { code: 'way-empty', where };
    const heats = [way.asIs?.heatJ ?? 1, way.trimmed?.heatJ ?? 1];
    return heats.every((heat) => Number.isSafeInteger(heat) && heat > 0) ? undefined : { code: 'not-whole', where };
  });
}

function parametersOf({ parameters }: PullProblem): Found {
  const name = outOfRange(PARAMETERS, parameters);
  return name && { code: 'parameter-out-of-range', where: name };
}
