import type { EpochS } from '@stokehold/domain/quantity';
import { useState } from 'react';
import { typedHour } from '../units/typed-hour.js';
import { meaningOf, momentOf, type NightTime } from '../units/typed-wall-time.js';
import { useDeskWords } from '../words/desk.js';
import { Field, Pick } from './field.js';
import type { TypedWall } from './form-reading.js';
import css from './panel.module.css';

function WhichOfTwo({ again, onChange }: { readonly again: boolean; readonly onChange: (again: boolean) => void }) {
  const say = useDeskWords();
  return (
    <Pick label={say('timeTwice')} value={again ? 'second' : 'first'} onChange={(event) => onChange(event.target.value === 'second')}>
      <option value="first">{say('timeFirst')}</option>
      <option value="second">{say('timeSecond')}</option>
    </Pick>
  );
}

interface HourFieldProps {
  readonly label: string;
  /** 'HH:mm', or what was typed where that is no time. */
  readonly hour: string;
  readonly onChange: (hour: string) => void;
  readonly wrong?: string | undefined;
}

/** Hours and minutes, written as the board writes them; typed in any usual way. */
function HourField({ label, hour, onChange, wrong }: HourFieldProps) {
  const [typed, setTyped] = useState(hour);
  const shown = typed === hour || typedHour(typed) === hour ? typed : hour;
  return (
    <Field
      label={label} value={shown} wrong={wrong} inputMode="text" autoComplete="off" placeholder="19:30" maxLength={12}
      onChange={(event) => {
        setTyped(event.target.value);
        onChange(typedHour(event.target.value) ?? event.target.value);
      }}
      onBlur={() => setTyped(hour)}
    />
  );
}

interface WallFieldProps {
  readonly label: string;
  readonly zone: string;
  readonly value: TypedWall;
  readonly onChange: (value: TypedWall) => void;
  readonly wrong?: string | undefined;
  readonly hint?: string | undefined;
}

/** A date and a time on the yard's wall clock; asks which one where the clocks go back and it comes twice. */
export function WallField({ label, zone, value, onChange, wrong, hint }: WallFieldProps) {
  const say = useDeskWords();
  const twice = meaningOf(value.wall, zone).kind === 'twice';
  const [date = '', hour = ''] = value.wall.split('T');
  const join = (day: string, time: string) => onChange({ wall: day === '' && time === '' ? '' : `${day}T${time}`, again: false });
  return (
    <div className={css['pair']} role="group" aria-label={label}>
      <div className={css['dateAndHour']}>
        <HourField label={label} hour={hour} wrong={wrong} onChange={(time) => join(date, time)} />
        <Field type="date" label={say('onDay')} value={date} onChange={(event) => join(event.target.value, hour)} />
      </div>
      {hint && <span className={css['hint']}>{hint}</span>}
      {twice && <WhichOfTwo again={value.again} onChange={(again) => onChange({ ...value, again })} />}
    </div>
  );
}

interface NightTimeFieldProps {
  readonly label: string;
  readonly zone: string;
  /** The night this time belongs to begins here. */
  readonly from: EpochS | undefined;
  readonly value: NightTime;
  readonly onChange: (value: NightTime) => void;
  readonly wrong?: string | undefined;
}

/** Hours and minutes of one night. */
export function NightTimeField({ label, zone, from, value, onChange, wrong }: NightTimeFieldProps) {
  const twice = from !== undefined && momentOf(value, from, zone).kind === 'twice';
  return (
    <div className={css['pair']}>
      <HourField label={label} hour={value.hour} wrong={wrong} onChange={(hour) => onChange({ hour, again: false })} />
      {twice && <WhichOfTwo again={value.again} onChange={(again) => onChange({ ...value, again })} />}
    </div>
  );
}
