import { useQuery, useQueryClient } from '@tanstack/react-query';
import type { CookCourse, CookView, CutSettings, FoodLimits } from '@stokehold/domain/contract';
import { ask } from '../../live/ask.js';
import { passes, Refused } from '../../live/refused.js';

const REFRESH_MS = 60_000;
const again = { retry: (_count: number, error: Error) => passes(error), retryDelay: 2000 };

/** One cook reckoned anew: each minute, and at once when it was forecast or something was recorded. */
export function useCourse(cook: CookView): { readonly course: CookCourse | undefined; readonly refused: Refused | undefined; readonly refresh: () => Promise<void> } {
  const client = useQueryClient();
  const query = useQuery({
    queryKey: ['cook-course', cook.id, cook.forecast?.madeAt, cook.offAt], queryFn: () => ask('cookCourse', { cookId: cook.id }),
    placeholderData: (before) => (before?.cook.id === cook.id ? before : undefined), refetchInterval: REFRESH_MS, ...again,
  });
  return { course: query.data, refused: query.error instanceof Refused ? query.error : undefined, refresh: () => client.invalidateQueries({ queryKey: ['cook-course', cook.id] }) };
}

/** The yard's cuts, and a way to fetch them anew after a change. */
export function useCuts(): { readonly cuts: readonly CutSettings[] | undefined; readonly refresh: () => Promise<void> } {
  const client = useQueryClient();
  const query = useQuery({ queryKey: ['cuts'], queryFn: () => ask('cuts', {}), ...again });
  return { cuts: query.data, refresh: () => client.invalidateQueries({ queryKey: ['cuts'] }) };
}

/** The food code the yard is held to. */
export function useFoodLimits(): { readonly limits: FoodLimits | undefined; readonly refresh: () => Promise<void> } {
  const client = useQueryClient();
  const query = useQuery({ queryKey: ['food-limits'], queryFn: () => ask('foodLimits', {}), ...again });
  return { limits: query.data, refresh: () => client.invalidateQueries({ queryKey: ['food-limits'] }) };
}
