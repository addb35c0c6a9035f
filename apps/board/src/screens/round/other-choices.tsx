import type { PitView } from '@stokehold/domain/contract';
import { Link } from 'wouter';
import { useFigures } from '../../units/use-figures.js';
import { useFireWords } from '../../words/fire.js';
import { useRoundWords } from '../../words/round.js';
import { choicesSaid } from './choices.js';
import css from './round.module.css';

/** To open when somebody doubts: every other choice and what it would do; and the way to this fire's whole night. */
export function OtherChoices({ view, nowMs }: { readonly view: PitView; readonly nowMs: number }) {
  const say = useRoundWords();
  const fire = useFireWords();
  const figures = useFigures();
  const choices = view.advice ? choicesSaid(view.advice, { say, fire, figures, nowMs }) : [];
  return (
    <>
      {choices.length > 0 && (
        <details className={css['choices']}>
          <summary>{say('otherChoices')}</summary>
          <ul>
            {choices.map(({ key, isAdvice, what, brings }) => (
              <li key={key}>
                <p>
                  {isAdvice && <span className={css['quiet']}>{say('choice.this')}: </span>}
                  <strong>{what}</strong>
                </p>
                <p className="figure">{brings}</p>
              </li>
            ))}
          </ul>
        </details>
      )}
      <Link className={css['whole']} href={`/pit/${view.pit.id}`}>
        {say('wholeFire')}
      </Link>
    </>
  );
}
