import type { ServiceSettings } from '@stokehold/domain/contract';
import { type BurnedWood, type CostSheet, costSheet, type LotPrice, type PaidPerson, type Span } from '@stokehold/domain/cost';
import { cents, type EpochS, later, type LotId } from '@stokehold/domain/quantity';
import type { KeptShift } from '@stokehold/domain/shift';
import type { Lot } from '../wood/index.js';
import { type Books, spanOf } from './cost-books.js';
import { paidIn } from './pay-of-night.js';
import { stayOf } from './service-sheet.js';
import type { WeighedCook } from './services.store.js';

/** The hours before a service and what they cost. */
export interface ServiceNight {
  readonly span: Span;
  readonly sheet: CostSheet;
  readonly shifts: readonly KeptShift[];
  readonly paid: readonly PaidPerson[];
}

/** The cooks of a service. */
export const ownOf = ({ id }: ServiceSettings, { cooksOf }: Books): readonly WeighedCook[] => cooksOf.get(id) ?? [];

/** The cost sheet of the hours before a service, with everything that was cooked in them. */
export function nightOf(service: ServiceSettings, books: Books): ServiceNight {
  const span = spanOf(service, books.now);
  const [lays, shifts] = [books.lays.touching(span), books.shifts.touching(span)];
  const burned = books.burned.slice(firstFrom(books.burnedAt, span.from), firstFrom(books.burnedAt, later(span.until, 1)));
  const paid = paidIn(shifts, span, { ...books.pay, nights: books.pay.nights.touching(span) });
  const there = new Set([...lays.map(({ cookId }) => cookId), ...ownOf(service, books).map(({ id }) => id)]);
  const sheet = costSheet({
    stays: lays.map((lay) => stayOf(lay, books.cooks, span)), burned, paid, lots: books.lots.map((lot) => priceOf(lot, books, span.from)),
    cooks: [...there].flatMap((id) => {
      const cook = books.cooks.get(id);
      return cook ? [{ cookId: id, rawKg: cook.weightKg, meatCents: books.meat.get(id) ?? cents(0), ...(cook.yieldKg !== null && { yieldKg: cook.yieldKg }) }] : [];
    }),
  });
  return { span, sheet, shifts, paid };
}

/** The first of some instants, in order, that is not before an instant. */
function firstFrom(times: readonly number[], at: EpochS): number {
  let [low, high] = [0, times.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle]! < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** A lot's price with the splits that were burned of it before an instant: all its nights together cost its price to the cent. */
const priceOf = (lot: Lot, { burnedBefore, burned }: Books, from: EpochS): LotPrice => ({
  lotId: lot.id, priceCents: cents(lot.priceCents), boughtPieces: lot.boughtPieces, lostPieces: lot.lost,
  burnedBefore: (burnedBefore.get(lot.id) ?? 0) + burnedOf(burned, lot.id, from),
});

const counted = new WeakMap<readonly BurnedWood[], Map<LotId, { readonly at: number[]; readonly sum: number[] }>>();
/** Splits of a lot in the books before an instant; counted once for each reading of the books. */
function burnedOf(burned: readonly BurnedWood[], lotId: LotId, before: EpochS): number {
  const lots = counted.get(burned) ?? new Map<LotId, { readonly at: number[]; readonly sum: number[] }>();
  if (lots.size === 0) {
    for (const { lotId: id, at, pieces } of burned) {
      const so = lots.get(id) ?? { at: [], sum: [] };
      so.at.push(at);
      so.sum.push((so.sum.at(-1) ?? 0) + pieces);
      lots.set(id, so);
    }
    counted.set(burned, lots);
  }
  const own = lots.get(lotId);
  return own?.sum[firstFrom(own.at, before) - 1] ?? 0;
}
