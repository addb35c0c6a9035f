import type { WoodyardView } from '@stokehold/domain/contract';

/** The four answers of the woodyard in one look. */
export interface Answers {
  readonly ready: { readonly lots: number; readonly splits: number; readonly next: { readonly lotId: string; readonly at: string } | undefined };
  readonly trim: { readonly splits: number; readonly cuts: number; readonly short: boolean };
  readonly buy: { readonly cords: number; readonly by: string; readonly how: WoodyardView['purchases'][number]['how'] } | undefined;
  readonly lasts: { readonly state: WoodyardView['yard']['state']; readonly haul: { readonly pitId: string; readonly by: string; readonly now: boolean } | undefined };
}

/** What is ready, what to trim, what to buy, will it last the night. */
export function answersOf(view: WoodyardView, splitsOf: (lotId: string) => number): Answers {
  const ready = view.lots.filter(({ state }) => state === 'ready');
  const next = view.lots.find(({ state }) => state === 'not-yet');
  const hauls = view.carts.flatMap(({ pitId, haulBy, state }) => (haulBy === null ? [] : [{ pitId, by: haulBy, now: state === 'haul-now' || state === 'empty' }]));
  const first = [...hauls].sort((a, b) => a.by.localeCompare(b.by))[0];
  const [buy] = view.purchases;
  return {
    ready: { lots: ready.length, splits: ready.reduce((sum, { lotId }) => sum + splitsOf(lotId), 0), next: next?.readyAt ? { lotId: next.lotId, at: next.readyAt } : undefined },
    trim: { splits: view.trim.reduce((sum, { splits }) => sum + splits, 0), cuts: view.trim.reduce((sum, { cuts }) => sum + cuts, 0), short: view.trim.some(({ short }) => short) },
    buy: buy && { cords: buy.cords, by: buy.how === 'green' && buy.orderGreenBy ? buy.orderGreenBy : buy.orderSeasonedBy, how: buy.how },
    lasts: { state: view.yard.state, haul: first },
  };
}
