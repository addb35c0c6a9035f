import { type FoodLimits, foodLimits } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useCommand } from '../../live/use-command.js';
import { useMay } from '../../live/use-setup.js';
import { Caution } from '../../parts/caution.js';
import { Field, Pick } from '../../parts/field.js';
import { FormReading, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form, Panel } from '../../parts/panel.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useFigures } from '../../units/use-figures.js';
import { useFoodWords } from '../../words/food.js';

const OWN = [['hotHoldC', 'own.hotHold'], ['coldHoldC', 'own.coldHold'], ['poultryC', 'own.poultry'], ['groundC', 'own.ground'], ['roastC', 'own.roast'], ['reheatC', 'own.reheat']] as const;

/** Cooling times are typed in minutes. */
const OWN_SPANS = [['coolingFirstS', 'own.coolingFirst'], ['coolingTotalS', 'own.coolingTotal']] as const;
const EDITIONS = foodLimits.shape.edition.options;

interface OwnLimitsProps {
  readonly limits: FoodLimits;
  readonly onSaved: () => Promise<void>;
}

/** Which edition the yard is held to, and where it asks more of itself; whoever may not change it reads it. */
export function OwnLimitsPanel(props: OwnLimitsProps) {
  const say = useFoodWords();
  const mayManage = useMay('manage');
  return (
    <Panel title={say('limitsTitle')}>
      <p>{say('own.hint')}</p>
      {mayManage ? <OwnLimitsForm {...props} /> : <OwnLimitsRead limits={props.limits} />}
      <Caution about="food" />
    </Panel>
  );
}

function OwnLimitsRead({ limits }: { readonly limits: FoodLimits }) {
  const say = useFoodWords();
  const figures = useFigures();
  const own = OWN.flatMap(([field, word]) => {
    const tempC = limits.own[field];
    return tempC === null ? [] : [`${say(word)} ${figures.of('food', tempC)}`];
  });
  const spans = OWN_SPANS.flatMap(([field, word]) => (limits.own[field] === null ? [] : [`${say(word)} ${minutesOf(limits.own[field])}`]));
  return <p>{[say(`edition.${limits.edition}`), ...own, ...spans, `${say('own.probeError')} ${figures.of('rise', limits.probeErrorK)}`, say('own.mayNot')].join(' · ')}</p>;
}

const minutesOf = (seconds: number | null) => (seconds === null ? '' : String(Math.round(seconds / 60)));
const secondsOf = (minutes: number | undefined) => (minutes === undefined ? null : minutes * 60);

function OwnLimitsForm({ limits, onSaved }: OwnLimitsProps) {
  const say = useFoodWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('saveFoodLimits');
  const shown = (tempC: number | null) => (tempC === null ? '' : String(figures.shown('food', tempC)));
  const [edition, setEdition] = useState(limits.edition);
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>(() => Object.fromEntries([...OWN.map(([field]) => [field, shown(limits.own[field])]), ...OWN_SPANS.map(([field]) => [field, minutesOf(limits.own[field])])]));
  const [error, setError] = useState(figures.bare('rise', limits.probeErrorK));
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const [saved, setSaved] = useState(false);
  const send = async () => {
    const reading = new FormReading(figures, 'UTC');
    const own = { ...limits.own };
    for (const [field] of OWN) own[field] = reading.optionalNumber(field, typed[field] ?? '', { as: 'food', min: -10, max: 120, was: limits.own[field] ?? undefined }) ?? null;
    for (const [field] of OWN_SPANS) own[field] = secondsOf(reading.optionalNumber(field, typed[field] ?? '', { min: 1, max: 1440, whole: true }));
    const probeErrorK = reading.number('probeErrorK', error, { as: 'rise', min: 0, max: 3, was: limits.probeErrorK });
    setWrongs(reading.wrongs);
    setSaved(false);
    if (!reading.good || probeErrorK === undefined) return;
    if (!(await command.send({ limits: { edition, own, probeErrorK } }))) return;
    setSaved(true);
    await onSaved();
  };
  return (
    <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('own.save')} done={saved ? say('own.saved') : undefined}>
      <Fields>
        <Pick label={say('own.edition')} value={edition} onChange={(event) => setEdition(EDITIONS.find((one) => one === event.target.value) ?? limits.edition)}>
          {EDITIONS.map((one) => <option key={one} value={one}>{say(`edition.${one}`)}</option>)}
        </Pick>
        {OWN.map(([field, word]) => (
          <Field key={field} label={say(word)} unit={figures.unit('food')} inputMode="decimal" value={typed[field] ?? ''} wrong={wrongText(wrongs[field])} onChange={(event) => setTyped({ ...typed, [field]: event.target.value })} />
        ))}
        {OWN_SPANS.map(([field, word]) => (
          <Field key={field} label={say(word)} inputMode="numeric" value={typed[field] ?? ''} wrong={wrongText(wrongs[field])} onChange={(event) => setTyped({ ...typed, [field]: event.target.value })} />
        ))}
        <Field label={say('own.probeError')} unit={figures.unit('rise')} inputMode="decimal" value={error} wrong={wrongText(wrongs['probeErrorK'])} onChange={(event) => setError(event.target.value)} />
      </Fields>
    </Form>
  );
}
