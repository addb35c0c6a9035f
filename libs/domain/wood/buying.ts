import { dryBasis, type EpochS, later, requireRange } from '../quantity/index.js';
import { CORD_M3, STOWED_SOLID_FRAC } from './measure.js';
import { dryWoodKgPerM3 } from './density.js';
import type { Seasoning } from './seasoning.js';
import type { Species } from './species.js';

/** A night that is planned: how much dry wood it will burn. */
export interface PlannedNight {
  readonly at: EpochS;
  readonly dryKg: number;
  /** One deviation of it, as a part. */
  readonly deviationFrac: number;
}
/** Wood in the stack and when it may be burned. */
export interface StockLot {
  readonly dryKg: number;
  readonly seasoning: Pick<Seasoning, 'readyFrac' | 'earliestAt' | 'readyAt' | 'latestAt'>;
}
/** What one kind of wood costs in time: seasoned is there after its delivery, green must lie until it is ready. */
export interface Supply {
  readonly species: Species;
  readonly deliveryS: number;
  /** From green to ready, nine times in ten, in this yard: of a forecast. Undefined: green wood is no way here. */
  readonly greenReadyS?: number;
}
/** A stretch of nights for which wood is missing. */
export interface Purchase {
  readonly neededBy: EpochS;
  readonly dryKg: number;
  readonly cords: number;
  /** Latest day to order it seasoned. */
  readonly orderSeasonedBy: EpochS;
  /** Latest day to order it green; undefined or past when it is too late for that. */
  readonly orderGreenBy: EpochS | undefined;
  readonly how: 'green' | 'seasoned' | 'seasoned-late';
}

/** Nine times in ten enough: this many deviations. Standard normal table. */
const ONE_IN_TEN = 1.2816;
/** Orders are a quarter of a cord at least. Source: common practice, no source. */
const QUARTER = 0.25;

/** Dry wood in a stowed cord of a species at 15 % moisture, kg. [NIST-HB130] 2.4, [FPL-GTR-190] ch. 4. */
export const dryKgPerCord = (species: Species): number => CORD_M3 * STOWED_SOLID_FRAC * dryWoodKgPerM3({ species, moisture: dryBasis(0.15) });

/** Chance that a lot is ready at an instant: straight lines through the forecast's three days. */
export function readyFracAt({ readyFrac, earliestAt, readyAt, latestAt }: StockLot['seasoning'], now: EpochS, at: EpochS): number {
  const marks = [[now, readyFrac], [earliestAt, 0.1], [readyAt, 0.5], [latestAt, 0.9]].filter((mark): mark is [EpochS, number] => mark[0] !== undefined && (mark[0] === now || mark[1]! > readyFrac));
  const after = marks.findIndex(([when]) => when > at);
  if (after < 0) return Math.max(readyFrac, marks.at(-1)![1]);
  if (after === 0) return marks[0]![1];
  const [[t0, p0], [t1, p1]] = [marks[after - 1]!, marks[after]!];
  return p0 + ((p1 - p0) * (at - t0)) / (t1 - t0);
}

/**
 * What to buy for the nights that are planned: night by night, what is likely ready is burned; where it runs out nine times in ten
 * are not covered any more, the missing wood is bought in quarters of a cord, so many nights at a time as one order covers.
 *
 *     need by a night = sum m + 1.28 sqrt(sum (m s)^2)        stock by a night = sum kg * chance ready
 *
 * @param nights  in any order, from now on
 * @param lots    what lies in the stack
 * @param supply  what is bought, and how long it takes
 * @param now     today
 * @returns purchases in order of need, at most one a week. Held to libs/domain/wood/buying.test.ts
 */
export function purchasesFor(nights: readonly PlannedNight[], lots: readonly StockLot[], supply: Supply, now: EpochS): readonly Purchase[] {
  requireRange('delivery (s)', supply.deliveryS, 0, 366 * 86_400);
  const perCord = dryKgPerCord(supply.species);
  const bought: { at: EpochS; kg: number }[] = [];
  let [mean, variance] = [0, 0];
  for (const night of [...nights].filter(({ at }) => at >= now).sort((a, b) => a.at - b.at)) {
    requireRange('dry wood of a night (kg)', night.dryKg, 0, 1e5);
    mean += night.dryKg;
    variance += (night.dryKg * night.deviationFrac) ** 2;
    const need = mean + ONE_IN_TEN * Math.sqrt(variance);
    const stock = lots.reduce((sum, { dryKg, seasoning }) => sum + dryKg * readyFracAt(seasoning, now, night.at), 0) + bought.reduce((sum, { kg }) => sum + kg, 0);
    if (need <= stock) continue;
    const last = bought.at(-1);
    const kg = Math.ceil((need - stock) / perCord / QUARTER - 1e-9) * QUARTER * perCord;
    if (last && night.at - last.at < 7 * 86_400) last.kg += kg;
    else bought.push({ at: night.at, kg });
  }
  return bought.map(({ at, kg }) => purchase(at, kg, perCord, supply, now));
}

function purchase(neededBy: EpochS, dryKg: number, perCord: number, { deliveryS, greenReadyS }: Supply, now: EpochS): Purchase {
  const orderSeasonedBy = later(neededBy, -deliveryS);
  const orderGreenBy = greenReadyS === undefined ? undefined : later(neededBy, -deliveryS - greenReadyS);
  const how = orderGreenBy !== undefined && orderGreenBy >= now ? 'green' : orderSeasonedBy >= now ? 'seasoned' : 'seasoned-late';
  return { neededBy, dryKg, cords: dryKg / perCord, orderSeasonedBy, orderGreenBy, how };
}
