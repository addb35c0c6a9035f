import { useQuery } from '@tanstack/react-query';
import { useState, type FormEvent } from 'react';
import { ask } from '../../live/ask.js';
import { passes } from '../../live/refused.js';
import { Button } from '../../parts/button.js';
import { Failure } from '../../parts/failure.js';
import { Field } from '../../parts/field.js';
import { useEntryWords } from '../../words/entry.js';
import { useSharedWords } from '../../words/shared.js';
import { afterHash } from './after-hash.js';
import { EntryFrame } from './entry-frame.js';
import { useWayIn } from './use-way-in.js';

/** A one-time code makes this device known: by its address `/enrol#CODE`, or typed. */
export function EnrolScreen() {
  const say = useEntryWords();
  const shared = useSharedWords();
  const { enter, busy, failed } = useWayIn();
  const [code, setCode] = useState(() => afterHash(location.hash));
  const [name, setName] = useState('');
  const [asked, setAsked] = useState(false);
  const health = useQuery({ queryKey: ['health'], queryFn: () => ask('health', {}), retry: (_count, error) => passes(error), retryDelay: 2000 });
  const empty = (text: string) => (asked && text.trim() === '' ? shared('needed') : undefined);
  const enrol = (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    if (code.trim() && name.trim()) void enter(() => ask('enrolDevice', { code: code.trim(), name: name.trim() }));
  };
  // A practice night gives out codes before anybody has set a yard up.
  if (health.data?.firstRunNeeded && code === '')
    return (
      <EntryFrame title={say('firstRunTitle')}>
        <p>{say('firstRunHint')}</p>
      </EntryFrame>
    );
  return (
    <EntryFrame title={say('enrolTitle')}>
      <p>{say('enrolWhy')}</p>
      <Failure of={failed} />
      <form onSubmit={enrol} noValidate>
        <Field label={say('code')} value={code} autoComplete="off" autoCapitalize="characters" maxLength={20} wrong={empty(code)} onChange={(event) => setCode(event.target.value)} />
        <Field label={say('deviceName')} hint={say('deviceNameHint')} value={name} maxLength={60} wrong={empty(name)} onChange={(event) => setName(event.target.value)} />
        <Button look="main" type="submit" disabled={busy}>
          {say('enrol')}
        </Button>
      </form>
    </EntryFrame>
  );
}
