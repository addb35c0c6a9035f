import type { CutSettings } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useCommand } from '../../live/use-command.js';
import { Field, Pick } from '../../parts/field.js';
import { FormReading, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form, Panel } from '../../parts/panel.js';
import { useWrongText } from '../../parts/wrong-text.js';
import type { ShownAs } from '../../units/scale.js';
import { useFigures } from '../../units/use-figures.js';
import { useFoodWords } from '../../words/food.js';
import { changedCut, CUT_NUMBERS, type CutNumber, typedOf } from './cut-draft.js';

interface CutFormProps {
  readonly cut: CutSettings;
  readonly onDone: () => void;
  readonly onSaved: () => Promise<void>;
}

/** The values of a cut that a kitchen knows better than a table does. */
export function CutForm({ cut, onDone, onSaved }: CutFormProps) {
  const say = useFoodWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('saveCut');
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>(() => typedOf(cut, (as, si) => String(figures.shown(as, si))));
  const [wrapIn, setWrapIn] = useState<'none' | 'foil' | 'paper'>(cut.wrap?.kind ?? 'none');
  const [source, setSource] = useState(cut.source);
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const send = async () => {
    const reading = new FormReading(figures, 'UTC');
    const changed = changedCut(cut, { typed, wrapIn, source }, reading);
    setWrongs(reading.wrongs);
    if (!reading.good || !changed) return;
    if (!(await command.send({ cut: changed }))) return;
    await onSaved();
    onDone();
  };
  const unit = ({ as }: { readonly as?: ShownAs }) => (as ? figures.unit(as) : undefined);
  const label = (name: CutNumber) => say(`cuts.${name}`, { temp: figures.of('temp', 90) });
  return (
    <Panel title={cut.name}>
      <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('cuts.save')} onCancel={onDone}>
        <Fields>
          {CUT_NUMBERS.filter(({ name }) => name !== 'wrapTemp' || wrapIn !== 'none').map((one) => (
            <Field key={one.name} label={label(one.name)} unit={unit(one)} inputMode="decimal" value={typed[one.name] ?? ''} wrong={wrongText(wrongs[one.name])} onChange={(event) => setTyped({ ...typed, [one.name]: event.target.value })} />
          ))}
          <Pick label={say('cuts.wrapIn')} value={wrapIn} onChange={(event) => setWrapIn((['foil', 'paper'] as const).find((one) => one === event.target.value) ?? 'none')}>
            <option value="none">{say('cuts.wrapNone')}</option>
            {(['foil', 'paper'] as const).map((one) => <option key={one} value={one}>{say(`wrap.${one}`)}</option>)}
          </Pick>
          <Field label={say('cuts.source')} value={source} maxLength={300} onChange={(event) => setSource(event.target.value)} />
        </Fields>
      </Form>
    </Panel>
  );
}
