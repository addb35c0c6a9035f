import { useQuery, useQueryClient } from '@tanstack/react-query';
import type { WoodyardView, YardState } from '@stokehold/domain/contract';
import { ask } from './ask.js';
import { passes } from './refused.js';

const REFRESH_MS = 60_000;

/** What changes the woodyard: where wood lies, and which pits burn. */
const markOf = ({ wood, shift }: YardState) => [shift?.id ?? '', ...wood.lots.map(({ id, inStack, onCarts, burned, moisture }) => `${id} ${inStack} ${onCarts} ${burned} ${moisture}`)].join('|');

/** Forecasts, trim list, purchases and the pull; asked anew when wood was moved. `opening` until it came or could not be had for the first time. */
export function useWoodyard(state: YardState | undefined): { readonly view: WoodyardView | undefined; readonly opening: boolean } {
  const query = useQuery({
    queryKey: ['woodyard', state ? markOf(state) : ''], queryFn: () => ask('woodyard', {}), enabled: state !== undefined, refetchInterval: REFRESH_MS,
    placeholderData: (before) => before, retry: (_count, error) => passes(error), retryDelay: 2000,
  });
  return { view: query.data, opening: query.isPending && query.failureCount === 0 };
}

/** Fetches it anew, after a pull was made here. */
export function useWoodyardChanged(): () => Promise<void> {
  const client = useQueryClient();
  return () => client.invalidateQueries({ queryKey: ['woodyard'] });
}
