import { foodStage, limitName, remedy, type CookView, type FoodEntry, type FoodEntryView, type FoodStage, type YardState } from '@stokehold/domain/contract';
import { epochS } from '@stokehold/domain/quantity';
import { useState } from 'react';
import { yardNowMs } from '../../live/heard.js';
import { useCommand } from '../../live/use-command.js';
import { Caution } from '../../parts/caution.js';
import { Choice } from '../../parts/choice.js';
import { Field, Pick } from '../../parts/field.js';
import { FormReading, type TypedWall, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form, Panel } from '../../parts/panel.js';
import { WallField } from '../../parts/wall-field.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { isSecond, wallOf } from '../../units/typed-wall-time.js';
import { useFigures } from '../../units/use-figures.js';
import { useFoodWords } from '../../words/food.js';

type What = FoodEntry['kind'];
const WHAT = ['reading', 'wrapped', 'action'] as const;

interface RecordFormProps {
  readonly cook: CookView;
  readonly state: YardState;
  /** The line this one corrects, if it corrects one. */
  readonly correcting: FoodEntryView | undefined;
  readonly onDone: () => void;
}

/** A line of the log: what was read, how it was wrapped, or what was done about a limit. */
export function RecordForm({ cook, state, correcting, onDone }: RecordFormProps) {
  const say = useFoodWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('recordFood');
  const zone = state.yard.timeZone;
  const [start] = useState(() => epochS((correcting ? Date.parse(correcting.at) : yardNowMs()) / 1000));
  const [what, setWhat] = useState<What>('reading');
  const [at, setAt] = useState<TypedWall>({ wall: wallOf(start, zone), again: isSecond(start, zone) });
  const [temp, setTemp] = useState('');
  const [stage, setStage] = useState<FoodStage>(correcting?.stage ?? (cook.offAt === null ? 'cooking' : 'holding'));
  const [wrapIn, setWrapIn] = useState<'foil' | 'paper'>('foil');
  const [limit, setLimit] = useState<(typeof limitName.options)[number]>('cooling');
  const [action, setAction] = useState<(typeof remedy.options)[number]>('cut-smaller');
  const [note, setNote] = useState('');
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const [kept, setKept] = useState(false);
  const send = async () => {
    const reading = new FormReading(figures, zone);
    const when = reading.instant('at', at);
    const tempC = what === 'reading' ? reading.number('temp', temp, { as: 'food', min: -40, max: 250 }) : 0;
    setWrongs(reading.wrongs);
    setKept(false);
    if (!reading.good || when === undefined || tempC === undefined) return;
    const about = { cookId: cook.id, at: when, ...(note.trim() !== '' && { note: note.trim() }), ...(correcting && { corrects: correcting.id }) };
    const entry: FoodEntry =
      what === 'reading' ? { kind: 'reading', ...about, stage, tempC } : what === 'wrapped' ? { kind: 'wrapped', ...about, in: wrapIn } : { kind: 'action', ...about, action, limit };
    if (!(await command.send({ entries: [entry] }))) return;
    setTemp('');
    setNote('');
    setKept(true);
    onDone();
  };
  return (
    <Panel title={say('record')}>
      {correcting && <p>{say('log.correcting', { time: figures.dayTime(correcting.at) })}</p>}
      {!correcting && <Choice label={say('record.what')} value={what} onChoose={setWhat} options={WHAT.map((value) => ({ value, label: say(value === 'reading' ? 'record.temp' : value === 'wrapped' ? 'record.wrap' : 'record.action') }))} />}
      <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('record.save')} done={kept ? say('record.kept') : undefined} onCancel={correcting ? onDone : undefined}>
        <Fields>
          {what === 'reading' && (
            <>
              <Field label={say('record.reading')} unit={figures.unit('food')} inputMode="decimal" value={temp} wrong={wrongText(wrongs['temp'])} onChange={(event) => setTemp(event.target.value)} />
              <Pick label={say('record.stage')} value={stage} onChange={(event) => setStage(foodStage.parse(event.target.value))}>
                {foodStage.options.map((one) => <option key={one} value={one}>{say(`stage.${one}`)}</option>)}
              </Pick>
            </>
          )}
          {what === 'wrapped' && (
            <Pick label={say('record.in')} value={wrapIn} onChange={(event) => setWrapIn(event.target.value === 'paper' ? 'paper' : 'foil')}>
              {(['foil', 'paper'] as const).map((one) => <option key={one} value={one}>{say(`wrap.${one}`)}</option>)}
            </Pick>
          )}
          {what === 'action' && (
            <>
              <Pick label={say('record.action')} value={action} onChange={(event) => setAction(remedy.parse(event.target.value))}>
                {remedy.options.map((one) => <option key={one} value={one}>{say(`remedy.${one}`)}</option>)}
              </Pick>
              <Pick label={say('record.limit')} value={limit} onChange={(event) => setLimit(limitName.parse(event.target.value))}>
                {limitName.options.map((one) => <option key={one} value={one}>{say(`limit.${one}`)}</option>)}
              </Pick>
            </>
          )}
          <WallField label={say('record.at')} zone={zone} value={at} wrong={wrongText(wrongs['at'])} onChange={setAt} />
          <Field label={say('record.note')} value={note} maxLength={500} onChange={(event) => setNote(event.target.value)} />
        </Fields>
        <Caution about="food" />
      </Form>
    </Panel>
  );
}
