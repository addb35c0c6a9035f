import type { CookId, EpochS, LotId, PitId } from '../quantity/index.js';

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

/** Weights are shared to the gram. */
export const grams = (weightKg: number): bigint => BigInt(Math.round(weightKg * 1000));

/** Splits burned before the food went on and after it came off are carried by what this pit cooked next, or last. */
function carriers(stays: readonly Stay[], at: EpochS): readonly Stay[] {
  const there = stays.filter(({ from, until }) => from <= at && at < until);
  if (there.length > 0) return there;
  const next = stays.reduce((soonest, { from }) => (from > at && from < soonest ? from : soonest), Infinity);
  if (next < Infinity) return stays.filter(({ from }) => from === next);
  const last = stays.reduce((latest, { until }) => Math.max(latest, until), -Infinity);
  return stays.filter(({ until }) => until === last);
}

/** Who carries what burns at an instant, and the stretch around it in which that stays so: between two comings or goings. */
function stretchAt(stays: readonly Stay[], at: EpochS) {
  let [from, until] = [-Infinity, Infinity];
  for (const stay of stays) {
    for (const mark of [stay.from, stay.until]) {
      if (mark <= at && mark > from) from = mark;
      if (mark > at && mark < until) until = mark;
    }
  }
  const takers = carriers(stays, at).filter(({ weightKg }) => grams(weightKg) > 0n);
  return { from, until, takers, key: takers.map(({ cookId, weightKg }) => `${cookId} ${weightKg}`).sort().join(' ') };
}

/** Wood of one lot by the cooks that carried it. */
export interface Carried {
  readonly lotId: LotId;
  readonly pieces: number;
  /** In order of cook, nobody (null) first; parts are whole numbers over one denominator. */
  readonly cooks: readonly { readonly cookId: CookId | null; readonly part: bigint; readonly pieces: number }[];
}

function gcd(a: bigint, b: bigint): bigint {
  while (b > 0n) [a, b] = [b, a % b];
  return a;
}

/**
 * Who carries which part of each lot: a split goes to what lay on its pit when it was burned, by weight to the gram, as exact fractions.
 *
 *     part of a cook = sum over splits of its weight / weight on the pit
 */
export function carriedWood(burned: readonly BurnedWood[], stays: readonly Stay[]): readonly Carried[] {
  const onPit = new Map<PitId, Stay[]>();
  for (const stay of stays) onPit.set(stay.pitId, [...(onPit.get(stay.pitId) ?? []), stay]);
  const lots = new Map<LotId, Map<string, { takers: readonly Stay[]; pieces: number }>>();
  const standing = new Map<PitId, ReturnType<typeof stretchAt>>();
  for (const { pitId, lotId, pieces, at } of burned) {
    const before = standing.get(pitId);
    const now = before && before.from <= at && at < before.until ? before : stretchAt(onPit.get(pitId) ?? [], at);
    if (now !== before) standing.set(pitId, now);
    const { takers, key } = now;
    const groups = lots.get(lotId) ?? new Map<string, { takers: readonly Stay[]; pieces: number }>();
    const group = groups.get(key) ?? { takers, pieces: 0 };
    group.pieces += pieces;
    groups.set(key, group);
    lots.set(lotId, groups);
  }
  return [...lots].map(([lotId, groups]) => partsOf(lotId, [...groups.values()]));
}

function partsOf(lotId: LotId, groups: readonly { readonly takers: readonly Stay[]; readonly pieces: number }[]): Carried {
  const sums = groups.map(({ takers }) => takers.reduce((sum, { weightKg }) => sum + grams(weightKg), 0n));
  const common = sums.reduce((all, sum) => (sum > 0n ? (all / gcd(all, sum)) * sum : all), 1n);
  const parts = new Map<CookId | null, bigint>();
  const pieces = new Map<CookId | null, number>();
  const add = (cookId: CookId | null, part: bigint, count: number) => {
    parts.set(cookId, (parts.get(cookId) ?? 0n) + part);
    pieces.set(cookId, (pieces.get(cookId) ?? 0) + count);
  };
  groups.forEach((group, g) => {
    const times = BigInt(group.pieces);
    if (group.takers.length === 0) return add(null, times * common, group.pieces);
    for (const { cookId, weightKg } of group.takers) add(cookId, (times * grams(weightKg) * common) / sums[g]!, (group.pieces * Math.round(weightKg * 1000)) / Number(sums[g]!));
  });
  const inOrder = [...parts].sort(([a], [b]) => ((a ?? '') < (b ?? '') ? -1 : 1));
  return { lotId, pieces: groups.reduce((sum, group) => sum + group.pieces, 0), cooks: inOrder.map(([cookId, part]) => ({ cookId, part, pieces: pieces.get(cookId) ?? 0 })) };
}
