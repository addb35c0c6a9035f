import type { WoodyardView, YardState } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useCommand } from '../../live/use-command.js';
import { useWoodyardChanged } from '../../live/use-woodyard.js';
import { Field } from '../../parts/field.js';
import { FormReading, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form } from '../../parts/panel.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useFigures } from '../../units/use-figures.js';
import { useWoodyardWords } from '../../words/woodyard.js';

interface ClimateFormProps {
  readonly months: WoodyardView['climate'];
  readonly state: YardState;
  readonly onDone: () => void;
}

/** Mean air of the twelve months: what lots dry in. */
export function ClimateForm({ months, state, onDone }: ClimateFormProps) {
  const say = useWoodyardWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('saveClimate');
  const changed = useWoodyardChanged();
  const [typed, setTyped] = useState(() => months.map(({ tempC, humidityFrac }) => ({ temp: String(figures.shown('temp', tempC)), humidity: String(Math.round(humidityFrac * 100)) })));
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const put = (nth: number, field: 'temp' | 'humidity', value: string) => setTyped(typed.map((month, i) => (i === nth ? { ...month, [field]: value } : month)));
  const send = async () => {
    const reading = new FormReading(figures, state.yard.timeZone);
    const read = typed.map(({ temp, humidity }, i) => ({
      tempC: reading.number(`temp${i}`, temp, { as: 'temp', min: -40, max: 50, was: months[i]?.tempC }) ?? 0,
      humidityFrac: (reading.number(`humidity${i}`, humidity, { min: 5, max: 100 }) ?? 50) / 100,
    }));
    setWrongs(reading.wrongs);
    if (!reading.good) return;
    if (await command.send({ months: read })) {
      await changed();
      onDone();
    }
  };
  const nameOf = (nth: number) => figures.month(Date.UTC(2027, nth, 15, 12));
  return (
    <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('climate.save')} onCancel={onDone}>
      <Fields>
        {typed.map(({ temp, humidity }, i) => (
          <Fields key={i} narrow>
            <Field label={`${nameOf(i)}: ${say('climate.temp')}`} unit={figures.unit('temp')} inputMode="decimal" value={temp} wrong={wrongText(wrongs[`temp${i}`])} onChange={(event) => put(i, 'temp', event.target.value)} />
            <Field label={say('climate.humidity')} unit="%" inputMode="decimal" value={humidity} wrong={wrongText(wrongs[`humidity${i}`])} onChange={(event) => put(i, 'humidity', event.target.value)} />
          </Fields>
        ))}
      </Fields>
    </Form>
  );
}
