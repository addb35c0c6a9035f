import { useQuery } from '@tanstack/react-query';
import type { HouseStatus } from '@stokehold/domain/contract';
import { ask } from './ask.js';
import { passes, Refused } from './refused.js';
import { useTick } from './use-clock.js';
import { useMay } from './use-setup.js';

const EVERY_MS = 5000;
/** Two answers that did not come in time. */
const LOST_AFTER_MS = 12_000;

/** Why nothing newer is known: no answer at all, an answer that the database is away, or a no to the question itself. */
export type StatusLost = 'server-away' | 'database-lost' | Refused;

export interface StatusSeen {
  /** What was last answered. */
  readonly status: HouseStatus | undefined;
  readonly lost: StatusLost | undefined;
  /** How old what was answered is, real seconds; undefined where nothing was. */
  readonly ageS: number | undefined;
}

/** How the house last said that it stands, from what came of asking; instants of the device's clock, ms, 0 for never. Held to use-status.test.ts */
export function seenAt(nowMs: number, { status, answeredMs, error }: { readonly status: HouseStatus | undefined; readonly answeredMs: number; readonly error: unknown }): StatusSeen {
  const ageMs = nowMs - answeredMs;
  return { status, lost: lostBy(error, status !== undefined && ageMs > LOST_AFTER_MS), ageS: status && Math.max(0, Math.floor(ageMs / 1000)) };
}

/** A refusal that passes is no news while what is known is not old. */
function lostBy(error: unknown, isOld: boolean): StatusLost | undefined {
  if (!(error instanceof Refused)) return error || isOld ? 'server-away' : undefined;
  if (error.problem.code === 'database-away') return 'database-lost';
  return passes(error) && !isOld ? undefined : error;
}

/** How the house stands, asked again every few seconds while it is on show; for the manager alone. */
export function useStatus(everyMs = EVERY_MS): StatusSeen {
  useTick();
  const enabled = useMay('manage');
  // Also without a network: what does not come is what this is about.
  const query = useQuery({ queryKey: ['status'], queryFn: () => ask('status', {}), enabled, refetchInterval: everyMs, networkMode: 'always', retry: false });
  const seen = seenAt(Date.now(), { status: query.data, answeredMs: query.dataUpdatedAt, error: query.error });
  // A server whose database hangs has no answer to the question itself, but to this one.
  const isLost = seen.lost === 'server-away';
  const health = useQuery({ queryKey: ['health'], queryFn: () => ask('health', {}), enabled: isLost, refetchInterval: everyMs, networkMode: 'always', retry: false, gcTime: 0 });
  return isLost && health.data?.status === 'database-away' && !health.error ? { ...seen, lost: 'database-lost' } : seen;
}
