import { useQuery, useQueryClient } from '@tanstack/react-query';
import type { PayRulesView } from '@stokehold/domain/contract';
import { useState } from 'react';
import { ask } from '../../live/ask.js';
import { passes } from '../../live/refused.js';
import { useCommand } from '../../live/use-command.js';
import { useMay } from '../../live/use-setup.js';
import { Field } from '../../parts/field.js';
import { FormReading, type Wrongs } from '../../parts/form-reading.js';
import { Opening } from '../../parts/opening.js';
import { Fields, Form, Panel } from '../../parts/panel.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useFigures } from '../../units/use-figures.js';
import { useSetupWords } from '../../words/setup.js';
import { useSharedWords } from '../../words/shared.js';
import { draftOf, type PayDraft, rulesOf } from './pay-draft.js';

const RULES = ['pay-rules'] as const;

/** How breaks, nights and long shifts are paid: a lead sees it, a manager changes it. */
export function PayPanel({ zone }: { readonly zone: string }) {
  const say = useSetupWords();
  const mayManage = useMay('manage');
  const query = useQuery({ queryKey: RULES, queryFn: () => ask('payRules', {}), retry: (_count, error) => passes(error), retryDelay: 2000 });
  if (!query.data) return <Opening />;
  return (
    <Panel title={say('pay.title')}>
      <p>{say('pay.about')}</p>
      {mayManage ? <PayForm rules={query.data} zone={zone} /> : <PayWords rules={query.data} />}
    </Panel>
  );
}

function PayWords({ rules }: { readonly rules: PayRulesView }) {
  const say = useSetupWords();
  const figures = useFigures();
  const { overtimeHours } = draftOf(rules);
  const percent = (permille: number) => figures.percent(permille / 1000);
  return (
    <ul className="figure">
      <li>{say('pay.said.break', { minutes: rules.paidBreakUpToS / 60 })}</li>
      <li>{say('pay.said.night', { from: rules.nightFrom, until: rules.nightUntil, percent: percent(rules.nightExtraPermille) })}</li>
      <li>{overtimeHours === '' ? say('pay.said.noOvertime') : say('pay.said.overtime', { hours: overtimeHours, percent: percent(rules.overtimeExtraPermille) })}</li>
    </ul>
  );
}

const BOXES = [
  { field: 'breakMin', unit: 'min', hint: 'pay.breakHint' }, { field: 'nightFrom', unit: undefined, hint: 'pay.clockHint' }, { field: 'nightUntil', unit: undefined, hint: 'pay.clockHint' },
  { field: 'nightPercent', unit: '%', hint: undefined }, { field: 'overtimeHours', unit: 'h', hint: 'pay.overtimeHint' }, { field: 'overtimePercent', unit: '%', hint: undefined },
] as const;

function PayForm({ rules, zone }: { readonly rules: PayRulesView; readonly zone: string }) {
  const say = useSetupWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const client = useQueryClient();
  const command = useCommand('savePayRules');
  const [draft, setDraft] = useState<PayDraft>(() => draftOf(rules));
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const [done, setDone] = useState(false);
  const send = async () => {
    const reading = new FormReading(figures, zone);
    const changed = rulesOf(draft, reading);
    setWrongs(reading.wrongs);
    setDone(false);
    if (!changed || !(await command.send({ rules: changed }))) return;
    setDone(true);
    await client.invalidateQueries({ queryKey: RULES });
    await client.invalidateQueries({ queryKey: ['service-cost'] });
  };
  return (
    <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={shared('do.save')} done={done ? shared('saved') : undefined}>
      <Fields>
        {BOXES.map(({ field, unit, hint }) => (
          <Field
            key={field} label={say(`pay.${field}`)} unit={unit} hint={hint && say(hint)} inputMode={unit ? 'decimal' : 'text'} value={draft[field]} wrong={wrongText(wrongs[field])}
            onChange={(event) => setDraft({ ...draft, [field]: event.target.value })}
          />
        ))}
      </Fields>
    </Form>
  );
}
