import { useEffect, useState } from 'react';
import { yardNowMs } from './heard.js';

/** Re-renders each second; returns how many seconds this component has lived, for nothing but change. */
export function useTick(everyMs = 1000): number {
  const [tick, setTick] = useState(0);
  useEffect(() => {
    const timer = setInterval(() => setTick((n) => n + 1), everyMs);
    return () => clearInterval(timer);
  }, [everyMs]);
  return tick;
}

/** The yard's clock in ms since 1970, anew each second. On a practice night it runs at the night's speed. */
export function useClock(): number {
  useTick();
  return yardNowMs();
}
