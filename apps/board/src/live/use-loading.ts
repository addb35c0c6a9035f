import { useQuery } from '@tanstack/react-query';
import type { LoadingView, YardState } from '@stokehold/domain/contract';
import { ask } from './ask.js';
import { NoAnswer, passes, Refused } from './refused.js';

const REFRESH_MS = 120_000;

/** What should lie where and which cook goes on when; asked again when cooks, services or pits change, and every two minutes. */
export function useLoading(state: YardState): { readonly loading: LoadingView | undefined; readonly failed: Refused | NoAnswer | undefined } {
  const made = JSON.stringify([state.cooks.map(({ forecast: _forecast, ...cook }) => cook), state.services, state.pits.map(({ pit, fire }) => [pit, fire?.mode])]);
  const query = useQuery({
    queryKey: ['loading', made], queryFn: () => ask('loading', {}), placeholderData: (before) => before, refetchInterval: REFRESH_MS, retry: (_count, error) => passes(error), retryDelay: 2000,
  });
  return { loading: query.data, failed: query.error instanceof Refused || query.error instanceof NoAnswer ? query.error : undefined };
}
