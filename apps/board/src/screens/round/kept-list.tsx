import type { YardState } from '@stokehold/domain/contract';
import { takeBack, type Kept } from '../../live/kept.js';
import { useKept } from '../../live/use-kept.js';
import { Button } from '../../parts/button.js';
import { Refusal } from '../../parts/refusal.js';
import { useFigures } from '../../units/use-figures.js';
import { useRoundWords } from '../../words/round.js';
import { useSharedWords } from '../../words/shared.js';
import { keptWords } from './kept-words.js';
import css from './round.module.css';

interface KeptProps {
  readonly state: YardState | undefined;
  readonly personId: string;
}

function useNamed(state: YardState | undefined): (one: Kept) => string {
  const say = useRoundWords();
  const shared = useSharedWords();
  const figures = useFigures();
  return (one) => keptWords(one, { state, say, shared, figures });
}

/** What the server refused, with its reason, above everything, until it is corrected or dropped. */
export function RefusedList({ state, onCorrect }: Pick<KeptProps, 'state'> & { readonly onCorrect: (kept: Kept) => void }) {
  const say = useRoundWords();
  const named = useNamed(state);
  const refused = useKept().filter((one) => one.refused);
  if (refused.length === 0) return null;
  return (
    <section className={css['kept']}>
      <h2>{say('refusedTitle')}</h2>
      {refused.map((one) => (
        <div key={one.nth} className={css['refused']} role="alert">
          <p>
            <strong>{named(one)}</strong>: {one.refused && <Refusal problem={one.refused} />}
          </p>
          <div className={css['pair']}>
            {one.route === 'recordCheck' && <Button onClick={() => onCorrect(one)}>{say('correct')}</Button>}
            <Button onClick={() => void takeBack(one.nth)}>{say('drop')}</Button>
          </div>
        </div>
      ))}
    </section>
  );
}

/** What waits for signal, or for its person; while it waits it can be undone. */
export function WaitingList({ state, personId }: KeptProps) {
  const say = useRoundWords();
  const named = useNamed(state);
  const waiting = useKept().filter((one) => !one.refused);
  if (waiting.length === 0) return null;
  const name = (id: string) => state?.people.find((person) => person.id === id)?.name ?? '';
  return (
    <section className={css['kept']}>
      <h2>{say('unsentTitle')}</h2>
      {waiting.map((one) => (
        <div key={one.nth} className={css['waiting']}>
          <span>
            {named(one)}
            {one.personId !== personId && `, ${say('waitsFor', { who: name(one.personId) })}`}
          </span>
          {one.personId === personId && <Button onClick={() => void takeBack(one.nth)}>{say('undo')}</Button>}
        </div>
      ))}
    </section>
  );
}
