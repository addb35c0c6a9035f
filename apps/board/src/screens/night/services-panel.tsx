import { fromIso, epochS, type ServiceId } from '@stokehold/domain/quantity';
import type { ServiceSettings, YardState } from '@stokehold/domain/contract';
import { useState } from 'react';
import { Link } from 'wouter';
import { commandKey } from '../../live/command-key.js';
import { yardNowMs } from '../../live/heard.js';
import { useCommand } from '../../live/use-command.js';
import { Button } from '../../parts/button.js';
import { Field } from '../../parts/field.js';
import { FormReading, type TypedWall, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form, Panel } from '../../parts/panel.js';
import { WallField } from '../../parts/wall-field.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useFigures } from '../../units/use-figures.js';
import { isSecond, wallOf, wallOnDay } from '../../units/typed-wall-time.js';
import { useNightWords } from '../../words/night.js';
import { useSharedWords } from '../../words/shared.js';
import css from './night.module.css';

/** The meals this food is for. */
export function ServicesPanel({ state }: { readonly state: YardState }) {
  const say = useNightWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const [doing, setDoing] = useState<ServiceSettings | 'add'>();
  return (
    <>
      <Panel title={say('services.title')} beside={<Button onClick={() => setDoing('add')}>{say('services.add')}</Button>}>
        {state.services.length === 0 && <p>{say('services.none')}</p>}
        <ul className={css['rows']}>
          {state.services.map((service) => (
            <li key={service.id}>
              <div className={css['line']}>
                <span>
                  <Link href={`/service/${service.id}`} className={css['big']}>{service.name}</Link>{' '}
                  <span className="figure">{say('services.readyBy', { time: figures.dayTime(service.readyBy) })}, {say('services.portions', { count: service.portions })}</span>
                </span>
                <Button onClick={() => setDoing(service)}>{shared('do.change')}</Button>
              </div>
            </li>
          ))}
        </ul>
      </Panel>
      {doing && <ServiceForm key={doing === 'add' ? 'add' : doing.id} service={doing === 'add' ? undefined : doing} zone={state.yard.timeZone} onDone={() => setDoing(undefined)} />}
    </>
  );
}

function ServiceForm({ service, zone, onDone }: { readonly service: ServiceSettings | undefined; readonly zone: string; readonly onDone: () => void }) {
  const say = useNightWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('saveService');
  const [id] = useState(() => service?.id ?? (commandKey() as ServiceId));
  const [name, setName] = useState(service?.name ?? '');
  const [portions, setPortions] = useState(service ? String(service.portions) : '');
  const [ready, setReady] = useState<TypedWall>(() =>
    service
      ? { wall: wallOf(fromIso(service.readyBy), zone), again: isSecond(fromIso(service.readyBy), zone) }
      : { wall: wallOnDay(epochS(yardNowMs() / 1000), 1, '11:00', zone), again: false },
  );
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const send = async () => {
    const reading = new FormReading(figures, zone);
    const named = reading.text('name', name);
    const readyBy = reading.instant('ready', ready);
    const count = reading.number('portions', portions, { min: 0, max: 20_000, whole: true });
    setWrongs(reading.wrongs);
    if (!reading.good || named === undefined || readyBy === undefined || count === undefined) return;
    if (await command.send({ service: { id, name: named, readyBy, portions: count } })) onDone();
  };
  return (
    <Panel title={service ? service.name : say('services.add')}>
      <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={shared('do.save')} onCancel={onDone}>
        <Fields>
          <Field label={say('services.name')} value={name} maxLength={60} wrong={wrongText(wrongs['name'])} onChange={(event) => setName(event.target.value)} />
          <WallField label={say('services.ready')} zone={zone} value={ready} wrong={wrongText(wrongs['ready'])} onChange={setReady} />
          <Field label={say('services.portionsField')} inputMode="numeric" value={portions} wrong={wrongText(wrongs['portions'])} onChange={(event) => setPortions(event.target.value)} />
        </Fields>
      </Form>
    </Panel>
  );
}
