import type { Setup } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useCommand } from '../../live/use-command.js';
import { useForecast } from '../../live/use-forecast.js';
import { useSetupChanged } from '../../live/use-setup.js';
import { Button } from '../../parts/button.js';
import { Field } from '../../parts/field.js';
import { ForecastSaid } from '../../parts/forecast-said.js';
import { FormReading, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form, Panel } from '../../parts/panel.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useFigures } from '../../units/use-figures.js';
import { useSetupWords } from '../../words/setup.js';
import { useSharedWords } from '../../words/shared.js';
import { settingsOf } from './yard-plan.js';

const text = (deg: number | undefined) => (deg === undefined ? '' : String(Number(deg.toFixed(3))));
const LIMITS = { latitude: { min: -90, max: 90 }, longitude: { min: -180, max: 180 } } as const;

/** Where the yard lies on the earth: typed, or as the device in hand knows it. Left empty, the boards stay as by night. */
export function PlaceForm({ setup }: { readonly setup: Setup }) {
  const say = useSetupWords();
  const shared = useSharedWords();
  const wrongText = useWrongText();
  const figures = useFigures();
  const changed = useSetupChanged();
  const command = useCommand('saveYard');
  const forecast = useForecast();
  const { place, ...yard } = settingsOf(setup.yard);
  const [typed, setTyped] = useState({ latitude: text(place?.latitudeDeg), longitude: text(place?.longitudeDeg) });
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const [said, setSaid] = useState<string>();

  const send = async () => {
    const reading = new FormReading(figures, yard.timeZone);
    const empty = typed.latitude.trim() === '' && typed.longitude.trim() === '';
    const latitudeDeg = empty ? undefined : reading.number('latitude', typed.latitude, LIMITS.latitude);
    const longitudeDeg = empty ? undefined : reading.number('longitude', typed.longitude, LIMITS.longitude);
    setWrongs(reading.wrongs);
    setSaid(undefined);
    if (!reading.good) return;
    const there = latitudeDeg !== undefined && longitudeDeg !== undefined ? { place: { latitudeDeg, longitudeDeg } } : {};
    if (!(await command.send({ yard: { ...yard, ...there } }))) return;
    setSaid(shared('saved'));
    await changed();
  };
  const here = () =>
    navigator.geolocation?.getCurrentPosition(
      ({ coords }) => setTyped({ latitude: text(coords.latitude), longitude: text(coords.longitude) }),
      () => setSaid(say('place.notKnown')),
    );
  return (
    <Panel title={say('place.title')}>
      <p>{say('place.why')}</p>
      {forecast && <p>{say(forecast.asked ? 'place.sent' : 'place.kept')}</p>}
      {forecast?.asked && forecast.placed && <ForecastSaid forecast={forecast} />}
      <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={shared('do.save')} done={said}>
        <Fields>
          {(['latitude', 'longitude'] as const).map((which) => (
            <Field key={which} label={say(`place.${which}`)} unit="°" inputMode="text" value={typed[which]} wrong={wrongText(wrongs[which])} onChange={(event) => setTyped({ ...typed, [which]: event.target.value })} />
          ))}
        </Fields>
        <Button onClick={here}>{say('place.here')}</Button>
      </Form>
    </Panel>
  );
}
