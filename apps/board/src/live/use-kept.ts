import { useEffect, useState, useSyncExternalStore } from 'react';
import { commandKey } from './command-key.js';
import { deviceNow } from './device-clock.js';
import { keep, keptNow, sendFor, sendKept, whenKeptChanges, type Kept, type KeptRoute } from './kept.js';
import { withKey, type Said } from './use-command.js';
import { useConnection } from './use-yard.js';
import { useMe } from './use-me.js';

/** What this device has recorded and the server has not taken yet, oldest first. */
export const useKept = (): readonly Kept[] => useSyncExternalStore(whenKeptChanges, keptNow);

/** Sends what is kept for as long as the board is open, at once when the server is heard again. One place calls it: the app. */
export function useSending(): void {
  const personId = useMe().me?.person?.id;
  const { kind } = useConnection();
  useEffect(() => (personId ? sendFor(personId) : undefined), [personId]);
  useEffect(() => {
    if (kind === 'live') void sendKept();
  }, [kind]);
}

/** Records on this device first; `full` when the device has no room to keep it. */
export function useRecord(): { readonly record: <N extends KeptRoute>(route: N, said: Said<N>) => Promise<boolean>; readonly full: boolean } {
  const { me } = useMe();
  const [full, setFull] = useState(false);
  const record = async <N extends KeptRoute>(route: N, said: Said<N>) => {
    if (!me?.person) return false;
    const { practice } = me.yard;
    try {
      const input = withKey(route, said, commandKey(), practice);
      await keep<N>({ route, input, recordedAt: deviceNow(practice), practice, personId: me.person.id });
      setFull(false);
      return true;
    } catch {
      setFull(true);
      return false;
    }
  };
  return { record, full };
}
