import { ageText } from '../../parts/age.js';
import { useSharedWords } from '../../words/shared.js';
import css from './wall.module.css';

/** Over everything: the server is lost, and how old is what stands behind. */
export function Lost({ ageS }: { readonly ageS: number }) {
  const say = useSharedWords();
  return (
    <div className={css['lost']} role="alert">
      <svg viewBox="0 0 64 64" aria-hidden="true">
        <path d="M10 10 54 54M54 10 10 54" stroke="currentColor" strokeWidth="12" />
      </svg>
      <strong>{say('lostServer')}</strong>
      <span className="figure" aria-live="off">
        {say('lostServerAge', { age: ageText(ageS) })}
      </span>
    </div>
  );
}
