import { useQuery, useQueryClient } from '@tanstack/react-query';
import type { FirePage, PitView } from '@stokehold/domain/contract';
import type { PitId, ShiftId } from '@stokehold/domain/quantity';
import { ask } from '../../live/ask.js';
import { passes, Refused } from '../../live/refused.js';

const REFRESH_MS = 60_000;

interface FirePageOf {
  readonly page: FirePage | undefined;
  readonly refused: Refused | undefined;
  readonly again: () => Promise<void>;
}

/** One fire over one night; asked again each minute, and at once when somebody looked at it. */
export function useFirePage(pitId: string, shiftId: string | undefined, view: PitView | undefined): FirePageOf {
  const client = useQueryClient();
  const newest = view?.checks.at(-1)?.id;
  const query = useQuery({
    queryKey: ['fire-page', pitId, shiftId, newest],
    queryFn: () => ask('firePage', { pitId: pitId as PitId, ...(shiftId && { shiftId: shiftId as ShiftId }) }),
    placeholderData: (before) => (before?.pitId === pitId ? before : undefined),
    refetchInterval: REFRESH_MS, retry: (_count, error) => passes(error), retryDelay: 2000,
  });
  return {
    page: query.data,
    refused: query.error instanceof Refused ? query.error : undefined,
    again: () => client.invalidateQueries({ queryKey: ['fire-page', pitId] }),
  };
}
