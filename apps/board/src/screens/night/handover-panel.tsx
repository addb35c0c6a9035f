import { useQuery, useQueryClient } from '@tanstack/react-query';
import type { PersonId } from '@stokehold/domain/quantity';
import type { Handover, YardState } from '@stokehold/domain/contract';
import { useId, useState } from 'react';
import { ask } from '../../live/ask.js';
import { useCommand } from '../../live/use-command.js';
import { Pick } from '../../parts/field.js';
import { Form, Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { useNightWords } from '../../words/night.js';
import { usePlanWords } from '../../words/plan.js';
import { HandedOver } from './handed-over.js';
import css from './night.module.css';

/** How the night stands is asked anew while somebody writes. */
const ANEW_MS = 10_000;
const HANDOVERS = ['handovers'] as const;

/** The night goes from one crew to the next: a note, a name, and how it all stood. */
export function HandoverPanel({ state }: { readonly state: YardState }) {
  const say = useNightWords();
  const client = useQueryClient();
  const command = useCommand('signHandover');
  const noteId = useId();
  const [note, setNote] = useState('');
  const [to, setTo] = useState('');
  const [done, setDone] = useState(false);
  const plan = usePlanWords();
  const now = useQuery({ queryKey: ['handover-now', to], refetchInterval: ANEW_MS, queryFn: () => ask('handoverNow', to === '' ? {} : { toPersonId: to }), placeholderData: (before) => before });
  const last = useQuery({ queryKey: HANDOVERS, queryFn: () => ask('handovers', {}) });
  const send = async () => {
    setDone(false);
    if (!(await command.send({ note: note.trim(), toPersonId: to === '' ? null : (to as PersonId) }))) return;
    setNote('');
    setDone(true);
    await client.invalidateQueries({ queryKey: HANDOVERS });
  };
  return (
    <>
      <Panel title={say('handover.title')}>
        <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('handover.sign')} done={done ? say('handover.signed') : undefined}>
          <p>{say('handover.what')}</p>
          <label className={css['quiet']} htmlFor={noteId}>{say('handover.note')}</label>
          <textarea id={noteId} className={css['note']} rows={5} maxLength={500} value={note} onChange={(event) => setNote(event.target.value)} />
          <Pick label={say('handover.to')} value={to} onChange={(event) => setTo(event.target.value)}>
            <option value="">{say('handover.nextCrew')}</option>
            {state.people.map(({ id, name }) => (
              <option key={id} value={id}>{name}</option>
            ))}
          </Pick>
        </Form>
        {now.data && (
          <section className={css['rows2']}>
            <h3>{plan('hand.now')}</h3>
            <HandedOver {...now.data} />
          </section>
        )}
      </Panel>
      <Panel title={say('handover.last')}>
        {last.data?.length === 0 && <p>{say('handover.none')}</p>}
        <ul className={css['rows']}>
          {last.data?.map((handover) => (
            <Signed key={handover.id} handover={handover} />
          ))}
        </ul>
      </Panel>
    </>
  );
}

function Signed({ handover }: { readonly handover: Handover }) {
  const say = useNightWords();
  const figures = useFigures();
  const { signedBy, to, note, signedAt } = handover;
  return (
    <li>
      <p>
        <strong className={css['big']}>{say('handover.by', { from: signedBy, to: to ?? say('handover.nextCrew') })}</strong>{' '}
        <span className={css['quiet']}>{figures.day(signedAt)} {figures.time(signedAt)}</span>
      </p>
      {note && <p>{note}</p>}
      <HandedOver {...handover} />
    </li>
  );
}
