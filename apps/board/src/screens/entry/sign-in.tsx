import { useQuery } from '@tanstack/react-query';
import type { SignInChoices } from '@stokehold/domain/contract';
import { useState } from 'react';
import { Link, Redirect } from 'wouter';
import { ask } from '../../live/ask.js';
import { passes, Refused } from '../../live/refused.js';
import { Button } from '../../parts/button.js';
import { Failure } from '../../parts/failure.js';
import { Field } from '../../parts/field.js';
import { Form } from '../../parts/panel.js';
import { Opening } from '../../parts/opening.js';
import { useEntryWords } from '../../words/entry.js';
import { speak } from '../../words/words.js';
import { EntryFrame } from './entry-frame.js';
import css from './entry.module.css';
import { PIN_DIGITS, PinPad } from './pin-pad.js';
import { useWayIn } from './use-way-in.js';

type Person = SignInChoices['people'][number];

function Pin({ person, yard, onOther }: { readonly person: Person; readonly yard: string; readonly onOther: () => void }) {
  const say = useEntryWords();
  const { enter, busy, failed } = useWayIn();
  const [digits, setDigits] = useState('');
  const type = async (next: string) => {
    setDigits(next);
    if (next.length < PIN_DIGITS) return;
    if (!(await enter(() => ask('signIn', { personId: person.id, pin: next })))) setDigits('');
  };
  return (
    <EntryFrame title={say('pinFor', { name: person.name })} above={yard}>
      <Failure of={failed} />
      <PinPad digits={digits} busy={busy} onDigits={(next) => void type(next)} />
      <Button look="bare" onClick={onOther}>
        {say('otherPerson')}
      </Button>
    </EntryFrame>
  );
}

function Password({ person, yard, onOther }: { readonly person: Person; readonly yard: string; readonly onOther: () => void }) {
  const say = useEntryWords();
  const { enter, busy, failed } = useWayIn();
  const [typed, setTyped] = useState('');
  const send = async () => {
    if (typed !== '' && !(await enter(() => ask('signIn', { personId: person.id, pin: typed })))) setTyped('');
  };
  return (
    <EntryFrame title={say('passwordFor', { name: person.name })} above={yard}>
      <Form onSend={() => void send()} sending={busy} failed={failed} does={say('signIn')}>
        <Field label={say('password')} type="password" autoComplete="current-password" maxLength={100} autoFocus value={typed} onChange={(event) => setTyped(event.target.value)} />
      </Form>
      <Button look="bare" onClick={onOther}>
        {say('otherPerson')}
      </Button>
    </EntryFrame>
  );
}

/** A person and a PIN or password: the way in on a phone or a desk that is enrolled. */
export function SignInScreen() {
  const say = useEntryWords();
  const [person, setPerson] = useState<Person>();
  const choices = useQuery({
    queryKey: ['sign-in'],
    queryFn: () => ask('signInChoices', {}),
    retry: (_count, error) => passes(error),
    retryDelay: 2000,
  });
  if (choices.error instanceof Refused) return <Redirect to="/enrol" replace />;
  if (!choices.data) return <Opening away={choices.failureCount > 0} />;
  const { yard, device, people } = choices.data;
  const Secret = person?.by === 'password' ? Password : Pin;
  if (person) return <Secret person={person} yard={yard.name} onOther={() => setPerson(undefined)} />;
  const choose = (one: Person) => {
    speak(one.language);
    setPerson(one);
  };
  return (
    <EntryFrame title={say('signInTitle')} above={yard.name}>
      {device.kind === 'wall' && (
        <p>
          {say('wallNeedsNoPin')} <Link href="/wall">{say('toWall')}</Link>
        </p>
      )}
      {people.length === 0 && <p>{say('nobodyYet')}</p>}
      <ul className={css['people']}>
        {people.map((one) => (
          <li key={one.id}>
            <Button className={css['person']} onClick={() => choose(one)}>
              {one.name}
            </Button>
          </li>
        ))}
      </ul>
    </EntryFrame>
  );
}
