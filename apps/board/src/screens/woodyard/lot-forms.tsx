import { epochS, toIso, type PitId } from '@stokehold/domain/quantity';
import type { LotView, YardState } from '@stokehold/domain/contract';
import { useState } from 'react';
import { yardNowMs } from '../../live/heard.js';
import type { Reply } from '../../live/ask.js';
import { useCommand } from '../../live/use-command.js';
import { Button } from '../../parts/button.js';
import { Field, Pick } from '../../parts/field.js';
import { FormReading, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form } from '../../parts/panel.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useFigures } from '../../units/use-figures.js';
import { useWoodyardWords } from '../../words/woodyard.js';

interface LotFormProps {
  readonly lot: LotView;
  readonly state: YardState;
  readonly onDone: () => void;
}
const onCart = (state: YardState, pitId: string, lotId: string): number =>
  state.wood.carts.find((cart) => cart.pitId === pitId)?.lots.find((lot) => lot.lotId === lotId)?.pieces ?? 0;
const pitsInUse = (state: YardState) => state.pits.filter(({ pit }) => !pit.retired);

/** Wood from the stack to a pit's cart, or back. */
export function MoveForm({ lot, state, way, onDone }: LotFormProps & { readonly way: 'pull' | 'bring-back' }) {
  const say = useWoodyardWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('moveWood');
  const offered = pitsInUse(state).filter(({ pit }) => way === 'pull' || onCart(state, pit.id, lot.id) > 0);
  const first = offered.find(({ tonight }) => tonight !== null) ?? offered[0];
  const [pitId, setPitId] = useState<string>(first?.pit.id ?? '');
  const [pieces, setPieces] = useState('');
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const lies = lot.fits.find((fit) => fit.pitId === pitId)?.lies;
  const most = way === 'pull' ? lot.inStack : onCart(state, pitId, lot.id);
  const send = async () => {
    const reading = new FormReading(figures, state.yard.timeZone);
    const count = reading.number('pieces', pieces, { min: 1, max: 5000, whole: true });
    setWrongs(reading.wrongs);
    if (count === undefined) return;
    if (await command.send({ lotId: lot.id, pitId: pitId as PitId, pieces: count, way })) onDone();
  };
  return (
    <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say(`do.${way}`)} onCancel={onDone}>
      <Fields>
        <Pick label={say(way === 'pull' ? 'toCart' : 'fromCart')} value={pitId} onChange={(event) => setPitId(event.target.value)} hint={lies && say(`lies.${lies}`)}>
          {offered.map(({ pit }) => (
            <option key={pit.id} value={pit.id}>{pit.name}</option>
          ))}
        </Pick>
        <Field label={say('pieces')} inputMode="numeric" value={pieces} hint={say('upTo', { count: most })} wrong={wrongText(wrongs['pieces'])} onChange={(event) => setPieces(event.target.value)} />
      </Fields>
    </Form>
  );
}

/** What a count found; the difference is kept with its reason. */
export function RecountForm({ lot, state, onDone }: LotFormProps) {
  const say = useWoodyardWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('recountLot');
  const [place, setPlace] = useState('');
  const [found, setFound] = useState('');
  const [reason, setReason] = useState('');
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const known = place === '' ? lot.inStack : onCart(state, place, lot.id);
  // The book as it stood when the count began: what was moved since is told, not overwritten.
  const [began, setBegan] = useState({ place: '', book: lot.inStack });
  const seen = began.place === place ? began.book : known;
  const send = async () => {
    const reading = new FormReading(figures, state.yard.timeZone);
    const count = reading.number('found', found, { min: 0, max: 5000, whole: true });
    const why = reading.text('reason', reason, 500);
    setWrongs(reading.wrongs);
    if (count === undefined || why === undefined) return;
    if (await command.send({ lotId: lot.id, pitId: place === '' ? null : (place as PitId), found: count, reason: why, book: seen })) onDone();
  };
  return (
    <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('recount.save')} onCancel={onDone}>
      <Fields>
        <Pick label={say('recount.place')} value={place} onChange={(event) => {
          setPlace(event.target.value);
          setBegan({ place: event.target.value, book: event.target.value === '' ? lot.inStack : onCart(state, event.target.value, lot.id) });
        }}>
          <option value="">{say('recount.stack')}</option>
          {pitsInUse(state).map(({ pit }) => (
            <option key={pit.id} value={pit.id}>{say('recount.cart', { pit: pit.name })}</option>
          ))}
        </Pick>
        <Field label={say('recount.found')} inputMode="numeric" value={found} hint={say('recount.book', { count: seen })} wrong={wrongText(wrongs['found'])} onChange={(event) => setFound(event.target.value)} />
        <Field label={say('recount.reason')} value={reason} maxLength={500} wrong={wrongText(wrongs['reason'])} onChange={(event) => setReason(event.target.value)} />
      </Fields>
    </Form>
  );
}

