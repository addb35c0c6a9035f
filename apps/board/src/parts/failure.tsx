import { Refused, type NoAnswer } from '../live/refused.js';
import { useSharedWords } from '../words/shared.js';
import css from './failure.module.css';
import { Refusal } from './refusal.js';

/** Why a command was not done: the refusal's sentence, whom it is about and the fields it speaks of, or that no answer came. */
export function Failure({ of }: { readonly of: Refused | NoAnswer | undefined }) {
  const say = useSharedWords();
  if (!of) return null;
  const fields = of instanceof Refused ? (of.problem.fields ?? []) : [];
  return (
    <div className={css['failure']} role="alert">
      {of instanceof Refused ? <Refusal problem={of.problem} /> : say('noAnswer')}
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
