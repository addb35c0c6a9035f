import { epochS } from '@stokehold/domain/quantity';
import type { CookView, YardState } from '@stokehold/domain/contract';
import { useState } from 'react';
import { yardNowMs } from '../../live/heard.js';
import { useCommand } from '../../live/use-command.js';
import { Caution } from '../../parts/caution.js';
import { Field } from '../../parts/field.js';
import { FormReading, type TypedWall, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form, Panel } from '../../parts/panel.js';
import { WallField } from '../../parts/wall-field.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useFigures } from '../../units/use-figures.js';
import { isSecond, wallOf } from '../../units/typed-wall-time.js';
import { useNightWords } from '../../words/night.js';

interface TakeOffFormProps {
  readonly state: YardState;
  readonly cook: CookView;
  readonly onDone: () => void;
}

/** The whole cook comes off the pits; what it weighs then may be said at once. */
export function TakeOffForm({ state, cook, onDone }: TakeOffFormProps) {
  const say = useNightWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('takeOff');
  const zone = state.yard.timeZone;
  const [opened] = useState(() => epochS(yardNowMs() / 1000));
  const [off, setOff] = useState<TypedWall>({ wall: wallOf(opened, zone), again: isSecond(opened, zone) });
  const [yielded, setYielded] = useState('');
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const send = async () => {
    const reading = new FormReading(figures, zone);
    const offAt = reading.instant('off', off);
    const yieldKg = reading.optionalNumber('yield', yielded, { as: 'mass', min: 0, max: 2000 });
    setWrongs(reading.wrongs);
    if (!reading.good || offAt === undefined) return;
    if (await command.send({ cookId: cook.id, offAt, ...(yieldKg !== undefined && { yieldKg }) })) onDone();
  };
  return (
    <Panel title={say('off.title', { cut: cook.cut })}>
      <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('off.save')} onCancel={onDone}>
        <Fields>
          <WallField label={say('off.at')} zone={zone} value={off} wrong={wrongText(wrongs['off'])} onChange={setOff} />
          <Field
            label={say('off.yield')} unit={figures.unit('mass')} inputMode="decimal" value={yielded} wrong={wrongText(wrongs['yield'])}
            hint={say('off.yieldHint', { mass: figures.of('mass', cook.weightKg) })} onChange={(event) => setYielded(event.target.value)}
          />
        </Fields>
        <Caution about="food" />
      </Form>
    </Panel>
  );
}
