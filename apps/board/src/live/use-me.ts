import { queryOptions, useQuery, useQueryClient } from '@tanstack/react-query';
import type { Me } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { ask } from './ask.js';
import { forgetHeard } from './heard.js';
import { letGo } from './kept.js';
import { forgetLastKnown } from './last-known.js';
import { ME } from './query-keys.js';
import { NoAnswer, passes, Refused } from './refused.js';

/** How it is asked who is looking. */
export const meQuery = queryOptions({
  queryKey: ME,
  queryFn: async () => {
    try {
      return await ask('me', {});
    } catch (error) {
      if (error instanceof Refused && error.problem.status === 401) {
        await forgetLastKnown();
        return null;
      }
      throw error;
    }
  },
  staleTime: 5 * 60_000,
  retry: (_count, error) => passes(error),
  retryDelay: 2000,
});

/** Who is looking: undefined while asking, null on a device that is not enrolled. */
export function useMe(): { readonly me: Me | null | undefined; readonly away: boolean } {
  const query = useQuery(meQuery);
  return { me: query.data, away: query.failureCount > 0 && query.data === undefined };
}

/** Takes over a new standing (after sign-in, sign-out, enrolment): everything known under the old one is forgotten. */
export function useBecome(): (me: Me | undefined) => void {
  const client = useQueryClient();
  return (me) => {
    client.clear();
    forgetHeard();
    void forgetLastKnown();
    if (me) client.setQueryData(ME, me);
  };
}

/** Signs out, and shows who may sign in next; `away` when no answer came: then the person is signed in still. */
export function useLeave(): { readonly leave: () => Promise<void>; readonly away: boolean } {
  const become = useBecome();
  const [, go] = useLocation();
  const [away, setAway] = useState(false);
  const leave = async () => {
    try {
      await letGo();
      await ask('signOut', {});
      become(undefined);
      go('/sign-in');
    } catch (error) {
      if (!(error instanceof Refused || error instanceof NoAnswer)) throw error;
      setAway(true);
    }
  };
  return { leave, away };
}
