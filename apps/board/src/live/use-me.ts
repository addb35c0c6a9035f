import { useQuery, useQueryClient } from '@tanstack/react-query';
import type { Me } from '@stokehold/domain/contract';
import { ask } from './ask.js';
import { forgetHeard } from './heard.js';
import { passes, Refused } from './refused.js';

export const ME = ['me'] as const;

/** Who is looking: undefined while asking, null on a device that is not enrolled. */
export function useMe(): { readonly me: Me | null | undefined; readonly away: boolean } {
  const query = useQuery({
    queryKey: ME,
    queryFn: async () => {
      try {
        return await ask('me', {});
      } catch (error) {
        if (error instanceof Refused && error.problem.status === 401) return null;
        throw error;
      }
    },
    staleTime: 5 * 60_000,
    retry: (_count, error) => passes(error),
    retryDelay: 2000,
  });
  return { me: query.data, away: query.failureCount > 0 && query.data === undefined };
}

/** Takes over a new standing (after sign-in, sign-out, enrolment): everything known under the old one is forgotten. */
export function useBecome(): (me: Me | undefined) => void {
  const client = useQueryClient();
  return (me) => {
    client.clear();
    forgetHeard();
    if (me) client.setQueryData(ME, me);
  };
}
