import { cents, type CookId, epochS, later, type LotId, type PersonId, type PitId, randomStream } from '../quantity/index.js';
import type { CostNight } from './sheet.js';

/** A night drawn from a seed, for benches: checks that put one or two splits on, cooks that share pits, people with odd rates. */
export function drawnNight(size: { readonly checks: number; readonly cooks: number; readonly pits: number; readonly lots: number; readonly people: number; readonly seed?: number }): CostNight {
  const random = randomStream(size.seed ?? 1);
  const start = epochS(1_800_000_000);
  const pit = () => `pit-${random.below(size.pits)}` as PitId;
  const cooks = Array.from({ length: size.cooks }, (_, i) => `cook-${i}` as CookId);
  return {
    stays: cooks.flatMap((cookId) => Array.from({ length: 1 + random.below(3) }, () => {
      const from = later(start, random.below(4 * 3600));
      return { cookId, pitId: pit(), weightKg: 5 + 60 * random.next(), from, until: later(from, (4 + random.below(9)) * 3600) };
    })),
    burned: Array.from({ length: size.checks }, () => ({ pitId: pit(), lotId: `lot-${random.below(size.lots)}` as LotId, pieces: 1 + random.below(2), at: later(start, random.below(14 * 3600)) })),
    lots: Array.from({ length: size.lots }, (_, i) => ({ lotId: `lot-${i}` as LotId, priceCents: cents(9000 + random.below(30_000)), boughtPieces: 97 + random.below(300) })),
    paid: Array.from({ length: size.people }, (_, i) => ({ personId: `person-${i}` as PersonId, paidS: 28_800 + random.below(7200), costCents: cents(15_000 + random.below(9999)) })),
    cooks: cooks.map((cookId) => ({ cookId, meatCents: cents(random.below(90_000)), rawKg: 20 + random.below(60), yieldKg: 10 + random.below(20), portions: 20 + random.below(90) })),
  };
}
