import { useCallback, useMemo, useSyncExternalStore } from 'react';
import { lastHeard, yardNowMs } from './heard.js';

/** One beat for each pace, shared by all who live by it: however many ask, the screen is drawn once. */
interface Beat {
  count: number;
  readonly listeners: Set<() => void>;
  timer: ReturnType<typeof setInterval> | undefined;
}
const beats = new Map<number, Beat>();

function beatOf(everyMs: number): Beat {
  const known = beats.get(everyMs);
  if (known) return known;
  const beat: Beat = { count: 0, listeners: new Set(), timer: undefined };
  beats.set(everyMs, beat);
  return beat;
}

function follow(everyMs: number, listener: () => void): () => void {
  const beat = beatOf(everyMs);
  beat.listeners.add(listener);
  beat.timer ??= setInterval(() => {
    beat.count++;
    for (const one of beat.listeners) one();
  }, everyMs);
  return () => {
    beat.listeners.delete(listener);
    if (beat.listeners.size > 0) return;
    clearInterval(beat.timer);
    beat.timer = undefined;
  };
}

/** Re-renders at each beat, a second apart by default; returns how many there have been, for nothing but change. */
export function useTick(everyMs = 1000): number {
  return useSyncExternalStore(
    useCallback((listener: () => void) => follow(everyMs, listener), [everyMs]),
    () => beatOf(everyMs).count,
  );
}

/** The yard's clock in ms since 1970, anew at each beat, and once the server is first heard. On a practice night it runs at the night's speed. */
export function useClock(everyMs = 1000): number {
  const tick = useTick(everyMs);
  // Until then it was the device's own clock, which on a practice night shows another time altogether.
  const isHeard = lastHeard().clock !== undefined;
  return useMemo(() => {
    void [tick, isHeard];
    return yardNowMs();
  }, [tick, isHeard]);
}
