import type { YardState } from '@stokehold/domain/contract';
import { takeBack, type Kept } from '../../live/kept.js';
import { useKept } from '../../live/use-kept.js';
import { Button } from '../../parts/button.js';
import { useFigures } from '../../units/use-figures.js';
import { useRoundWords } from '../../words/round.js';
import { useSharedWords } from '../../words/shared.js';
import { keptWords } from './kept-words.js';
import css from './round.module.css';

interface KeptListProps {
  readonly state: YardState | undefined;
  readonly personId: string;
  readonly onCorrect: (kept: Kept) => void;
}

/** What the server has not taken: what it refused, with its reason, and what is still waiting; nothing leaves unseen. */
export function KeptList({ state, personId, onCorrect }: KeptListProps) {
  const say = useRoundWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const kept = useKept();
  if (kept.length === 0) return null;
  const named = (one: Kept) => keptWords(one, { state, say, shared, figures });
  const refused = kept.filter((one) => one.refused);
  const waiting = kept.filter((one) => !one.refused);
  return (
    <section className={css['kept']}>
      {refused.length > 0 && <h2>{say('refusedTitle')}</h2>}
      {refused.map((one) => (
        <div key={one.nth} className={css['refused']} role="alert">
          <p>
            <strong>{named(one)}</strong>: {one.refused && shared(`refusal.${one.refused.code}`)}
          </p>
          <div className={css['pair']}>
            {one.route === 'recordCheck' && <Button onClick={() => onCorrect(one)}>{say('correct')}</Button>}
            <Button onClick={() => void takeBack(one.nth)}>{say('drop')}</Button>
          </div>
        </div>
      ))}
      {waiting.length > 0 && <h2>{say('unsentTitle')}</h2>}
      {waiting.map((one) => (
        <div key={one.nth} className={css['waiting']}>
          <span>
            {named(one)}
            {one.personId !== personId && `, ${say('waitsFor', { who: state?.people.find((person) => person.id === one.personId)?.name ?? '' })}`}
          </span>
          {one.personId === personId && <Button onClick={() => void takeBack(one.nth)}>{say('undo')}</Button>}
        </div>
      ))}
    </section>
  );
}
