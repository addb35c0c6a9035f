import { useEffect } from 'react';

/**
 * Keeps the screen on while the calling screen is in front. Browsers let go of the lock whenever the page is hidden, so
 * it is asked for again; where there is none (plain HTTP, old browsers, a battery nearly empty) the screen sleeps as ever.
 */
export function useAwake(): void {
  useEffect(() => {
    let held: WakeLockSentinel | undefined;
    let left = false;
    const hold = async () => {
      if (document.visibilityState !== 'visible' || (held && !held.released)) return;
      held = await navigator.wakeLock?.request('screen').catch(() => undefined);
      if (left) await held?.release();
    };
    const onReturn = () => void hold();
    void hold();
    document.addEventListener('visibilitychange', onReturn);
    return () => {
      left = true;
      document.removeEventListener('visibilitychange', onReturn);
      void held?.release();
    };
  }, []);
}
