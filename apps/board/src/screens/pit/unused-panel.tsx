import type { FirePage } from '@stokehold/domain/contract';
import { Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { usePitWords } from '../../words/pit.js';
import css from './pit.module.css';

/** Readings that were kept and not used, and why: nothing vanishes without a word. */
export function UnusedPanel({ page }: { readonly page: FirePage }) {
  const say = usePitWords();
  const figures = useFigures();
  return (
    <Panel title={say('unused')}>
      {page.unused.length === 0 && <p>{say('unused.none')}</p>}
      <ul className={`${css['unused']} figure`}>
        {page.unused.map(({ from, until, end, why, count }) => (
          <li key={`${from}${end}${why}`}>{say('unused.row', { from: figures.time(from), until: figures.time(until), end: say(`end.${end}`), why: say(`unused.${why}`), count })}</li>
        ))}
      </ul>
    </Panel>
  );
}
