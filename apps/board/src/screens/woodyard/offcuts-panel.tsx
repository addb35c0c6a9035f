import type { LotId, PitId } from '@stokehold/domain/quantity';
import type { LotView, YardState } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useCommand } from '../../live/use-command.js';
import { Button } from '../../parts/button.js';
import { Field, Pick } from '../../parts/field.js';
import { FormReading, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form, Panel } from '../../parts/panel.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useFigures } from '../../units/use-figures.js';
import { useWoodyardWords } from '../../words/woodyard.js';
import css from './forecast.module.css';

/** What trimming left over: how many lie there, of which lots; what went on at lighting, and a count. */
export function OffcutsPanel({ state }: { readonly state: YardState }) {
  const say = useWoodyardWords();
  const [doing, setDoing] = useState<'lit' | 'count'>();
  const lots = state.wood.lots.filter(({ offcuts }) => offcuts > 0);
  const all = lots.reduce((sum, { offcuts }) => sum + offcuts, 0);
  const close = () => setDoing(undefined);
  return (
    <Panel title={say('offcuts')}>
      <p className="figure">
        <strong className={css['strong']}>{say('offcuts.lie', { count: all })}</strong>{' '}
        {lots.map(({ name, offcuts }) => say('offcuts.of', { count: offcuts, lot: name })).join(', ')}
      </p>
      <p className={css['quiet']}>{say('offcuts.for')}</p>
      {doing === 'lit' && <LitForm state={state} onDone={close} />}
      {doing === 'count' && <CountForm lots={state.wood.lots} zone={state.yard.timeZone} onDone={close} />}
      {!doing && (
        <p className={css['deeds']}>
          <Button onClick={() => setDoing('lit')}>{say('offcuts.lit')}</Button>
          <Button onClick={() => setDoing('count')} disabled={state.wood.lots.length === 0}>{say('offcuts.count')}</Button>
        </p>
      )}
    </Panel>
  );
}

/** Offcuts that went on a fire when it was lit; those of a later check are recorded there. */
function LitForm({ state, onDone }: { readonly state: YardState; readonly onDone: () => void }) {
  const say = useWoodyardWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('burnOffcuts');
  const pits = state.pits.filter(({ pit }) => !pit.retired);
  const [pitId, setPitId] = useState<string>((pits.find(({ tonight }) => tonight !== null) ?? pits[0])?.pit.id ?? '');
  const [pieces, setPieces] = useState('');
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const send = async () => {
    const reading = new FormReading(figures, state.yard.timeZone);
    const count = reading.number('pieces', pieces, { min: 1, max: 5000, whole: true });
    setWrongs(reading.wrongs);
    if (count !== undefined && (await command.send({ pitId: pitId as PitId, pieces: count }))) onDone();
  };
  return (
    <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('offcuts.lit.save')} onCancel={onDone}>
      <Fields>
        <Pick label={say('offcuts.pit')} value={pitId} onChange={(event) => setPitId(event.target.value)}>
          {pits.map(({ pit }) => <option key={pit.id} value={pit.id}>{pit.name}</option>)}
        </Pick>
        <Field label={say('offcuts')} inputMode="numeric" value={pieces} wrong={wrongText(wrongs['pieces'])} onChange={(event) => setPieces(event.target.value)} />
      </Fields>
    </Form>
  );
}

function CountForm({ lots, zone, onDone }: { readonly lots: readonly LotView[]; readonly zone: string; readonly onDone: () => void }) {
  const say = useWoodyardWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('recountOffcuts');
  const first = lots.find(({ offcuts }) => offcuts > 0) ?? lots[0];
  // The book as it stood when the count began: what was cut or burned since is told, not overwritten.
  const [counted, setCounted] = useState({ lotId: first?.id as string, book: first?.offcuts ?? 0 });
  const [found, setFound] = useState('');
  const [reason, setReason] = useState('');
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const send = async () => {
    const reading = new FormReading(figures, zone);
    const count = reading.number('found', found, { min: 0, max: 5000, whole: true });
    const why = reading.text('reason', reason, 500);
    setWrongs(reading.wrongs);
    if (count === undefined || why === undefined) return;
    if (await command.send({ lotId: counted.lotId as LotId, found: count, reason: why, book: counted.book })) onDone();
  };
  return (
    <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('recount.save')} onCancel={onDone}>
      <Fields>
        <Pick label={say('offcuts.lot')} value={counted.lotId} onChange={(event) => setCounted({ lotId: event.target.value, book: lots.find(({ id }) => id === event.target.value)?.offcuts ?? 0 })}>
          {lots.map(({ id, name }) => <option key={id} value={id}>{name}</option>)}
        </Pick>
        <Field label={say('recount.found')} inputMode="numeric" value={found} hint={say('recount.book', { count: counted.book })} wrong={wrongText(wrongs['found'])} onChange={(event) => setFound(event.target.value)} />
        <Field label={say('recount.reason')} value={reason} maxLength={500} wrong={wrongText(wrongs['reason'])} onChange={(event) => setReason(event.target.value)} />
      </Fields>
    </Form>
  );
}
