import { queryOptions, useQuery, useQueryClient, type QueryClient } from '@tanstack/react-query';
import type { YardState } from '@stokehold/domain/contract';
import { useEffect } from 'react';
import { ask } from './ask.js';
import { openFeed } from './feed.js';
import { hear, lastHeard } from './heard.js';
import { keepLastKnown } from './last-known.js';
import { STATE } from './query-keys.js';
import { passes } from './refused.js';
import { connectionAt, type Connection } from './stale.js';
import { useTick } from './use-clock.js';
import { meQuery } from './use-me.js';

/** How everything that a board shows is asked for. */
const stateQuery = queryOptions({
  queryKey: STATE,
  queryFn: async () => {
    const state = await ask('state', {});
    hear(state.clock);
    return state;
  },
  staleTime: Infinity,
  gcTime: Infinity,
  retry: (_count, error) => passes(error),
  retryDelay: 2000,
});

/** Asks who is looking and for what a board shows, before any screen is there to ask: the answers come while the screen's own code does. */
export const askAhead = (client: QueryClient): Promise<unknown> => Promise.all([client.prefetchQuery(meQuery), client.prefetchQuery(stateQuery)]);

/**
 * Opens the live push once there is something to keep up to date, and keeps on the device what comes, for as long as the
 * calling component is mounted. One place calls it: the app, once somebody may look.
 */
export function useFeed(): void {
  const client = useQueryClient();
  const isThere = useYard() !== undefined;
  useEffect(() => (isThere ? openFeed(client) : undefined), [client, isThere]);
  useEffect(() => keepLastKnown(client), [client]);
}

/** How this board stands with its server, anew each second. */
export function useConnection(): Connection {
  useTick();
  return connectionAt(performance.now(), { ...lastHeard(), isOffline: !navigator.onLine });
}

/** Everything a board shows; undefined until the first answer. Stays when the server is lost: see `useConnection`. */
export const useYard = (): YardState | undefined => useQuery(stateQuery).data;
