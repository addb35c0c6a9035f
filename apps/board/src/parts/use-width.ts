import { useLayoutEffect, useRef, useState, type RefObject } from 'react';

/** The width of an element in CSS px, followed as it changes. */
export function useWidth<E extends HTMLElement>(first: number): { readonly ref: RefObject<E | null>; readonly width: number } {
  const ref = useRef<E>(null);
  const [width, setWidth] = useState(first);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const observer = new ResizeObserver(([entry]) => entry && setWidth(Math.round(entry.contentRect.width)));
    observer.observe(element);
    setWidth(Math.round(element.getBoundingClientRect().width));
    return () => observer.disconnect();
  }, []);
  return { ref, width };
}
