import { epochS, toIso, type DryBasis, type PitId } from '@stokehold/domain/quantity';
import type { LotView, YardState } from '@stokehold/domain/contract';
import { useState } from 'react';
import { yardNowMs } from '../../live/heard.js';
import { useCommand } from '../../live/use-command.js';
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
  const send = async () => {
    const reading = new FormReading(figures, state.yard.timeZone);
    const count = reading.number('found', found, { min: 0, max: 5000, whole: true });
    const why = reading.text('reason', reason, 500);
    setWrongs(reading.wrongs);
    if (count === undefined || why === undefined) return;
    if (await command.send({ lotId: lot.id, pitId: place === '' ? null : (place as PitId), found: count, reason: why })) onDone();
  };
  return (
    <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('recount.save')} onCancel={onDone}>
      <Fields>
        <Pick label={say('recount.place')} value={place} onChange={(event) => setPlace(event.target.value)}>
          <option value="">{say('recount.stack')}</option>
          {pitsInUse(state).map(({ pit }) => (
            <option key={pit.id} value={pit.id}>{say('recount.cart', { pit: pit.name })}</option>
          ))}
        </Pick>
        <Field label={say('recount.found')} inputMode="numeric" value={found} hint={say('recount.book', { count: known })} wrong={wrongText(wrongs['found'])} onChange={(event) => setFound(event.target.value)} />
        <Field label={say('recount.reason')} value={reason} maxLength={500} wrong={wrongText(wrongs['reason'])} onChange={(event) => setReason(event.target.value)} />
      </Fields>
    </Form>
  );
}

/** A meter reading on a freshly split inside face. */
export function MeasureForm({ lot, state, onDone }: LotFormProps) {
  const say = useWoodyardWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('measureLot');
  const [percent, setPercent] = useState('');
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const send = async () => {
    const reading = new FormReading(figures, state.yard.timeZone);
    const value = reading.number('percent', percent, { min: 2, max: 120 });
    setWrongs(reading.wrongs);
    if (value === undefined) return;
    const measuredAt = toIso(epochS(yardNowMs() / 1000));
    if (await command.send({ lotId: lot.id, moisture: (value / 100) as DryBasis, measuredAt })) onDone();
  };
  return (
    <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('measure.save')} onCancel={onDone}>
      <Field label={say('measure.percent')} unit="%" inputMode="decimal" value={percent} hint={say('measure.how')} wrong={wrongText(wrongs['percent'])} onChange={(event) => setPercent(event.target.value)} />
    </Form>
  );
}
