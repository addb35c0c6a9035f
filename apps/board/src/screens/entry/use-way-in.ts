import type { Me } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { homeOf } from '../../home-of.js';
import { NoAnswer, Refused } from '../../live/refused.js';
import { useBecome } from '../../live/use-me.js';

interface WayIn {
  /** `then`: where to go on; without it to where this device begins. */
  readonly enter: (asking: () => Promise<Me>, then?: string) => Promise<boolean>;
  readonly busy: boolean;
  readonly failed: Refused | NoAnswer | undefined;
}

/** Goes in by whichever way: on success to where this device begins, else with the reason why not. */
export function useWayIn(): WayIn {
  const become = useBecome();
  const [, go] = useLocation();
  const [busy, setBusy] = useState(false);
  const [failed, setFailed] = useState<Refused | NoAnswer>();
  const enter = async (asking: () => Promise<Me>, then?: string) => {
    setBusy(true);
    setFailed(undefined);
    try {
      const me = await asking();
      become(me);
      go(then ?? homeOf(me), { replace: true });
      return true;
    } catch (error) {
      if (!(error instanceof Refused || error instanceof NoAnswer)) throw error;
      setFailed(error);
      return false;
    } finally {
      setBusy(false);
    }
  };
  return { enter, busy, failed };
}
