import { askAfterPit, type AfterPitView, type AskAfterPit, type CookView } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useCommand } from '../../live/use-command.js';
import { Caution } from '../../parts/caution.js';
import { Field, Pick } from '../../parts/field.js';
import { FormReading, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form, Panel } from '../../parts/panel.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useFigures } from '../../units/use-figures.js';
import { useFoodWords } from '../../words/food.js';
import { afterSaid } from './after-said.js';
import css from './food.module.css';

const HOLD_IN = askAfterPit.shape.holdIn.options;
const COOL_IN = askAfterPit.shape.coolIn.options;
/** Two inches. */
const USUAL_SLICE_M = 0.0508;
const MOST_HOURS = 48;

/** What becomes of a cook after the pit as it is meant: carry-over, rest, kept hot, cooled, and when to portion. Asked, answered, kept nowhere. */
export function AfterPanel({ cook }: { readonly cook: CookView }) {
  const say = useFoodWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('afterPit');
  const [holdIn, setHoldIn] = useState<AskAfterPit['holdIn']>('insulated-box');
  const [coolIn, setCoolIn] = useState<AskAfterPit['coolIn']>('moving-chiller');
  const [hours, setHours] = useState('4');
  const [slice, setSlice] = useState(() => String(figures.shown('length', USUAL_SLICE_M)));
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const [answer, setAnswer] = useState<{ readonly view: AfterPitView; readonly sliceM: number }>();
  const send = async () => {
    const reading = new FormReading(figures, 'UTC');
    const held = reading.number('hours', hours, { min: 0, max: MOST_HOURS });
    const sliceM = reading.number('slice', slice, { as: 'length', min: 0.01, max: 0.3, was: USUAL_SLICE_M });
    setWrongs(reading.wrongs);
    setAnswer(undefined);
    if (!reading.good || held === undefined || sliceM === undefined) return;
    const view = await command.send({ cookId: cook.id, holdIn, holdS: held * 3600, coolIn, sliceM });
    if (view) setAnswer({ view, sliceM });
  };
  return (
    <Panel title={say('after')}>
      <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('after.ask')}>
        <Fields>
          <Pick label={say('after.holdIn')} value={holdIn} onChange={(event) => setHoldIn(HOLD_IN.find((one) => one === event.target.value) ?? 'insulated-box')}>
            {HOLD_IN.map((one) => <option key={one} value={one}>{say(`standing.${one}`)}</option>)}
          </Pick>
          <Field label={say('after.hours')} inputMode="decimal" value={hours} wrong={wrongText(wrongs['hours'])} onChange={(event) => setHours(event.target.value)} />
          <Pick label={say('after.coolIn')} value={coolIn} onChange={(event) => setCoolIn(COOL_IN.find((one) => one === event.target.value) ?? 'moving-chiller')}>
            {COOL_IN.map((one) => <option key={one} value={one}>{say(`standing.${one}`)}</option>)}
          </Pick>
          <Field label={say('after.slice')} unit={figures.unit('length')} inputMode="decimal" value={slice} wrong={wrongText(wrongs['slice'])} onChange={(event) => setSlice(event.target.value)} />
        </Fields>
      </Form>
      {answer && (
        <ul className={css['rows']} role="status">
          {afterSaid(say, figures, answer.view, answer.sliceM).map((line) => <li key={line}>{line}</li>)}
        </ul>
      )}
      <Caution about="food" />
    </Panel>
  );
}
