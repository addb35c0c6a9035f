import { Link } from 'wouter';
import { useCommand } from '../live/use-command.js';
import { useMay } from '../live/use-setup.js';
import { useFireWords } from '../words/fire.js';
import { Button } from './button.js';
import { Failure } from './failure.js';
import type { Trouble } from './troubles-of.js';
import css from './troubles.module.css';

/** What may be wrong at one fire: what it rests on, what to do, and the caution; silent where nothing is. */
export function Troubles({ troubles }: { readonly troubles: readonly Trouble[] }) {
  const say = useFireWords();
  if (troubles.length === 0) return null;
  return (
    <ul className={css['troubles']} aria-label={say('label')}>
      {troubles.map((trouble) => (
        <li key={trouble.key} className={`${css['trouble']} ${trouble.level === 'now' ? css['now'] : ''}`} aria-live={trouble.level === 'now' ? 'assertive' : undefined}>
          <p>
            <strong>
              <span aria-hidden="true">▲ </span>
              {trouble.title}
            </strong>
          </p>
          <p>{trouble.says}</p>
          <p className={css['does']}>{trouble.does}</p>
          {trouble.alarmId && <Seen alarmId={trouble.alarmId} />}
          {trouble.code === 'wet-lot' && <Link href="/woodyard">{say('toLots')}</Link>}
        </li>
      ))}
    </ul>
  );
}

/** Taking note of an alarm does not end it: it stops calling. */
function Seen({ alarmId }: { readonly alarmId: string }) {
  const say = useFireWords();
  const mayRecord = useMay('record');
  const { send, sending, failed } = useCommand('acknowledgeAlarm');
  if (!mayRecord) return null;
  return (
    <>
      <Button disabled={sending} onClick={() => void send({ alarmId })}>
        {say('seen')}
      </Button>
      <Failure of={failed} />
    </>
  );
}