const pickOf = <const T extends string>(all: readonly T[], value: string): T => all.find((one) => one === value) ?? all[0]!;

/** What a meter showed: its basis, the temperature of the wood and the face are corrected for. */
export function MeasureForm({ lot, state, onDone }: LotFormProps) {
  const say = useWoodyardWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('readLot');
  const [percent, setPercent] = useState('');
  const [temp, setTemp] = useState('');
  const [basis, setBasis] = useState<'dry' | 'wet'>('dry');
  const [face, setFace] = useState<'inside' | 'outside'>('inside');
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const [read, setRead] = useState<Reply<'readLot'>>();
  const send = async () => {
    const reading = new FormReading(figures, state.yard.timeZone);
    const shownPercent = reading.number('percent', percent, { min: 0, max: 100 });
    const woodTempC = reading.optionalNumber('temp', temp, { as: 'temp', min: -10, max: 90 });
    setWrongs(reading.wrongs);
    if (shownPercent === undefined || !reading.good) return;
    const reply = await command.send({ lotId: lot.id, shownPercent, basis, face, woodTempC: woodTempC ?? null, measuredAt: toIso(epochS(yardNowMs() / 1000)) });
    if (!reply) return;
    if (reply.remarks.length === 0) onDone();
    else setRead(reply);
  };
  if (read) return <WhatWasRead read={read} onSeen={onDone} />;
  return (
    <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('measure.save')} onCancel={onDone}>
      <Fields>
        <Field label={say('measure.percent')} unit="%" inputMode="decimal" value={percent} hint={say('measure.how')} wrong={wrongText(wrongs['percent'])} onChange={(event) => setPercent(event.target.value)} />
        <Field label={say('measure.temp')} unit={figures.unit('temp')} inputMode="decimal" value={temp} hint={say('measure.tempHint')} wrong={wrongText(wrongs['temp'])} onChange={(event) => setTemp(event.target.value)} />
        <Pick label={say('measure.basis')} value={basis} onChange={(event) => setBasis(pickOf<'dry' | 'wet'>(['dry', 'wet'], event.target.value))}>
          <option value="dry">{say('measure.basis.dry')}</option>
          <option value="wet">{say('measure.basis.wet')}</option>
        </Pick>
        <Pick label={say('measure.face')} value={face} onChange={(event) => setFace(pickOf<'inside' | 'outside'>(['inside', 'outside'], event.target.value))}>
          <option value="inside">{say('measure.face.inside')}</option>
          <option value="outside">{say('measure.face.outside')}</option>
        </Pick>
      </Fields>
    </Form>
  );
}

/** A reading that was kept, with what must be known of it. */
function WhatWasRead({ read, onSeen }: { readonly read: Reply<'readLot'>; readonly onSeen: () => void }) {
  const say = useWoodyardWords();
  const figures = useFigures();
  return (
    <div role="status">
      <p>{say('measure.done', { percent: figures.percent(read.moisture) })}</p>
      <ul>{read.remarks.map((remark) => <li key={remark}>▲ {say(`measure.remark.${remark}`)}</li>)}</ul>
      <Button onClick={onSeen}>{say('remark.seen')}</Button>
    </div>
  );
}
