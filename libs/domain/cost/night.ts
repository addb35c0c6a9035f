import type { Cents, CookId, EpochS, LotId, PersonId, PitId } from '../quantity/index.js';
import { cents } from '../quantity/index.js';
import { shareCents } from './share.js';

/** A cook on a pit for a stretch of time: what a share of the fire is reckoned from. */
export interface Stay {
  readonly cookId: CookId;
  readonly pitId: PitId;
  readonly weightKg: number;
  readonly from: EpochS;
  readonly until: EpochS;
}
export interface BurnedWood {
  readonly pitId: PitId;
  readonly lotId: LotId;
  readonly pieces: number;
  readonly at: EpochS;
}
export interface LotPrice {
  readonly lotId: LotId;
  readonly priceCents: Cents;
  readonly boughtPieces: number;
}
export interface PaidTime {
  readonly personId: PersonId;
  readonly workedS: number;
  readonly centsPerHour: number;
}
/** Wood of one lot, or one person's time, as far as one cook carries it. */
export interface NightCost {
  readonly wood: readonly { readonly cookId: CookId | null; readonly lotId: LotId; readonly pieces: number; readonly costCents: Cents }[];
  readonly crew: readonly { readonly cookId: CookId | null; readonly personId: PersonId; readonly workedS: number; readonly costCents: Cents }[];
}

/** Splits burned before the food went on and after it came off are carried by what this pit cooked next, or last. */
function carriers(stays: readonly Stay[], at: EpochS): readonly Stay[] {
  const there = stays.filter(({ from, until }) => from <= at && at < until);
  if (there.length > 0) return there;
  const next = Math.min(...stays.filter(({ from }) => from > at).map(({ from }) => from));
  if (next < Infinity) return stays.filter(({ from }) => from === next);
  const last = Math.max(...stays.map(({ until }) => until));
  return stays.filter(({ until }) => until === last);
}

const groupBy = <T>(all: readonly T[], keyOf: (one: T) => string): ReadonlyMap<string, readonly T[]> => {
  const groups = new Map<string, T[]>();
  for (const one of all) groups.set(keyOf(one), [...(groups.get(keyOf(one)) ?? []), one]);
  return groups;
};

/**
 * What the night's wood and hours cost, by the cooks that carried them. Wood goes to what lay on its pit when it was burned, by
 * weight, at its lot's price per piece bought; time goes to all cooks by weight times hours on the pits. A fire that cooked nothing
 * is carried by no cook (cookId null). Whole cents: per lot and per person the shares add up exactly.
 * Source: common practice, no source.
 */
export function nightCost(night: {
  readonly stays: readonly Stay[];
  readonly burned: readonly BurnedWood[];
  readonly lots: readonly LotPrice[];
  readonly paid: readonly PaidTime[];
}): NightCost {
  const wood = [...groupBy(night.burned, ({ lotId }) => lotId)].flatMap(([, burned]) => woodOfLot(burned, night));
  const hours = [...groupBy(night.stays, ({ cookId }) => cookId)].map(([, stays]) => ({
    cookId: stays[0]?.cookId ?? null,
    weight: stays.reduce((sum, { weightKg, from, until }) => sum + weightKg * Math.max(0, until - from), 0),
  }));
  const takers = hours.length > 0 ? hours : [{ cookId: null, weight: 1 }];
  const total = takers.reduce((sum, { weight }) => sum + weight, 0);
  const crew = night.paid.flatMap(({ personId, workedS, centsPerHour }) => {
    const shares = shareCents(cents(Math.round((workedS * centsPerHour) / 3600)), takers.map(({ weight }) => weight));
    return takers.map(({ cookId, weight }, i) => ({
      cookId,
      personId,
      workedS: (workedS * (total > 0 ? weight / total : 1 / takers.length)),
      costCents: shares[i] ?? cents(0),
    }));
  });
  return { wood, crew };
}

function woodOfLot(burned: readonly BurnedWood[], night: { readonly stays: readonly Stay[]; readonly lots: readonly LotPrice[] }) {
  const lotId = burned[0]!.lotId;
  const lot = night.lots.find((one) => one.lotId === lotId);
  const pieces = burned.reduce((sum, one) => sum + one.pieces, 0);
  const cost = cents(lot ? Math.round((lot.priceCents * pieces) / lot.boughtPieces) : 0);
  const carried = new Map<CookId | null, number>();
  for (const one of burned) {
    const takers = carriers(night.stays.filter(({ pitId }) => pitId === one.pitId), one.at);
    const weight = takers.reduce((sum, { weightKg }) => sum + weightKg, 0);
    if (takers.length === 0) carried.set(null, (carried.get(null) ?? 0) + one.pieces);
    for (const { cookId, weightKg } of takers) carried.set(cookId, (carried.get(cookId) ?? 0) + (one.pieces * weightKg) / weight);
  }
  const entries = [...carried].sort(([a], [b]) => ((a ?? '') < (b ?? '') ? -1 : 1));
  const shares = shareCents(cost, entries.map(([, share]) => share));
  return entries.map(([cookId, share], i) => ({ cookId, lotId, pieces: share, costCents: shares[i] ?? cents(0) }));
}
