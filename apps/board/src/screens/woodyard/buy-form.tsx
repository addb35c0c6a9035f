import { epochS, type LotId } from '@stokehold/domain/quantity';
import { species, type LotSettings, type YardState } from '@stokehold/domain/contract';
import { type ReactNode, useState } from 'react';
import type { Reply } from '../../live/ask.js';
import { commandKey } from '../../live/command-key.js';
import { yardNowMs } from '../../live/heard.js';
import { useCommand } from '../../live/use-command.js';
import { Button } from '../../parts/button.js';
import { Field, Pick } from '../../parts/field.js';
import { FormReading, type TypedWall, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form } from '../../parts/panel.js';
import { WallField } from '../../parts/wall-field.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useFigures } from '../../units/use-figures.js';
import { wallOf } from '../../units/typed-wall-time.js';
import { useSharedWords } from '../../words/shared.js';
import { useWoodyardWords } from '../../words/woodyard.js';
import { EMPTY_LOT, type LotDraft, lotOf } from './lot-draft.js';

/** Takes a bought lot into the stack. */
export function BuyForm({ state, onDone }: { readonly state: YardState; readonly onDone: () => void }) {
  const say = useWoodyardWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('buyLot');
  const zone = state.yard.timeZone;
  const [id] = useState(() => commandKey() as LotId);
  const [typed, setTyped] = useState(EMPTY_LOT);
  const [kind, setKind] = useState<LotSettings['species']>('white-oak');
  const [bought, setBought] = useState<TypedWall>(() => ({ wall: wallOf(epochS(yardNowMs() / 1000), zone), again: false }));
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const [remarks, setRemarks] = useState<Reply<'buyLot'>['remarks']>([]);
  const box = (field: keyof LotDraft) => ({
    value: typed[field], wrong: wrongText(wrongs[field]), onChange: (event: { target: { value: string } }) => setTyped({ ...typed, [field]: event.target.value }),
  });
  const send = async () => {
    const reading = new FormReading(figures, zone);
    const lot = lotOf(typed, { id, species: kind, bought }, reading);
    setWrongs(reading.wrongs);
    if (!lot) return;
    const reply = await command.send(lot);
    if (!reply) return;
    if (reply.remarks.length === 0) onDone();
    else setRemarks(reply.remarks);
  };
  if (remarks.length > 0) return <Remarks remarks={remarks} onSeen={onDone} />;
  return (
    <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('buy.save')} onCancel={onDone}>
      <LotFields {...{ box, kind, setKind }}>
        <WallField label={say('buy.at')} zone={zone} value={bought} wrong={wrongText(wrongs['bought'])} onChange={setBought} />
      </LotFields>
    </Form>
  );
}

interface LotFieldsProps {
  /** What a field holds, what is wrong with it, and what typing does. */
  readonly box: (field: keyof LotDraft) => { readonly value: string; readonly wrong: string | undefined; readonly onChange: (event: { target: { value: string } }) => void };
  readonly kind: LotSettings['species'];
  readonly setKind: (kind: LotSettings['species']) => void;
  readonly children: ReactNode;
}

function LotFields({ box, kind, setKind, children }: LotFieldsProps) {
  const say = useWoodyardWords();
  const shared = useSharedWords();
  const figures = useFigures();
  return (
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
      <Field label={say('buy.cordsTold')} inputMode="decimal" hint={say('buy.optional')} {...box('cords')} />
      <Field label={say('buy.weight')} unit={figures.unit('mass')} inputMode="decimal" hint={say('buy.optional')} {...box('weight')} />
      {children}
    </Fields>
  );
}

/** What about the delivery does not add up; it was taken in all the same. */
function Remarks({ remarks, onSeen }: { readonly remarks: Reply<'buyLot'>['remarks']; readonly onSeen: () => void }) {
  const say = useWoodyardWords();
  const figures = useFigures();
  const secondOf = (second: string | undefined) => say(`remark.second.${(['cords', 'weight', 'rows', 'volume', 'pieces'] as const).find((one) => one === second) ?? 'pieces'}`);
  return (
    <div role="status">
      <p>{say('remark')}</p>
      <ul>
        {remarks.map(({ code, second, ratio }) => (
          <li key={`${code} ${second}`}>▲ {code === 'measures-disagree' ? say('remark.measures-disagree', { second: secondOf(second), percent: figures.percent(ratio ?? 1) }) : say(`remark.${code}`)}</li>
        ))}
      </ul>
      <Button onClick={onSeen}>{say('remark.seen')}</Button>
    </div>
  );
}
