import type { Setup } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useCommand } from '../../live/use-command.js';
import { useSetupChanged } from '../../live/use-setup.js';
import { Choice } from '../../parts/choice.js';
import { Field } from '../../parts/field.js';
import { FormReading, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form, Panel } from '../../parts/panel.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { figuresOf } from '../../units/figures.js';
import { useFigures } from '../../units/use-figures.js';
import { useLanguage } from '../../words/words.js';
import { useSetupWords } from '../../words/setup.js';
import { useSharedWords } from '../../words/shared.js';
import { settingsOf } from './yard-plan.js';
import { isTimeZone, timeZones } from './time-zones.js';

const MEASURES = [
  { field: 'planWidthM', as: 'ground', min: 5, max: 500 },
  { field: 'planHeightM', as: 'ground', min: 5, max: 500 },
  { field: 'walkSpeedMPerS', as: 'pace', min: 0.3, max: 3 },
  { field: 'screenDiagonalM', as: 'length', min: 0.3, max: 4 },
  { field: 'viewDistanceM', as: 'ground', min: 1, max: 20 },
] as const;
type Measure = (typeof MEASURES)[number]['field'];

/** Name, zone, units and language of the yard; its plan; the wall's screen. */
export function YardForm({ setup }: { readonly setup: Setup }) {
  const say = useSetupWords();
  const shared = useSharedWords();
  const language = useLanguage();
  const figures = useFigures();
  const wrongText = useWrongText();
  const changed = useSetupChanged();
  const command = useCommand('saveYard');
  const yard = settingsOf(setup.yard);
  const [name, setName] = useState(yard.name);
  const [timeZone, setTimeZone] = useState(yard.timeZone);
  const [units, setUnits] = useState(yard.units);
  const [spoken, setSpoken] = useState(yard.language);
  const [top, setTop] = useState(String(Math.round(yard.planTopDeg)));
  const [typed, setTyped] = useState(() => Object.fromEntries(MEASURES.map(({ field, as }) => [field, String(figures.shown(as, yard[field]))])) as Record<Measure, string>);
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const [zoneWrong, setZoneWrong] = useState(false);
  const [done, setDone] = useState(false);

  const send = async () => {
    const reading = new FormReading(figures, yard.timeZone);
    const named = reading.text('name', name);
    const planTopDeg = reading.number('top', top, { min: 0, max: 359 });
    const measured = MEASURES.map(({ field, as, min, max }) => [field, reading.number(field, typed[field], { as, min, max, was: yard[field] })] as const);
    setWrongs(reading.wrongs);
    setZoneWrong(!isTimeZone(timeZone));
    setDone(false);
    if (!reading.good || named === undefined || planTopDeg === undefined || !isTimeZone(timeZone)) return;
    const sizes = Object.fromEntries(measured) as Record<Measure, number>;
    const saved = await command.send({ yard: { ...yard, ...sizes, name: named, timeZone, units, language: spoken, planTopDeg } });
    if (!saved) return;
    // The boxes show what was saved, in the units that hold from now on.
    const from = figuresOf({ units, timeZone, language });
    setTyped(Object.fromEntries(MEASURES.map(({ field, as }) => [field, String(from.shown(as, sizes[field]))])) as Record<Measure, string>);
    setDone(true);
    await changed();
  };
  return (
    <Panel title={say('yard.title')}>
      <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={shared('do.save')} done={done ? shared('saved') : undefined}>
        <Fields>
          <Field label={say('yard.name')} value={name} maxLength={60} wrong={wrongText(wrongs['name'])} onChange={(event) => setName(event.target.value)} />
          <Field label={say('yard.timeZone')} value={timeZone} list="time-zones" hint={say('yard.timeZoneHint')} wrong={zoneWrong ? say('yard.timeZoneWrong') : undefined} onChange={(event) => setTimeZone(event.target.value.trim())} />
          <datalist id="time-zones">
            {timeZones().map((zone) => <option key={zone} value={zone} />)}
          </datalist>
        </Fields>
        <Choice label={say('yard.units')} value={units} onChoose={setUnits} options={[{ value: 'us', label: say('yard.us') }, { value: 'metric', label: say('yard.metric') }]} />
        <Choice label={say('yard.language')} value={spoken} onChoose={setSpoken} options={[{ value: 'en', label: shared('language.en') }, { value: 'es', label: shared('language.es') }]} />
        <Fields>
          {MEASURES.map(({ field, as }) => (
            <Field key={field} label={say(`yard.${field}`)} unit={figures.unit(as)} inputMode="decimal" value={typed[field]} wrong={wrongText(wrongs[field])} onChange={(event) => setTyped({ ...typed, [field]: event.target.value })} />
          ))}
          <Field label={say('yard.top')} unit="°" inputMode="decimal" hint={say('headingHint')} value={top} wrong={wrongText(wrongs['top'])} onChange={(event) => setTop(event.target.value)} />
        </Fields>
      </Form>
    </Panel>
  );
}
