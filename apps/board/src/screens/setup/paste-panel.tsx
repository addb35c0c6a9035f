import { useQueryClient } from '@tanstack/react-query';
import type { ReadingsPasted } from '@stokehold/domain/contract';
import { useId, useState } from 'react';
import { useCommand } from '../../live/use-command.js';
import { Form, Panel } from '../../parts/panel.js';
import { useProbeWords } from '../../words/probes.js';
import { PROBES } from './probes-panel.js';
import css from './setup.module.css';

const EXAMPLE = 'probe,time,temp_f\neast 3,2027-01-16T05:00:00Z,248.5';
/** So many wrong lines are named; whoever has more corrects the file. */
const NAMED = 8;

/** Readings from a file or a spreadsheet, as a table of text. */
export function PastePanel() {
  const say = useProbeWords();
  const client = useQueryClient();
  const command = useCommand('pasteReadings');
  const id = useId();
  const [text, setText] = useState('');
  const [taken, setTaken] = useState<ReadingsPasted>();
  const send = async () => {
    const done = await command.send({ text });
    setTaken(done);
    if (!done) return;
    if (done.wrong.length === 0) setText('');
    await client.invalidateQueries({ queryKey: PROBES });
  };
  return (
    <Panel title={say('paste.title')}>
      <p>{say('paste.how')}</p>
      <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('paste.save')} done={taken && say('paste.done', { kept: taken.kept, repeated: taken.repeated, aside: taken.aside })}>
        <label htmlFor={id}>{say('paste.text')}</label>
        <textarea id={id} className={css['table']} value={text} placeholder={EXAMPLE} spellCheck={false} maxLength={200_000} onChange={(event) => setText(event.target.value)} />
        {taken && taken.wrong.length > 0 && (
          <ul role="alert">
            {taken.wrong.slice(0, NAMED).map(({ line, wants }) => <li key={line}>{say('paste.wrong', { line, wants })}</li>)}
          </ul>
        )}
      </Form>
    </Panel>
  );
}
