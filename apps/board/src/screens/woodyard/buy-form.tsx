import { epochS, type Cents, type DryBasis, type LotId } from '@stokehold/domain/quantity';
import { species, type LotSettings, type YardState } from '@stokehold/domain/contract';
import { useState } from 'react';
import { commandKey } from '../../live/command-key.js';
import { yardNowMs } from '../../live/heard.js';
import { useCommand } from '../../live/use-command.js';
import { Field, Pick } from '../../parts/field.js';
import { FormReading, type TypedWall, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form } from '../../parts/panel.js';
import { WallField } from '../../parts/wall-field.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useFigures } from '../../units/use-figures.js';
import { wallOf } from '../../units/typed-wall-time.js';
import { useSharedWords } from '../../words/shared.js';
import { useWoodyardWords } from '../../words/woodyard.js';

const EMPTY = { name: '', length: '', thickness: '', percent: '', pieces: '', price: '' };

/** Takes a bought lot into the stack. */
export function BuyForm({ state, onDone }: { readonly state: YardState; readonly onDone: () => void }) {
  const say = useWoodyardWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('buyLot');
  const zone = state.yard.timeZone;
  const [id] = useState(() => commandKey() as LotId);
  const [typed, setTyped] = useState(EMPTY);
  const [kind, setKind] = useState<LotSettings['species']>('white-oak');
  const [bought, setBought] = useState<TypedWall>(() => ({ wall: wallOf(epochS(yardNowMs() / 1000), zone), again: false }));
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const box = (field: keyof typeof EMPTY) => ({
    value: typed[field], wrong: wrongText(wrongs[field]), onChange: (event: { target: { value: string } }) => setTyped({ ...typed, [field]: event.target.value }),
  });
  const send = async () => {
    const reading = new FormReading(figures, zone);
    const name = reading.text('name', typed.name);
    const pieces = reading.number('pieces', typed.pieces, { min: 1, max: 5000, whole: true });
    const lengthM = reading.number('length', typed.length, { as: 'length', min: 0.05, max: 1.5 });
    const thicknessM = reading.number('thickness', typed.thickness, { as: 'length', min: 0.02, max: 0.4 });
    const percent = reading.number('percent', typed.percent, { min: 2, max: 120 });
    const price = reading.cents('price', typed.price, 100_000_000);
    const boughtAt = reading.instant('bought', bought);
    setWrongs(reading.wrongs);
    if (name === undefined || pieces === undefined || lengthM === undefined || thicknessM === undefined || percent === undefined || price === undefined || boughtAt === undefined) return;
    const lot: LotSettings = { id, name, species: kind, lengthM, thicknessM, moisture: (percent / 100) as DryBasis, boughtAt, priceCents: price as Cents };
    if (await command.send({ lot, pieces })) onDone();
  };
  return (
    <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('buy.save')} onCancel={onDone}>
      <Fields>
        <Field label={say('buy.name')} maxLength={60} {...box('name')} />
        <Pick label={say('buy.species')} value={kind} onChange={(event) => setKind(species.options.find((one) => one === event.target.value) ?? kind)}>
          {species.options.map((one) => (
            <option key={one} value={one}>{shared(`species.${one}`)}</option>
          ))}
        </Pick>
        <Field label={say('buy.pieces')} inputMode="numeric" {...box('pieces')} />
        <Field label={say('buy.length')} unit={figures.unit('length')} inputMode="decimal" {...box('length')} />
        <Field label={say('buy.thickness')} unit={figures.unit('length')} inputMode="decimal" {...box('thickness')} />
        <Field label={say('measure.percent')} unit="%" inputMode="decimal" hint={say('measure.how')} {...box('percent')} />
        <Field label={say('buy.price')} unit="$" inputMode="decimal" {...box('price')} />
        <WallField label={say('buy.at')} zone={zone} value={bought} wrong={wrongText(wrongs['bought'])} onChange={setBought} />
      </Fields>
    </Form>
  );
}
