import type { Setup } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useCommand } from '../../live/use-command.js';
import { useSetupChanged } from '../../live/use-setup.js';
import { Choice } from '../../parts/choice.js';
import { Field } from '../../parts/field.js';
import { FormReading, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form, Panel } from '../../parts/panel.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { figuresOf, type Figures } from '../../units/figures.js';
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

/** The sizes of the yard as they stand in their boxes. */
const shownSizes = (figures: Figures, yard: Readonly<Record<Measure, number>>) =>
  Object.fromEntries(MEASURES.map(({ field, as }) => [field, String(figures.shown(as, yard[field]))])) as Record<Measure, string>;

/** What stands in the boxes of the yard's form, and sending it. */
function useYardForm(setup: Setup) {
  const language = useLanguage();
  const figures = useFigures();
  const changed = useSetupChanged();
  const command = useCommand('saveYard');
  const yard = settingsOf(setup.yard);
  const [said, setSaid] = useState({ name: yard.name, timeZone: yard.timeZone, units: yard.units, language: yard.language, top: String(Math.round(yard.planTopDeg)) });
  const [typed, setTyped] = useState(() => shownSizes(figures, yard));
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const [zoneWrong, setZoneWrong] = useState(false);
  const [done, setDone] = useState(false);

  const send = async () => {
    const reading = new FormReading(figures, yard.timeZone);
    const name = reading.text('name', said.name);
    const planTopDeg = reading.number('top', said.top, { min: 0, max: 359 });
    const measured = MEASURES.map(({ field, as, min, max }) => [field, reading.number(field, typed[field], { as, min, max, was: yard[field] })] as const);
    setWrongs(reading.wrongs);
    setZoneWrong(!isTimeZone(said.timeZone));
    setDone(false);
    if (!reading.good || name === undefined || planTopDeg === undefined || !isTimeZone(said.timeZone)) return;
    const sizes = Object.fromEntries(measured) as Record<Measure, number>;
    const { timeZone, units } = said;
    if (!(await command.send({ yard: { ...yard, ...sizes, name, timeZone, units, language: said.language, planTopDeg } }))) return;
    // The boxes show what was saved, in the units that hold from now on.
    setTyped(shownSizes(figuresOf({ units, timeZone, language }), sizes));
    setDone(true);
    await changed();
  };
  const say = (part: Partial<typeof said>) => setSaid({ ...said, ...part });
  const type = (field: Measure, text: string) => setTyped({ ...typed, [field]: text });
  return { said, say, typed, type, wrongs, zoneWrong, done, command, send: () => void send() };
}

/** Name, zone, units and language of the yard; its plan; the wall's screen. */
export function YardForm({ setup }: { readonly setup: Setup }) {
  const say = useSetupWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const { said, typed, wrongs, command, ...form } = useYardForm(setup);
  return (
    <Panel title={say('yard.title')}>
      <Form onSend={form.send} sending={command.sending} failed={command.failed} does={shared('do.save')} done={form.done ? shared('saved') : undefined}>
        <Fields>
          <Field label={say('yard.name')} value={said.name} maxLength={60} wrong={wrongText(wrongs['name'])} onChange={(event) => form.say({ name: event.target.value })} />
          <Field label={say('yard.timeZone')} value={said.timeZone} list="time-zones" hint={say('yard.timeZoneHint')} wrong={form.zoneWrong ? say('yard.timeZoneWrong') : undefined} onChange={(event) => form.say({ timeZone: event.target.value.trim() })} />
          <datalist id="time-zones">
            {timeZones().map((zone) => <option key={zone} value={zone} />)}
          </datalist>
        </Fields>
        <Choice label={say('yard.units')} value={said.units} onChoose={(units) => form.say({ units })} options={[{ value: 'us', label: say('yard.us') }, { value: 'metric', label: say('yard.metric') }]} />
        <Choice label={say('yard.language')} value={said.language} onChoose={(spoken) => form.say({ language: spoken })} options={[{ value: 'en', label: shared('language.en') }, { value: 'es', label: shared('language.es') }]} />
        <Fields>
          {MEASURES.map(({ field, as }) => (
            <Field key={field} label={say(`yard.${field}`)} unit={figures.unit(as)} inputMode="decimal" value={typed[field]} wrong={wrongText(wrongs[field])} onChange={(event) => form.type(field, event.target.value)} />
          ))}
          <Field label={say('yard.top')} unit="°" inputMode="decimal" hint={say('headingHint')} value={said.top} wrong={wrongText(wrongs['top'])} onChange={(event) => form.say({ top: event.target.value })} />
        </Fields>
      </Form>
    </Panel>
  );
}
