import { useLayoutEffect, useRef, type RefObject } from 'react';

const SLIDE_MS = 300;

/** Rows that change places slide there; whoever asks for less motion sees them stand there at once. */
export function useSlides(rows: RefObject<HTMLElement | null>, order: string): void {
  const before = useRef(new Map<string, number>());
  useLayoutEffect(() => {
    const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
    const after = new Map<string, number>();
    for (const row of rows.current?.children ?? []) {
      if (!(row instanceof HTMLElement) || !row.dataset['row']) continue;
      const top = row.offsetTop;
      const from = before.current.get(row.dataset['row']);
      after.set(row.dataset['row'], top);
      if (from === undefined || from === top || still) continue;
      row.animate([{ transform: `translateY(${from - top}px)` }, { transform: 'none' }], { duration: SLIDE_MS, easing: 'ease-out' });
    }
    before.current = after;
  }, [rows, order]);
}
