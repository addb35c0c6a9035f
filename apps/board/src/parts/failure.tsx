import { useQueryClient } from '@tanstack/react-query';
import type { YardState } from '@stokehold/domain/contract';
import { STATE } from '../live/query-keys.js';
import { Refused, type NoAnswer } from '../live/refused.js';
import { figuresOf } from '../units/figures.js';
import { useSharedWords } from '../words/shared.js';
import { useLanguage } from '../words/words.js';
import css from './failure.module.css';
import { refusalInWords } from './refusal-words.js';

/** Why a command was not done: the refusal's sentence, whom it is about and the fields it speaks of, or that no answer came. */
export function Failure({ of }: { readonly of: Refused | NoAnswer | undefined }) {
  const say = useSharedWords();
  const language = useLanguage();
  // As it is known already: a screen before sign-in has no yard and asks for none.
  const state = useQueryClient().getQueryData<YardState>(STATE);
  if (!of) return null;
  const figures = figuresOf({ units: state?.yard.units ?? 'us', timeZone: state?.yard.timeZone ?? 'UTC', language });
  const fields = of instanceof Refused ? (of.problem.fields ?? []) : [];
  return (
    <div className={css['failure']} role="alert">
      {of instanceof Refused ? refusalInWords(of.problem, { say, figures, state }) : say('noAnswer')}
      {fields.length > 0 && (
        <ul>
          {fields.map((field) => (
            <li key={field.path}>
              {field.path}: {field.wants}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
