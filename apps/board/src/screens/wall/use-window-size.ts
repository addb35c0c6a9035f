import { useSyncExternalStore } from 'react';

const subscribe = (changed: () => void) => {
  addEventListener('resize', changed);
  return () => removeEventListener('resize', changed);
};

/** The window in CSS px; on a wall board it is the whole screen. */
export function useWindowSize(): { readonly widthPx: number; readonly heightPx: number } {
  const text = useSyncExternalStore(subscribe, () => `${innerWidth}x${innerHeight}`);
  const [widthPx = 1920, heightPx = 1080] = text.split('x').map(Number);
  return { widthPx, heightPx };
}
