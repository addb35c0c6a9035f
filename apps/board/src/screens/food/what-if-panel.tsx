import type { CookView, CookWhatIf } from '@stokehold/domain/contract';
import { epochS, toIso } from '@stokehold/domain/quantity';
import { useState } from 'react';
import { yardNowMs } from '../../live/heard.js';
import { useCommand, type Said } from '../../live/use-command.js';
import { Pick } from '../../parts/field.js';
import { Fields, Form, Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { useFoodWords } from '../../words/food.js';
import css from './food.module.css';
import { whatIfSaid } from './food-said.js';

const CHANGES = ['wrap-foil', 'wrap-paper', 'no-wrap', 'hotter', 'slump', 'opened'] as const;
type Named = (typeof CHANGES)[number];
/** 25 °F hotter; a slump of 50 °F. */
const HOTTER_K = 25 / 1.8;
const SLUMP_K = 50 / 1.8;

function changeOf(named: Named): Said<'cookWhatIf'>['change'] {
  const at = toIso(epochS(yardNowMs() / 1000));
  switch (named) {
    case 'wrap-foil':
      return { what: 'wrap', at, kind: 'foil' };
    case 'wrap-paper':
      return { what: 'wrap', at, kind: 'paper' };
    case 'no-wrap':
      return { what: 'no-wrap' };
    case 'hotter':
      return { what: 'hotter', at, byK: HOTTER_K };
    case 'slump':
      return { what: 'slump', at, forS: 7200, byK: SLUMP_K };
    case 'opened':
      return { what: 'opened', at, forS: 600 };
  }
}

/** What a change would do to one cook; asked, answered, kept nowhere. */
export function WhatIfPanel({ cook }: { readonly cook: CookView }) {
  const say = useFoodWords();
  const figures = useFigures();
  const command = useCommand('cookWhatIf');
  const [named, setNamed] = useState<Named>('wrap-foil');
  const [answer, setAnswer] = useState<CookWhatIf>();
  const rise = (of: Named) => figures.of('rise', of === 'slump' ? SLUMP_K : HOTTER_K);
  const send = async () => setAnswer(await command.send({ cookId: cook.id, change: changeOf(named) }));
  return (
    <Panel title={say('whatIf')}>
      <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('whatIf.ask')}>
        <Fields>
          <Pick
            label={say('whatIf.change')} value={named}
            onChange={(event) => {
              setNamed(CHANGES.find((one) => one === event.target.value) ?? 'wrap-foil');
              setAnswer(undefined);
            }}
          >
            {CHANGES.map((one) => <option key={one} value={one}>{say(`change.${one}`, { rise: rise(one) })}</option>)}
          </Pick>
        </Fields>
      </Form>
      {answer && <p className={css['large']} role="status">{whatIfSaid(say, figures, answer)}</p>}
    </Panel>
  );
}
