import type { Language, Units } from '@stokehold/domain/contract';
import { useState, type FormEvent } from 'react';
import { ask } from '../../live/ask.js';
import { Button } from '../../parts/button.js';
import { Choice } from '../../parts/choice.js';
import { Failure } from '../../parts/failure.js';
import { Field } from '../../parts/field.js';
import { useEntryWords } from '../../words/entry.js';
import { useSharedWords } from '../../words/shared.js';
import { useLanguage } from '../../words/words.js';
import { afterHash } from './after-hash.js';
import { EntryFrame } from './entry-frame.js';
import css from './entry.module.css';
import { firstRunOf, wrongIn, type FirstYard } from './first-yard.js';
import { useWayIn } from './use-way-in.js';

const LANGUAGES: readonly Language[] = ['en', 'es'];
const UNITS: readonly Units[] = ['us', 'metric'];

interface SheetProps {
  readonly yard: FirstYard;
  readonly change: (part: Partial<FirstYard>) => void;
  readonly wrong: (field: keyof FirstYard) => string | undefined;
}

function AboutYard({ yard, change, wrong }: SheetProps) {
  const say = useEntryWords();
  const shared = useSharedWords();
  return (
    <fieldset>
      <legend>{say('yard')}</legend>
      <Field label={say('yardName')} value={yard.yardName} maxLength={60} wrong={wrong('yardName')} onChange={(event) => change({ yardName: event.target.value })} />
      <Field label={say('timeZone')} value={yard.timeZone} list="zones" wrong={wrong('timeZone')} onChange={(event) => change({ timeZone: event.target.value })} />
      <datalist id="zones">
        {Intl.supportedValuesOf('timeZone').map((zone) => (
          <option key={zone} value={zone} />
        ))}
      </datalist>
      <Choice label={say('units')} value={yard.units} onChoose={(units) => change({ units })} options={UNITS.map((value) => ({ value, label: say(`units.${value}`) }))} />
      <Choice label={say('yardLanguage')} value={yard.yardLanguage} onChoose={(yardLanguage) => change({ yardLanguage })}
        options={LANGUAGES.map((value) => ({ value, label: shared(`language.${value}`) }))} />
    </fieldset>
  );
}

function AboutYou({ yard, change, wrong }: SheetProps) {
  const say = useEntryWords();
  const secret = { type: 'password', inputMode: 'numeric', autoComplete: 'new-password', maxLength: 6 } as const;
  return (
    <fieldset>
      <legend>{say('you')}</legend>
      <Field label={say('yourName')} value={yard.name} maxLength={60} autoComplete="name" wrong={wrong('name')} onChange={(event) => change({ name: event.target.value })} />
      <Field {...secret} label={say('pin')} hint={say('pinHint')} value={yard.pin} wrong={wrong('pin')} onChange={(event) => change({ pin: event.target.value })} />
      <Field {...secret} label={say('pinAgain')} value={yard.pinAgain} wrong={wrong('pinAgain')} onChange={(event) => change({ pinAgain: event.target.value })} />
      <Field label={say('deviceName')} hint={say('deviceNameHint')} value={yard.deviceName} maxLength={60} wrong={wrong('deviceName')} onChange={(event) => change({ deviceName: event.target.value })} />
    </fieldset>
  );
}

const empty = (language: Language): FirstYard => ({
  yardName: '',
  timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
  units: 'us',
  yardLanguage: language,
  name: '',
  language,
  pin: '',
  pinAgain: '',
  deviceName: '',
});

/** The very first sheet, by the address that the server's window shows once: the yard, its manager, this device. */
export function FirstRunScreen() {
  const say = useEntryWords();
  const shared = useSharedWords();
  const language = useLanguage();
  const { enter, busy, failed } = useWayIn();
  const [yard, setYard] = useState<FirstYard>(() => empty(language));
  const [asked, setAsked] = useState(false);
  const token = afterHash(location.hash);
  const found = wrongIn(yard);
  const wrong = (field: keyof FirstYard) => {
    const code = asked ? found[field] : undefined;
    return code && (code === 'needed' ? shared('needed') : say(code));
  };
  const make = (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    if (Object.keys(found).length === 0) void enter(() => ask('firstRun', firstRunOf({ ...yard, language }, token)), '/setup');
  };
  const sheet = { yard, wrong, change: (part: Partial<FirstYard>) => setYard({ ...yard, ...part }) };
  return (
    <EntryFrame title={say('firstRunTitle')}>
      {token ? <p>{say('firstRunWhy')}</p> : <p role="alert">{say('noToken')}</p>}
      <form onSubmit={make} noValidate className={css['sheet']}>
        <AboutYard {...sheet} />
        <AboutYou {...sheet} />
        <Failure of={failed} />
        <Button look="main" type="submit" disabled={busy || !token}>
          {say('make')}
        </Button>
      </form>
    </EntryFrame>
  );
}
