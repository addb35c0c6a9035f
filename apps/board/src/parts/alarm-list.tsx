import type { AlarmView, YardState } from '@stokehold/domain/contract';
import { useCommand } from '../live/use-command.js';
import { useMay } from '../live/use-setup.js';
import { useFigures } from '../units/use-figures.js';
import { useAlarmWords } from '../words/alarm.js';
import { useSharedWords } from '../words/shared.js';
import { alarmRows, callsNow, holds, subjectText, toldWords } from './alarms-said.js';
import { Button } from './button.js';
import { Failure } from './failure.js';
import css from './troubles.module.css';

interface AlarmListProps {
  readonly state: YardState;
  /** Which alarms; without it all. */
  readonly alarms?: readonly AlarmView[];
}

/** Alarms with who was told, what to do, and the buttons to note them and set them aside; silent where none stands. */
export function AlarmList({ state, alarms = state.alarms }: AlarmListProps) {
  const say = useAlarmWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const rows = alarmRows(alarms);
  if (rows.length === 0) return null;
  const nameOf = (id: string) => state.people.find((one) => one.id === id)?.name ?? '';
  return (
    <ul className={css['troubles']} aria-label={say('title')}>
      {rows.map(({ alarm, under }) => (
        <li key={alarm.id} className={`${css['trouble']} ${callsNow(alarm) && alarm.priority !== 'low' ? css['now'] : ''}`} aria-live={callsNow(alarm) ? 'assertive' : undefined}>
          <p>
            <strong>
              <span aria-hidden="true">▲ </span>
              {[subjectText(alarm, state), shared(`alarm.${alarm.kind}`)].filter(Boolean).join(': ')}
            </strong>{' '}
            {say('since', { time: figures.time(alarm.raisedAt) })}
          </p>
          {holds(alarm) && <p className={css['does']}>{say(`${alarm.kind}.do`)}</p>}
          <p>
            {toldWords(alarm, nameOf, say, figures)}
            {under > 0 && `, ${say('more', { count: under })}`}
          </p>
          <Hands alarm={alarm} />
        </li>
      ))}
    </ul>
  );
}

/** Taking note does not end an alarm: it stops calling. Setting aside ends by itself. */
function Hands({ alarm }: { readonly alarm: AlarmView }) {
  const say = useAlarmWords();
  const mayRecord = useMay('record');
  const acknowledge = useCommand('acknowledgeAlarm');
  const shelve = useCommand('shelveAlarm');
  const unshelve = useCommand('unshelveAlarm');
  if (!mayRecord) return null;
  const alarmId = alarm.id;
  const { longestShelfS } = alarm;
  return (
    <div className={css['hands']}>
      {alarm.state !== 'acknowledged' && !alarm.shelf && !alarm.suppressedBy && (
        <Button disabled={acknowledge.sending} onClick={() => void acknowledge.send({ alarmId })}>{say('note')}</Button>
      )}
      {alarm.shelf && <Button disabled={unshelve.sending} onClick={() => void unshelve.send({ alarmId })}>{say('unshelve')}</Button>}
      {longestShelfS !== null && callsNow(alarm) && (
        <Button look="bare" disabled={shelve.sending} onClick={() => void shelve.send({ alarmId, forS: Math.min(longestShelfS, 3600), way: 'timed' })}>
          {say('shelve', { minutes: Math.min(longestShelfS, 3600) / 60 })}
        </Button>
      )}
      <Failure of={acknowledge.failed ?? shelve.failed ?? unshelve.failed} />
    </div>
  );
}
