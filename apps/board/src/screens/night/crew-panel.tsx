import type { PersonId } from '@stokehold/domain/quantity';
import type { PersonOnShift, YardState } from '@stokehold/domain/contract';
import { useState } from 'react';
import { yardNowMs } from '../../live/heard.js';
import { useCommand } from '../../live/use-command.js';
import { Button } from '../../parts/button.js';
import { FormReading, type TypedWall, type Wrong } from '../../parts/form-reading.js';
import { Form, Panel } from '../../parts/panel.js';
import { WallField } from '../../parts/wall-field.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { Failure } from '../../parts/failure.js';
import { useFigures } from '../../units/use-figures.js';
import { wallOf } from '../../units/typed-wall-time.js';
import { epochS } from '@stokehold/domain/quantity';
import { useNightWords } from '../../words/night.js';
import { useSharedWords } from '../../words/shared.js';
import { FairPanel } from './fair-panel.js';
import css from './night.module.css';

/** Who is there, and the place to say that somebody comes later, is away, or is here again. */
export function CrewPanel({ state }: { readonly state: YardState }) {
  const say = useNightWords();
  if (!state.shift || state.shift.people.length === 0) return <Panel title={say('crew.title')}>{say('crew.none')}</Panel>;
  return (
    <>
    <Panel title={say('crew.title')}>
      <ul className={css['rows']}>
        {state.shift.people.map((person) => (
          <Presence key={person.personId} person={person} zone={state.yard.timeZone} />
        ))}
      </ul>
    </Panel>
    <FairPanel state={state} />
    </>
  );
}

function Presence({ person, zone }: { readonly person: PersonOnShift; readonly zone: string }) {
  const say = useNightWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const [asked, setAsked] = useState<'late' | 'away'>();
  const here = useCommand('reportPresence');
  return (
    <li>
      <div className={css['line']}>
        <span>
          <strong className={css['big']}>{person.name}</strong> <span className="figure">{figures.time(person.startsAt)}–{figures.time(person.endsAt)}</span>{' '}
          <span className={person.presence === 'late' || person.presence === 'away' ? css['warn'] : css['quiet']}>
            {person.onBreak ? say('crew.onBreak') : shared(`presence.${person.presence}`)}
            {person.presenceUntil && ` ${say('picture.until', { time: figures.time(person.presenceUntil) })}`}
          </span>
        </span>
        <span className={css['line']}>
          <Button onClick={() => setAsked('late')} aria-label={say('crew.lateOf', { name: person.name })}>{say('crew.late')}</Button>
          <Button onClick={() => setAsked('away')} aria-label={say('crew.awayOf', { name: person.name })}>{say('crew.away')}</Button>
          <Button disabled={here.sending} onClick={() => void here.send({ personId: person.personId, state: 'here' })} aria-label={say('crew.hereOf', { name: person.name })}>{say('crew.here')}</Button>
        </span>
      </div>
      <Failure of={here.failed} />
      {asked && <Until key={asked} personId={person.personId} state={asked} zone={zone} onDone={() => setAsked(undefined)} />}
    </li>
  );
}

interface UntilProps {
  readonly personId: PersonId;
  readonly state: 'late' | 'away';
  readonly zone: string;
  readonly onDone: () => void;
}

const FULL_QUARTER_S = 900;

function Until({ personId, state, zone, onDone }: UntilProps) {
  const say = useNightWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('reportPresence');
  const [until, setUntil] = useState<TypedWall>(() => ({ wall: wallOf(epochS((Math.floor(yardNowMs() / 1000 / FULL_QUARTER_S) + 2) * FULL_QUARTER_S), zone), again: false }));
  const [wrong, setWrong] = useState<Wrong>();
  const send = async () => {
    const reading = new FormReading(figures, zone);
    const [, hour = ''] = until.wall.split('T'); // the day alone says nothing
    const at = hour === '' && state === 'away' ? undefined : reading.instant('until', until);
    setWrong(reading.wrongs['until']);
    if (!reading.good) return;
    if (await command.send({ personId, state, ...(at !== undefined && { until: at }) })) onDone();
  };
  return (
    <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say(state === 'late' ? 'crew.sayLate' : 'crew.sayAway')} onCancel={onDone}>
      <WallField label={say(state === 'late' ? 'crew.comesAt' : 'crew.backAt')} hint={state === 'away' ? say('crew.backHint') : undefined} zone={zone} value={until} onChange={setUntil} wrong={wrongText(wrong)} />
    </Form>
  );
}
