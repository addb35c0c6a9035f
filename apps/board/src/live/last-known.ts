import type { QueryClient } from '@tanstack/react-query';
import type { Me, YardClock, YardState } from '@stokehold/domain/contract';
import { faultAtHand } from './ask.js';
import { deviceStore } from './device-store.js';
import { hearAgain, lastHeard } from './heard.js';
import { ME, STATE } from './query-keys.js';

const HOUR_MS = 3_600_000;
/** So long after it last heard its server a device still shows what it knew: as long as the server takes in what was recorded. */
export const SHOWN_FOR_MS = 72 * HOUR_MS;
const SAVE_EVERY_MS = 15_000;
/** Soon after opening for the first time: the page may be gone before the next. */
const FIRST_SAVE_MS = 2000;

/** The yard as this device last saw it, and when it last heard of its server, ms since 1970 by its own clock. */
export interface LastKnown {
  readonly me: Me;
  readonly state: YardState;
  /** The yard's clock as it was last heard. */
  readonly clock: YardClock;
  readonly heardAtMs: number;
}

const isLastKnown = (kept: unknown): kept is LastKnown => {
  const parts = kept as Partial<LastKnown> | undefined;
  return Number.isFinite(parts?.heardAtMs) && (['me', 'state', 'clock'] as const).every((part) => faultAtHand(part)(parts?.[part]) === undefined);
};

/** What was kept, if it can still be read by this version and is not too old; a clock set back counts as just heard. */
export function readable(kept: unknown, nowMs: number): LastKnown | undefined {
  if (!isLastKnown(kept) || nowMs - kept.heardAtMs > SHOWN_FOR_MS) return undefined;
  return { ...kept, heardAtMs: Math.min(kept.heardAtMs, nowMs) };
}

/** What lies in the device's store, if it can be read at all. */
const stored = () => deviceStore().then((db) => db.get('lastKnown', 'only')).catch(() => undefined);

/** Puts what the device last knew where the screens look for it, and says whether there was anything. All of it is asked for again as soon as somebody looks. */
export async function recallLastKnown(client: QueryClient): Promise<boolean> {
  const kept = readable(await stored(), Date.now());
  // The server may have answered meanwhile: it has the later word.
  if (!kept || client.getQueryData(ME) !== undefined || client.getQueryData(STATE) !== undefined) return false;
  client.setQueryData(ME, kept.me, { updatedAt: kept.heardAtMs });
  client.setQueryData(STATE, kept.state, { updatedAt: kept.heardAtMs });
  await client.invalidateQueries({ refetchType: 'none' });
  hearAgain(kept.clock, performance.now() - (Date.now() - kept.heardAtMs));
  return true;
}

/** After signing out: the next person on this device does not see what the last one saw. */
export const forgetLastKnown = async (): Promise<void> => void (await deviceStore().then((db) => db.delete('lastKnown', 'only')).catch(() => undefined));

/** Keeps what is known now and then, and when the page goes away; until the returned function is called. */
export function keepLastKnown(client: QueryClient): () => void {
  let kept: YardState | undefined;
  const save = () => {
    const me = client.getQueryData<Me | null>(ME);
    const state = client.getQueryData<YardState>(STATE);
    const { atMs, clock } = lastHeard();
    if (!me || !state || state === kept || atMs === undefined || !clock) return;
    kept = state;
    const heardAtMs = Date.now() - (performance.now() - atMs);
    void deviceStore().then((db) => db.put('lastKnown', { me, state, clock, heardAtMs }, 'only')).catch(() => undefined);
  };
  const onHide = () => document.visibilityState === 'hidden' && save();
  const first = setTimeout(save, FIRST_SAVE_MS);
  const timer = setInterval(save, SAVE_EVERY_MS);
  document.addEventListener('visibilitychange', onHide);
  return () => {
    clearTimeout(first);
    clearInterval(timer);
    document.removeEventListener('visibilitychange', onHide);
  };
}
