import type { YardState } from '@stokehold/domain/contract';
import { useFigures } from '../../units/use-figures.js';
import { useWallWords } from '../../words/wall.js';
import css from './wall.module.css';

/** When no fire burns: why, and what comes. */
export function Quiet({ state }: { readonly state: YardState }) {
  const say = useWallWords();
  const figures = useFigures();
  const first = state.shift?.pits.map((pit) => pit.lightAt).sort()[0];
  return (
    <main className={css['none']}>
      <p>{state.shift ? say('noPits') : say('noShift')}</p>
      {first && <p>{say('nextLight', { time: figures.time(first) })}</p>}
    </main>
  );
}
