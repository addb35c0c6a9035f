import { epochS, fromIso, toIso } from '@stokehold/domain/quantity';
import { useState } from 'react';
import { Button } from '../../parts/button.js';
import { Pick } from '../../parts/field.js';
import type { TypedWall } from '../../parts/form-reading.js';
import { WallField } from '../../parts/wall-field.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { chosen, isSecond, meaningOf, wallOf } from '../../units/typed-wall-time.js';
import { useFigures } from '../../units/use-figures.js';
import { useRecordsWords } from '../../words/records.js';
import css from './records.module.css';

export interface Stretch {
  readonly from: string;
  readonly until: string;
}
interface ChooseProps {
  readonly zone: string;
  readonly nights: readonly Stretch[];
  readonly stretch: Stretch | undefined;
  readonly onChange: (stretch: Stretch) => void;
}

const OWN = 'own';
const typedOf = (iso: string, zone: string): TypedWall => ({ wall: wallOf(fromIso(iso), zone), again: isSecond(fromIso(iso), zone) });

/** A night of the list, or any stretch typed on the yard's clock. */
export function ChooseStretch({ zone, nights, stretch, onChange }: ChooseProps) {
  const say = useRecordsWords();
  const figures = useFigures();
  const [own, setOwn] = useState(false);
  const known = nights.findIndex((night) => night.from === stretch?.from && night.until === stretch.until);
  const pick = (value: string) => {
    setOwn(value === OWN);
    const night = nights[Number(value)];
    if (value !== OWN && night) onChange(night);
  };
  return (
    <div className={css['choose']}>
      <Pick label={say('choose')} value={own || known < 0 ? OWN : String(known)} onChange={(event) => pick(event.target.value)}>
        {nights.map((night, nth) => (
          <option key={night.from} value={nth}>{say('nightOf', { day: figures.date(night.from), from: figures.time(night.from), until: figures.time(night.until) })}</option>
        ))}
        <option value={OWN}>{say('ownStretch')}</option>
      </Pick>
      {(own || known < 0) && <OwnStretch zone={zone} stretch={stretch} onChange={onChange} />}
    </div>
  );
}

function OwnStretch({ zone, stretch, onChange }: Omit<ChooseProps, 'nights'>) {
  const say = useRecordsWords();
  const wrongText = useWrongText();
  const [from, setFrom] = useState<TypedWall>(stretch ? typedOf(stretch.from, zone) : { wall: '', again: false });
  const [until, setUntil] = useState<TypedWall>(stretch ? typedOf(stretch.until, zone) : { wall: '', again: false });
  const [tried, setTried] = useState(false);
  const at = ({ wall, again }: TypedWall) => chosen(meaningOf(wall, zone), again);
  const missing = (typed: TypedWall) => (tried && at(typed) === undefined ? wrongText({ code: 'time-missing' }) : undefined);
  const show = () => {
    setTried(true);
    const [first, last] = [at(from), at(until)];
    if (first !== undefined && last !== undefined) onChange({ from: toIso(epochS(first)), until: toIso(epochS(last)) });
  };
  return (
    <>
      <WallField label={say('from')} zone={zone} value={from} wrong={missing(from)} onChange={setFrom} />
      <WallField label={say('until')} zone={zone} value={until} wrong={missing(until)} onChange={setUntil} />
      <Button look="main" onClick={show}>{say('show')}</Button>
    </>
  );
}
