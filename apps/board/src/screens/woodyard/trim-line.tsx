import type { TrimView, YardState } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useCommand } from '../../live/use-command.js';
import { Button } from '../../parts/button.js';
import { Field } from '../../parts/field.js';
import { FormReading, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form } from '../../parts/panel.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useFigures } from '../../units/use-figures.js';
import { useWoodyardWords } from '../../words/woodyard.js';
import css from './forecast.module.css';
import { untrimmedOn } from './stack.js';

interface TrimLineProps {
  readonly line: TrimView;
  readonly lot: string;
  readonly pit: string;
  readonly state: YardState;
}

/** One line of the trim list, and the button for whoever has done it. */
export function TrimLine({ line, lot, pit, state }: TrimLineProps) {
  const say = useWoodyardWords();
  const figures = useFigures();
  const [open, setOpen] = useState(false);
  const onCart = untrimmedOn(state.wood.carts, line);
  return (
    <li className="figure">
      <strong className={css['strong']}>{say('trim.line', { count: line.splits, lot, pit })}</strong>{' '}
      {say('trim.to', { length: figures.of('length', line.pieceLengthM), cuts: line.cuts, pieces: line.pieces })}
      {line.offcuts > 0 && ` ${say('trim.offcuts', { count: line.offcuts, length: figures.of('length', line.offcutM) })}`}
      {line.short && <span className={css['soon']}> ▲ {say('trim.short')}</span>}
      {onCart === 0 && <span className={css['quiet']}> {say('trim.haulFirst')}</span>}
      {onCart > 0 && !open && <p className={css['deeds']}><Button onClick={() => setOpen(true)}>{say('trim.done')}</Button></p>}
      {open && <TrimForm {...{ line, state }} most={onCart} onDone={() => setOpen(false)} />}
    </li>
  );
}

function TrimForm({ line, most, state, onDone }: { readonly line: TrimView; readonly most: number; readonly state: YardState; readonly onDone: () => void }) {
  const say = useWoodyardWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('trimSplits');
  const [splits, setSplits] = useState(String(Math.min(most, line.splits)));
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const send = async () => {
    const reading = new FormReading(figures, state.yard.timeZone);
    const count = reading.number('splits', splits, { min: 1, max: most, whole: true });
    setWrongs(reading.wrongs);
    if (count !== undefined && (await command.send({ lotId: line.lotId, pitId: line.pitId, splits: count }))) onDone();
  };
  return (
    <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('trim.save')} onCancel={onDone}>
      <Fields>
        <Field label={say('trim.many')} inputMode="numeric" value={splits} hint={say('upTo', { count: most })} wrong={wrongText(wrongs['splits'])} onChange={(event) => setSplits(event.target.value)} />
      </Fields>
    </Form>
  );
}
