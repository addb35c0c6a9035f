import { useConnection } from '../live/use-yard.js';
import { useSharedWords } from '../words/shared.js';
import { ageText } from './age.js';
import css from './connection-notice.module.css';

/** Says that the server is lost and how old everything on the screen is. */
export function ConnectionNotice() {
  const say = useSharedWords();
  const connection = useConnection();
  if (connection.kind !== 'stale') return null;
  return (
    <div className={css['lost']} role="alert">
      <span>{say('lostServer')}</span>
      <span className="figure" aria-live="off">
        {say('lostServerAge', { age: ageText(connection.ageS) })}
      </span>
    </div>
  );
}
