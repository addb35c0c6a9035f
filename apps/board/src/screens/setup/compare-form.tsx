import { useQueryClient } from '@tanstack/react-query';
import type { ProbeView } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useCommand } from '../../live/use-command.js';
import { Field } from '../../parts/field.js';
import { FormReading, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form } from '../../parts/panel.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useFigures } from '../../units/use-figures.js';
import { useProbeWords } from '../../words/probes.js';
import { PROBES } from './probes-panel.js';
import css from './setup.module.css';

const NTH = ['first', 'second'] as const;
const LIMITS = { as: 'temp', min: -60, max: 400 } as const;

/** What a probe shows beside the truth, at one temperature or two; it corrects what is read from now on. */
export function CompareForm({ probe, zone, onClose }: { readonly probe: ProbeView; readonly zone: string; readonly onClose: () => void }) {
  const say = useProbeWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const client = useQueryClient();
  const command = useCommand('calibrateProbe');
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const value = (field: string) => typed[field] ?? '';

  const send = async () => {
    const reading = new FormReading(figures, zone);
    const against = NTH.flatMap((nth) => {
      const [shown, real] = [`${nth}.shown`, `${nth}.true`];
      if (value(shown).trim() === '' && value(real).trim() === '') return [];
      const [shownC, trueC] = [reading.number(shown, value(shown), LIMITS), reading.number(real, value(real), LIMITS)];
      return shownC === undefined || trueC === undefined ? [] : [{ shownC, trueC }];
    });
    setWrongs(reading.wrongs);
    if (!reading.good || !(await command.send({ probeId: probe.id, against, ...(value('note').trim() && { note: value('note').trim() }) }))) return;
    await client.invalidateQueries({ queryKey: PROBES });
    onClose();
  };
  const box = (field: string, label: string, nth: string) => (
    <Field
      label={label} aria-label={`${nth}: ${label}`} unit={figures.unit('temp')} inputMode="text" value={value(field)}
      wrong={wrongs[field]?.code === 'needed' ? say('compare.half') : wrongText(wrongs[field])} onChange={(event) => setTyped({ ...typed, [field]: event.target.value })}
    />
  );
  return (
    <div className={css['wide']}>
      <p>{say('compare.how')}</p>
      <p className={css['soon']} role="note">▲ {say('compare.caution')}</p>
      <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={say('compare.save')} onCancel={onClose}>
        {NTH.map((nth) => (
          <fieldset key={nth} className={css['comparison']}>
            <legend>{say(`compare.${nth}`)}</legend>
            <Fields narrow>
              {box(`${nth}.shown`, say('compare.shown'), say(`compare.${nth}`))}
              {box(`${nth}.true`, say('compare.true'), say(`compare.${nth}`))}
            </Fields>
          </fieldset>
        ))}
        <Field label={say('compare.note')} value={value('note')} maxLength={60} onChange={(event) => setTyped({ ...typed, note: event.target.value })} />
        <p className={css['quiet']}>{say('compare.from')}</p>
      </Form>
    </div>
  );
}
