import type { ProbeId } from '@stokehold/domain/quantity';
import type { PitSettings } from '@stokehold/domain/contract';
import { useState } from 'react';
import { commandKey } from '../../live/command-key.js';
import { useCommand } from '../../live/use-command.js';
import { useSetupChanged } from '../../live/use-setup.js';
import { Button } from '../../parts/button.js';
import { Choice } from '../../parts/choice.js';
import { Field, Pick } from '../../parts/field.js';
import { FormReading, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form, Panel } from '../../parts/panel.js';
import { PitDrawing } from '../../parts/pit-drawing.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { typedNumber } from '../../units/typed-number.js';
import { useFigures } from '../../units/use-figures.js';
import { useSetupWords } from '../../words/setup.js';
import { useSharedWords } from '../../words/shared.js';
import { draftOfPit, pitOfDraft, SIZES, type PitDraft } from './pit-draft.js';
import css from './setup.module.css';

const MOST_ZONES = 6;
const MOST_PROBES = 12;

/** One pit: how it stands, how large it is, its zones, probes and band. */
export function PitForm({ pit, onDone }: { readonly pit: PitSettings; readonly onDone: () => void }) {
  const say = useSetupWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const changed = useSetupChanged();
  const command = useCommand('savePit');
  const [draft, setDraft] = useState<PitDraft>(() => draftOfPit(pit, figures));
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const change = (part: Partial<PitDraft>) => setDraft({ ...draft, ...part });
  const send = async () => {
    const reading = new FormReading(figures, 'UTC');
    const typed = pitOfDraft(draft, pit, reading);
    setWrongs(reading.wrongs);
    if (!typed || !(await command.send({ pit: typed }))) return;
    await changed();
    onDone();
  };
  const drawn = draft.zones.map((zone) => ({ lengthM: Math.max(0.1, typedNumber(zone) ?? 1) }));
  return (
    <Panel title={pit.name === '' ? say('pits.add') : pit.name}>
      <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={shared('do.save')} onCancel={onDone}>
        <div className={css['drawing']}>
          <PitDrawing pit={{ fireEnd: draft.fireEnd, zones: drawn }} lies={[]} bedFrac={1} lit title={shared(`fireEnd.${draft.fireEnd}`)} />
        </div>
        <Fields>
          <Field label={say('pit.name')} value={draft.name} maxLength={60} wrong={wrongText(wrongs['name'])} onChange={(event) => change({ name: event.target.value })} />
          <Field label={say('pit.heading')} unit="°" inputMode="decimal" hint={say('headingHint')} value={draft.heading} wrong={wrongText(wrongs['heading'])} onChange={(event) => change({ heading: event.target.value })} />
        </Fields>
        <Choice
          label={say('pit.fireEnd')} value={draft.fireEnd} onChoose={(fireEnd) => change({ fireEnd })}
          options={[{ value: 'left', label: shared('fireEnd.left') }, { value: 'right', label: shared('fireEnd.right') }]}
        />
        <Fields>
          {SIZES.map(({ field, as }) => (
            <Field key={field} label={say(`pit.${field}`)} unit={figures.unit(as)} inputMode="decimal" value={draft.sizes[field]} wrong={wrongText(wrongs[field])} onChange={(event) => change({ sizes: { ...draft.sizes, [field]: event.target.value } })} />
          ))}
          <Field label={say('pit.low')} unit={figures.unit('temp')} inputMode="decimal" value={draft.low} wrong={wrongText(wrongs['low'])} onChange={(event) => change({ low: event.target.value })} />
          <Field label={say('pit.high')} unit={figures.unit('temp')} inputMode="decimal" value={draft.high} wrong={wrongText(wrongs['high'])} onChange={(event) => change({ high: event.target.value })} />
        </Fields>
        <ZonesAndProbes {...{ draft, wrongs, change }} />
        <label className={css['tick']}>
          <input type="checkbox" checked={draft.retired} onChange={(event) => change({ retired: event.target.checked })} />
          {say('pit.retired')}
        </label>
      </Form>
    </Panel>
  );
}

interface ZonesAndProbesProps {
  readonly draft: PitDraft;
  readonly wrongs: Wrongs;
  readonly change: (part: Partial<PitDraft>) => void;
}

function ZonesAndProbes({ draft, wrongs, change }: ZonesAndProbesProps) {
  const say = useSetupWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const { zones, probes } = draft;
  const addProbe = () => change({ probes: [...probes, { id: commandKey() as ProbeId, name: '', zone: 0 }] });
  return (
    <>
      <h3>{say('pit.zones')}</h3>
      <Fields narrow>
        {zones.map((zone, n) => (
          <Field key={n} label={say('pit.zone', { zone: n + 1 })} unit={figures.unit('length')} inputMode="decimal" value={zone} wrong={wrongText(wrongs[`zone.${n}`])} onChange={(event) => change({ zones: zones.map((old, i) => (i === n ? event.target.value : old)) })} />
        ))}
      </Fields>
      <div className={css['line']}>
        <Button disabled={zones.length >= MOST_ZONES} onClick={() => change({ zones: [...zones, zones.at(-1) ?? ''] })}>{say('pit.addZone')}</Button>
        <Button disabled={zones.length <= 1} onClick={() => change({ zones: zones.slice(0, -1) })}>{say('pit.dropZone')}</Button>
      </div>
      <h3>{say('pit.probes')}</h3>
      {probes.map((probe) => (
        <div key={probe.id} className={css['probe']}>
          <Field label={say('pit.probeName')} value={probe.name} maxLength={60} wrong={wrongText(wrongs[`probe.${probe.id}`])} onChange={(event) => change({ probes: probes.map((old) => (old.id === probe.id ? { ...old, name: event.target.value } : old)) })} />
          <Pick label={say('pit.probeZone')} value={String(Math.min(probe.zone, zones.length - 1))} onChange={(event) => change({ probes: probes.map((old) => (old.id === probe.id ? { ...old, zone: Number(event.target.value) } : old)) })}>
            {zones.map((_, n) => <option key={n} value={n}>{say('pit.zone', { zone: n + 1 })}</option>)}
          </Pick>
          <Button onClick={() => change({ probes: probes.filter(({ id }) => id !== probe.id) })}>{shared('do.remove')}</Button>
        </div>
      ))}
      <div className={css['line']}>
        <Button disabled={probes.length >= MOST_PROBES} onClick={addProbe}>{say('pit.addProbe')}</Button>
      </div>
    </>
  );
}
