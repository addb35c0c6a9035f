import { useLayoutEffect, useRef, type ReactNode } from 'react';
import { useYard } from '../../live/use-yard.js';
import { useFigures } from '../../units/use-figures.js';
import { usePrintWords } from '../../words/print.js';
import css from './print.module.css';

/** A page with little on it is written larger, for reading from a step away. */
const LARGEST = 1.25;

/** Draws what is on a page together until it fits: a sheet on the wall is one page, whatever the night holds. */
function useOnePage() {
  const inside = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const content = inside.current;
    const room = content?.parentElement;
    if (!content || !room) return;
    content.style.zoom = String(LARGEST);
    for (let tries = 0; tries < 8 && content.offsetHeight * Number(content.style.zoom) > room.clientHeight; tries++) {
      const zoom = Number(content.style.zoom);
      content.style.zoom = String(zoom * Math.max(0.7, Math.min(0.97, room.clientHeight / (content.offsetHeight * zoom))));
    }
  });
  return inside;
}

interface PageProps {
  readonly title: string;
  readonly nowMs: number;
  readonly children: ReactNode;
}

/** One page for the yard's wall: what it is, whose, as of when; on a practice night that it is none to work by. */
export function PrintPage({ title, nowMs, children }: PageProps) {
  const say = usePrintWords();
  const figures = useFigures();
  const yard = useYard()?.yard;
  const inside = useOnePage();
  return (
    <section className={css['page']} aria-label={title}>
      <div ref={inside} className={css['inside']}>
        <header className={css['pageHead']}>
          <h2>{title}</h2>
          {yard?.practice && <strong>{say('practice')}</strong>}
          <span className="figure">{say('asOf', { yard: yard?.name ?? '', day: figures.day(nowMs), time: figures.time(nowMs) })}</span>
        </header>
        {children}
      </div>
    </section>
  );
}
