import { useQuery } from '@tanstack/react-query';
import type { YardState } from '@stokehold/domain/contract';
import { ask } from '../../live/ask.js';

/** The state with every check of the shift in it: the live state only carries the last ones of each pit. */
export function useAllChecks(state: YardState | undefined): YardState | undefined {
  const shift = state?.shift ?? undefined;
  const lit = shift?.pits.map(({ lightAt }) => lightAt) ?? [];
  const since = shift && [shift.startsAt, ...lit].sort()[0];
  const pitIds = shift?.pits.map(({ pitId }) => pitId) ?? [];
  const newest = state?.pits.map(({ checks }) => checks.map(({ id }) => id).join()).join();
  const { data } = useQuery({
    queryKey: ['checks', since, pitIds, newest],
    queryFn: async () => Object.fromEntries(await Promise.all(pitIds.map(async (pitId) => [pitId, await ask('checks', { pitId, since: since ?? '' })] as const))),
    enabled: since !== undefined && pitIds.length > 0,
    placeholderData: (before) => before,
    staleTime: Infinity,
  });
  if (!state || !data) return state;
  return {
    ...state,
    pits: state.pits.map((view) => {
      const known = new Set(view.checks.map(({ id }) => id));
      const older = data[view.pit.id]?.filter(({ id }) => !known.has(id)) ?? [];
      return { ...view, checks: [...older, ...view.checks] };
    }),
  };
}
