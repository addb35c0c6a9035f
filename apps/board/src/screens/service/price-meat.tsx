import { useQueryClient } from '@tanstack/react-query';
import type { Cents, CookId } from '@stokehold/domain/quantity';
import type { ServiceCost } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useCommand } from '../../live/use-command.js';
import { useYard } from '../../live/use-yard.js';
import { Button } from '../../parts/button.js';
import { Field, Pick } from '../../parts/field.js';
import { FormReading, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form } from '../../parts/panel.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useFigures } from '../../units/use-figures.js';
import { useServiceWords } from '../../words/service.js';
import css from './service.module.css';

/** What the meat of a cook cost: opened by its button. */
export function PriceMeat({ cost }: { readonly cost: ServiceCost }) {
  const say = useServiceWords();
  const [open, setOpen] = useState(false);
  if (cost.cooks.length === 0) return null;
  if (!open) return <p className={css['deeds']}><Button onClick={() => setOpen(true)}>{say('price')}</Button></p>;
  return <PriceForm cost={cost} onDone={() => setOpen(false)} />;
}

function PriceForm({ cost, onDone }: { readonly cost: ServiceCost; readonly onDone: () => void }) {
  const say = useServiceWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const zone = useYard()?.yard.timeZone ?? 'UTC';
  const client = useQueryClient();
  const command = useCommand('priceCook');
  const [cookId, setCookId] = useState<string>(cost.cooks[0]?.cook.id ?? '');
  const [price, setPrice] = useState('');
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const chosen = cost.cooks.find(({ cook }) => cook.id === cookId)?.cook;
  const send = async () => {
    const reading = new FormReading(figures, zone);
    const meatCents = reading.cents('price', price, 100_000_000);
    setWrongs(reading.wrongs);
    if (meatCents === undefined) return;
    if (await command.send({ cookId: cookId as CookId, meatCents: meatCents as Cents })) {
      await client.invalidateQueries({ queryKey: ['service-cost'] });
      onDone();
    }
  };
  return (
    <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('price.save')} onCancel={onDone}>
      <Fields>
        <Pick label={say('table.cook')} value={cookId} onChange={(event) => setCookId(event.target.value)}>
          {cost.cooks.map(({ cook }) => (
            <option key={cook.id} value={cook.id}>{cook.pieces} × {cook.cut}</option>
          ))}
        </Pick>
        <Field label={say('price.of', { cook: chosen?.cut ?? '' })} unit="$" inputMode="decimal" value={price} wrong={wrongText(wrongs['price'])} onChange={(event) => setPrice(event.target.value)} />
      </Fields>
    </Form>
  );
}
