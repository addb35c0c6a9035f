import { epochS, toIso } from '@stokehold/domain/quantity';
import type { YardState } from '@stokehold/domain/contract';
import { useState } from 'react';
import { yardNowMs } from '../../live/heard.js';
import { useForecast } from '../../live/use-forecast.js';
import { useCommand } from '../../live/use-command.js';
import { Choice } from '../../parts/choice.js';
import { Field } from '../../parts/field.js';
import { FormReading, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form, Panel } from '../../parts/panel.js';
import { WindArrow } from '../../parts/wind-arrow.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useFigures } from '../../units/use-figures.js';
import { useNightWords } from '../../words/night.js';
import { headingOf, windOf, WINDS, type Wind } from './compass.js';
import css from './night.module.css';
import { WindAhead } from './wind-ahead.js';

type Rain = 'none' | 'light' | 'heavy';
const RAIN_FRAC: Readonly<Record<Rain, number>> = { none: 0, light: 0.4, heavy: 1 };

/** How the wind stands, as somebody in the yard sees it. */
export function WindPanel({ state }: { readonly state: YardState }) {
  const say = useNightWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('recordWeather');
  const forecast = useForecast();
  const { weather } = state;
  const [from, setFrom] = useState<Wind>(windOf(weather.fromDeg));
  const [speed, setSpeed] = useState(String(figures.shown('speed', weather.windMPerS)));
  const [gusts, setGusts] = useState(String(figures.shown('speed', weather.gustMPerS)));
  const [air, setAir] = useState(String(figures.shown('temp', weather.ambientTempC)));
  const [rain, setRain] = useState<Rain>(weather.rainFrac > 0.7 ? 'heavy' : weather.rainFrac > 0.1 ? 'light' : 'none');
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const [done, setDone] = useState(false);
  const send = async () => {
    const reading = new FormReading(figures, state.yard.timeZone);
    const windMPerS = reading.number('speed', speed, { as: 'speed', min: 0, max: 40 });
    const gustMPerS = reading.number('gusts', gusts, { as: 'speed', min: windMPerS ?? 0, max: 60 });
    const ambientTempC = reading.number('air', air, { as: 'temp', min: -50, max: 60 });
    setWrongs(reading.wrongs);
    setDone(false);
    if (!reading.good || windMPerS === undefined || gustMPerS === undefined || ambientTempC === undefined) return;
    const seenAt = toIso(epochS(yardNowMs() / 1000));
    const sent = await command.send({ seenAt, windMPerS, gustMPerS, fromDeg: headingOf(from), ambientTempC, rainFrac: RAIN_FRAC[rain] });
    setDone(sent !== undefined);
  };
  return (
    <Panel title={say('wind.title')} beside={weather.seenAt && weather.source === 'seen' && <span className={css['quiet']}>{say('wind.seen', { time: figures.time(weather.seenAt) })}</span>}>
      <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('wind.save')} done={done ? say('wind.saved') : undefined}>
        <Choice
          label={say('wind.from')} columns={4} value={from} onChoose={setFrom}
          options={WINDS.map((value) => ({ value, label: say(`wind.${value}`), picture: <WindArrow fromDeg={headingOf(value)} planTopDeg={state.yard.planTopDeg} size={26} /> }))}
        />
        <p className={css['quiet']}>{say('wind.arrows')}</p>
        <Fields narrow>
          <Field label={say('wind.speed')} unit={figures.unit('speed')} inputMode="decimal" value={speed} wrong={wrongText(wrongs['speed'])} onChange={(event) => setSpeed(event.target.value)} />
          <Field label={say('wind.gusts')} unit={figures.unit('speed')} inputMode="decimal" value={gusts} wrong={wrongText(wrongs['gusts'])} onChange={(event) => setGusts(event.target.value)} />
          <Field label={say('wind.air')} unit={figures.unit('temp')} inputMode="decimal" value={air} wrong={wrongText(wrongs['air'])} onChange={(event) => setAir(event.target.value)} />
        </Fields>
        <Choice label={say('wind.rain')} value={rain} onChoose={setRain} options={(['none', 'light', 'heavy'] as const).map((value) => ({ value, label: say(`rain.${value}`) }))} />
      </Form>
      {forecast && <WindAhead forecast={forecast} state={state} />}
    </Panel>
  );
}
