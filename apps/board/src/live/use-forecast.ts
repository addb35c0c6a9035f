import { useQuery } from '@tanstack/react-query';
import type { ForecastView } from '@stokehold/domain/contract';
import { ask } from './ask.js';
import { passes } from './refused.js';

const REFRESH_MS = 60_000;

/** The hours ahead as a forecast service said them; asked again each minute while it is on show. */
export function useForecast(): ForecastView | undefined {
  const query = useQuery({ queryKey: ['forecast'], queryFn: () => ask('forecast', {}), refetchInterval: REFRESH_MS, retry: (_count, error) => passes(error), retryDelay: 2000 });
  return query.data;
}
