import type { RecordLog } from '@stokehold/domain/contract';
import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../live/use-command.js';
import { Field } from '../../parts/field.js';
import { Fields, Form } from '../../parts/panel.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useRecordsWords } from '../../words/records.js';
import type { LogRow } from './log-tables.js';
import css from './records.module.css';

const LONGEST = 500;

/** Writes beside a line what is right about it, and why. */
export function CorrectForm({ log, row, onDone }: { readonly log: RecordLog; readonly row: LogRow; readonly onDone: () => void }) {
  const say = useRecordsWords();
  const wrongText = useWrongText();
  const client = useQueryClient();
  const command = useCommand('correctRecord');
  const [isRight, setIsRight] = useState('');
  const [because, setBecause] = useState('');
  const [tried, setTried] = useState(false);
  const needed = (text: string) => (tried && text.trim() === '' ? wrongText({ code: 'needed' }) : undefined);
  const send = async () => {
    setTried(true);
    if (isRight.trim() === '' || because.trim() === '') return;
    if (!(await command.send({ log, line: row.id, isRight: isRight.trim(), because: because.trim() }))) return;
    await client.invalidateQueries({ queryKey: ['records'] });
    onDone();
  };
  return (
    <section className={css['form']} aria-label={say('correcting', { time: row.cells[0] ?? '' })}>
      <h3>{say('correcting', { time: row.cells[0] ?? '' })}</h3>
      <p>{say('correctNote')}</p>
      <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('correctSave')} onCancel={onDone}>
        <Fields>
          <Field label={say('isRight')} value={isRight} maxLength={LONGEST} wrong={needed(isRight)} autoFocus onChange={(event) => setIsRight(event.target.value)} />
          <Field label={say('because')} value={because} maxLength={LONGEST} wrong={needed(because)} onChange={(event) => setBecause(event.target.value)} />
        </Fields>
      </Form>
    </section>
  );
}
