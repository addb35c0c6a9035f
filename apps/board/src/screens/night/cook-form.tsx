import { epochS, fromIso, later, type CookId, type ServiceId } from '@stokehold/domain/quantity';
import { cutShape, type CookView, type YardState } from '@stokehold/domain/contract';
import { useState } from 'react';
import { commandKey } from '../../live/command-key.js';
import { useCommand } from '../../live/use-command.js';
import { Choice } from '../../parts/choice.js';
import { CutShape } from '../../parts/cut-shape.js';
import { Field, Pick } from '../../parts/field.js';
import { FormReading, type TypedWall, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form, Panel } from '../../parts/panel.js';
import { WallField } from '../../parts/wall-field.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useFigures } from '../../units/use-figures.js';
import { isSecond, wallOf } from '../../units/typed-wall-time.js';
import { useNightWords } from '../../words/night.js';
import { useSharedWords } from '../../words/shared.js';
import { draftOfMix, mixOfDraft } from './mix-draft.js';
import { MixFields } from './mix-fields.js';

interface CookFormProps {
  readonly state: YardState;
  readonly cook: CookView | undefined;
  readonly onDone: () => void;
}

/** Adds a cook or changes it. */
export function CookForm({ state, cook, onDone }: CookFormProps) {
  const say = useNightWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('saveCook');
  const zone = state.yard.timeZone;
  const [id] = useState(() => cook?.id ?? (commandKey() as CookId));
  const [cut, setCut] = useState(cook?.cut ?? '');
  const [shape, setShape] = useState(cook?.shape ?? 'slab');
  const [pieces, setPieces] = useState(cook ? String(cook.pieces) : '');
  const [weight, setWeight] = useState(cook ? String(figures.shown('mass', cook.weightKg)) : '');
  const [serviceId, setServiceId] = useState<string>(cook ? (cook.serviceId ?? '') : (state.services[0]?.id ?? ''));
  const [off, setOff] = useState<TypedWall>(() => firstOff(cook, state));
  const [mix, setMix] = useState(() => draftOfMix(cook?.mix ?? []));
  const [wrongs, setWrongs] = useState<Wrongs>({});

  const send = async () => {
    const reading = new FormReading(figures, zone);
    const named = reading.text('cut', cut);
    const count = reading.number('pieces', pieces, { min: 1, max: 400, whole: true });
    const weightKg = reading.number('weight', weight, { as: 'mass', min: 0.05, max: 2000, was: cook?.weightKg });
    const comesOffAt = off.wall === '' ? null : reading.instant('off', off);
    const wished = mixOfDraft(mix, reading);
    setWrongs(reading.wrongs);
    if (!reading.good || wished === undefined || named === undefined || count === undefined || weightKg === undefined || comesOffAt === undefined) return;
    const saved = await command.send({
      cook: { id, cut: named, shape, pieces: count, weightKg, serviceId: serviceId === '' ? null : (serviceId as ServiceId), comesOffAt, mix: wished },
    });
    if (saved) onDone();
  };
  return (
    <Panel title={cook ? say('cooks.changeOne', { cut: cook.cut }) : say('cooks.add')}>
      <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={shared('do.save')} onCancel={onDone}>
        <Field label={say('cook.cut')} value={cut} maxLength={60} wrong={wrongText(wrongs['cut'])} onChange={(event) => setCut(event.target.value)} />
        <Choice
          label={say('cook.shape')} columns={3} value={shape} onChoose={setShape}
          options={cutShape.options.map((value) => ({
            value,
            label: shared(`shape.${value}`),
            picture: <svg width="44" height="28"><CutShape shape={value} x={3} y={1} width={38} height={26} /></svg>,
          }))}
        />
        <Fields>
          <Field label={say('cook.pieces')} inputMode="numeric" value={pieces} wrong={wrongText(wrongs['pieces'])} onChange={(event) => setPieces(event.target.value)} />
          <Field label={say('cook.weight')} unit={figures.unit('mass')} inputMode="decimal" value={weight} wrong={wrongText(wrongs['weight'])} onChange={(event) => setWeight(event.target.value)} />
          <Pick label={say('cook.service')} value={serviceId} onChange={(event) => setServiceId(event.target.value)}>
            <option value="">{shared('none')}</option>
            {state.services.map((service) => (
              <option key={service.id} value={service.id}>
                {service.name} {figures.dayTime(service.readyBy)}
              </option>
            ))}
          </Pick>
          <WallField label={say('cook.comesOff')} zone={zone} value={off} wrong={wrongText(wrongs['off'])} onChange={setOff} />
        </Fields>
        <MixFields mix={mix} inYard={new Set(state.wood.lots.map(({ species }) => species))} wrongs={wrongs} onChange={setMix} />
      </Form>
    </Panel>
  );
}

const ALLOWANCE_S = 3 * 3600;
/** A new cook comes off three hours before its service, until somebody says otherwise. */
function firstOff(cook: CookView | undefined, state: YardState): TypedWall {
  const zone = state.yard.timeZone;
  if (cook) return cook.comesOffAt === null ? { wall: '', again: false } : { wall: wallOf(fromIso(cook.comesOffAt), zone), again: isSecond(fromIso(cook.comesOffAt), zone) };
  const service = state.services[0];
  return { wall: service ? wallOf(epochS(later(fromIso(service.readyBy), -ALLOWANCE_S)), zone) : '', again: false };
}
