import type { MoveWeighed, PitLoadingView } from '@stokehold/domain/contract';
import type { CookId, PitId } from '@stokehold/domain/quantity';
import { useState } from 'react';
import { useCommand } from '../../live/use-command.js';
import { Field, Pick } from '../../parts/field.js';
import { Fields, Form } from '../../parts/panel.js';
import { cutName, type Telling } from './loading-words.js';
import css from './loading.module.css';

const BESIDE = 'beside';
const zoneOf = (value: string) => (value === BESIDE ? null : Number(value));

/** A move by hand, weighed before anybody carries anything. */
export function WeighForm({ pitId, loading, telling }: { readonly pitId: PitId; readonly loading: PitLoadingView; readonly telling: Telling }) {
  const { say } = telling;
  const [first] = loading.placings;
  const [cookId, setCook] = useState<string>(first?.cookId ?? loading.unplaced[0]?.cookId ?? '');
  const [from, setFrom] = useState(first ? `${first.zone}` : BESIDE);
  const [to, setTo] = useState(`${loading.zones.length - 1}`);
  const [typed, setTyped] = useState('1');
  const [weighed, setWeighed] = useState<MoveWeighed>();
  const command = useCommand('weighMove');
  const pieces = /^[1-9]\d{0,2}$/.test(typed.trim()) ? Number(typed) : undefined;
  const cooks = [...new Set([...loading.placings, ...loading.unplaced].map((one) => one.cookId as string))];
  const zones = [...loading.zones.map(({ zone }) => ({ value: `${zone}`, label: say('zone', { zone: zone + 1 }) })), { value: BESIDE, label: say('weigh.beside') }];
  const changed = <T,>(set: (value: T) => void) => (value: T) => {
    set(value);
    setWeighed(undefined);
  };
  const send = async () => {
    if (pieces !== undefined) setWeighed(await command.send({ pitId, cookId: cookId as CookId, pieces, fromZone: zoneOf(from), toZone: zoneOf(to) }));
  };
  return (
    <details>
      <summary className={css['summary']}>{say('weigh')}</summary>
      <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('weigh.do')} done={weighed && weighedLine(telling, weighed)}>
        <Fields>
          <Pick label={say('weigh.cook')} value={cookId} onChange={(event) => changed(setCook)(event.target.value)}>
            {cooks.map((id) => <option key={id} value={id}>{cutName(telling, id)}</option>)}
          </Pick>
          <Field label={say('weigh.pieces')} inputMode="numeric" value={typed} wrong={pieces === undefined ? say('weigh.wrong') : undefined} onChange={(event) => changed(setTyped)(event.target.value)} />
          <Pick label={say('weigh.from')} value={from} onChange={(event) => changed(setFrom)(event.target.value)}>
            {zones.map(({ value, label }) => <option key={value} value={value}>{label}</option>)}
          </Pick>
          <Pick label={say('weigh.to')} value={to} onChange={(event) => changed(setTo)(event.target.value)}>
            {zones.map(({ value, label }) => <option key={value} value={value}>{label}</option>)}
          </Pick>
        </Fields>
      </Form>
    </details>
  );
}

function weighedLine({ say, figures }: Telling, { breaks, moreS, moreUnplaced }: MoveWeighed): string {
  if (breaks.length > 0) return say('weigh.breaks', { why: [...new Set(breaks.map(({ code }) => say(`breaks.${code}`)))].join(', ') });
  const work = moreS === 0 ? say('weigh.same') : say(moreS > 0 ? 'weigh.more' : 'weigh.less', { span: figures.span(Math.max(60, Math.abs(moreS))) });
  return moreUnplaced > 0 ? say('weigh.unplaced', { pieces: moreUnplaced }) : work;
}
