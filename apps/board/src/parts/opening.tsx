import { useSharedWords } from '../words/shared.js';
import css from './opening.module.css';

/** While the first answer is on its way, or when there is no server to give it. */
export function Opening({ away = false }: { readonly away?: boolean }) {
  const say = useSharedWords();
  return (
    <main className={css['opening']} role="status">
      {away ? say('lostServer') : say('opening')}
      {away && <p>{say('lostServerNone')}</p>}
    </main>
  );
}
