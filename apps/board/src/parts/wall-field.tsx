import { meaningOf, momentOf, type NightTime } from '../units/typed-wall-time.js';
import type { EpochS } from '@stokehold/domain/quantity';
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
  const twice = meaningOf(value.wall, zone).kind === 'twice';
  return (
    <div className={css['pair']}>
      <Field
        type="datetime-local" label={label} value={value.wall} wrong={wrong} hint={hint}
        onChange={(event) => onChange({ wall: event.target.value.slice(0, 16), again: false })}
      />
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
      <Field type="time" label={label} value={value.hour} wrong={wrong} onChange={(event) => onChange({ hour: event.target.value.slice(0, 5), again: false })} />
      {twice && <WhichOfTwo again={value.again} onChange={(again) => onChange({ ...value, again })} />}
    </div>
  );
}
