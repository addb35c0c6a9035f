import { type Cents, cents, type CookId, type LotId, type PersonId } from '../quantity/index.js';
import { type BurnedWood, type Carried, carriedWood, grams, type Stay } from './carried.js';
import { type LotPrice, priceOfPieces } from './lot-price.js';
import { shareByParts } from './share.js';

/** A cook as far as money is concerned. */
export interface CookCost {
  readonly cookId: CookId;
  readonly meatCents: Cents;
  readonly rawKg: number;
  /** What came off; undefined while it is not weighed. */
  readonly yieldKg?: number;
  readonly portions?: number;
}
export interface PaidPerson {
  readonly personId: PersonId;
  readonly paidS: number;
  readonly costCents: Cents;
}
export interface CostNight {
  readonly stays: readonly Stay[];
  readonly burned: readonly BurnedWood[];
  readonly lots: readonly LotPrice[];
  readonly paid: readonly PaidPerson[];
  readonly cooks: readonly CookCost[];
}
export interface CookSheet {
  readonly cookId: CookId;
  readonly woodCents: Cents;
  readonly crewCents: Cents;
  readonly meatCents: Cents;
  readonly totalCents: Cents;
  readonly splits: number;
  /** What came off of what went on. */
  readonly yieldFrac: number | undefined;
  /** By raw and by served kilogram, and by portion; fractions of a cent, for showing only. */
  readonly perRawKgCents: number;
  readonly perServedKgCents: number | undefined;
  readonly perPortionCents: number | undefined;
}
export interface WoodLine {
  readonly cookId: CookId | null;
  readonly lotId: LotId;
  readonly pieces: number;
  readonly costCents: Cents;
}
export interface CrewLine {
  readonly cookId: CookId | null;
  readonly personId: PersonId;
  readonly paidS: number;
  readonly costCents: Cents;
}
export interface CostSheet {
  readonly cooks: readonly CookSheet[];
  readonly wood: readonly WoodLine[];
  readonly crew: readonly CrewLine[];
  /** Carried by no cook: fires that cooked nothing, hours of a night without food. */
  readonly openCents: Cents;
  /** Splits of lots without a price. */
  readonly unpricedPieces: number;
  readonly totalCents: Cents;
}

const sum = <T>(all: readonly T[], of: (one: T) => number) => all.reduce((total, one) => total + of(one), 0);

/**
 * The cost sheet of a night. Wood goes to what lay on its pit when it was burned, by weight; time to all cooks by weight times hours on
 * the pits; meat to its own cook. Whole cents: per lot, per person and over all, the shares add up exactly; they are reckoned as exact
 * fractions. Source: common practice, no source.
 *
 * @returns lines and sums. Held to tests/published/cost-shares.test.ts and libs/domain/cost/sheet.test.ts
 */
export function costSheet(night: CostNight): CostSheet {
  const lots = new Map(night.lots.map((lot) => [lot.lotId, lot]));
  const carried = carriedWood(night.burned, night.stays);
  const wood = carried.flatMap((lot) => woodLines(lot, lots.get(lot.lotId)));
  const crew = crewLines(night);
  const cooks = cooksOf(night, wood, crew);
  const openCents = cents(sum([...wood, ...crew].filter((line) => !cooks.some(({ cookId }) => cookId === line.cookId)), ({ costCents }) => costCents));
  return {
    cooks, wood, crew, openCents,
    unpricedPieces: sum(carried.filter(({ lotId }) => !lots.has(lotId)), ({ pieces }) => pieces),
    totalCents: cents(openCents + sum(cooks, ({ totalCents }) => totalCents)),
  };
}

function woodLines(lot: Carried, price: LotPrice | undefined): readonly WoodLine[] {
  const shares = shareByParts(price ? priceOfPieces(price, lot.pieces) : cents(0), lot.cooks.map(({ part }) => part));
  return lot.cooks.map(({ cookId, pieces }, i) => ({ cookId, lotId: lot.lotId, pieces, costCents: shares[i]! }));
}

function crewLines({ stays, paid }: CostNight): readonly CrewLine[] {
  const weights = new Map<CookId | null, bigint>();
  for (const { cookId, weightKg, from, until } of stays) weights.set(cookId, (weights.get(cookId) ?? 0n) + grams(weightKg) * BigInt(Math.max(0, until - from)));
  const takers = weights.size > 0 ? [...weights].sort(([a], [b]) => ((a ?? '') < (b ?? '') ? -1 : 1)) : [[null, 1n] as const];
  const total = takers.reduce((all, [, weight]) => all + weight, 0n);
  return paid.flatMap(({ personId, paidS, costCents }) => {
    const shares = shareByParts(costCents, takers.map(([, weight]) => weight));
    return takers.map(([cookId, weight], i) => ({ cookId, personId, paidS: total > 0n ? (paidS * Number((weight * 1_000_000_000n) / total)) / 1e9 : paidS / takers.length, costCents: shares[i]! }));
  });
}

function cooksOf({ cooks }: CostNight, wood: readonly WoodLine[], crew: readonly CrewLine[]): readonly CookSheet[] {
  return cooks.map(({ cookId, meatCents, rawKg, yieldKg, portions }) => {
    const own = wood.filter((line) => line.cookId === cookId);
    const woodCents = cents(sum(own, ({ costCents }) => costCents));
    const crewCents = cents(sum(crew.filter((line) => line.cookId === cookId), ({ costCents }) => costCents));
    const totalCents = cents(woodCents + crewCents + meatCents);
    return {
      cookId, woodCents, crewCents, meatCents, totalCents, splits: sum(own, ({ pieces }) => pieces),
      yieldFrac: yieldKg === undefined || rawKg <= 0 ? undefined : yieldKg / rawKg,
      perRawKgCents: rawKg > 0 ? totalCents / rawKg : 0,
      perServedKgCents: yieldKg === undefined || yieldKg <= 0 ? undefined : totalCents / yieldKg,
      perPortionCents: portions === undefined || portions <= 0 ? undefined : totalCents / portions,
    };
  });
}
