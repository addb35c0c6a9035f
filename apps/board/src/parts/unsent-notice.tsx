import { useEffect } from 'react';
import { show } from '../live/kept.js';
import { useKept } from '../live/use-kept.js';
import { useSharedWords } from '../words/shared.js';
import css from './connection-notice.module.css';

/** Says on every screen but the round, which lists them, that this device holds records that the server has not. */
export function UnsentNotice() {
  const say = useSharedWords();
  const count = useKept().length;
  useEffect(() => void show(), []);
  return count === 0 ? null : (
    <p className={css['unsent']} role="status">
      {say('unsent', { count })}
    </p>
  );
}
