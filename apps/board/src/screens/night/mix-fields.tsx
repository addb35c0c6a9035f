import { species } from '@stokehold/domain/contract';
import { Button } from '../../parts/button.js';
import { Field, Pick } from '../../parts/field.js';
import type { Wrongs } from '../../parts/form-reading.js';
import { Fields } from '../../parts/panel.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useNightWords } from '../../words/night.js';
import { useSharedWords } from '../../words/shared.js';
import { type WishDraft, wishField } from './mix-draft.js';
import css from './night.module.css';

const MOST_WISHES = 6;

interface MixFieldsProps {
  readonly mix: readonly WishDraft[];
  /** Woods that lie in the yard: they are offered first. */
  readonly inYard: ReadonlySet<WishDraft['species']>;
  readonly wrongs: Wrongs;
  readonly onChange: (mix: readonly WishDraft[]) => void;
}

/** The kitchen's wish of wood for a cook: none, or of each wood how much of the fire's heat at least and at most. */
export function MixFields({ mix, inYard, wrongs, onChange }: MixFieldsProps) {
  const say = useNightWords();
  const named = new Set(mix.map((wish) => wish.species));
  const inOrder = [...species.options].sort((a, b) => Number(inYard.has(b)) - Number(inYard.has(a)));
  const next = inOrder.find((one) => !named.has(one));
  const change = (nth: number, more: Partial<WishDraft>) => onChange(mix.map((wish, i) => (i === nth ? { ...wish, ...more } : wish)));
  return (
    <fieldset className={css['mix']}>
      <legend>{say('mix')}</legend>
      <p className={css['quiet']}>{say(mix.length === 0 ? 'mix.any' : 'mix.how')}</p>
      {mix.map((wish, nth) => (
        <Wish key={nth} {...{ wish, nth, wrongs }} offered={inOrder.filter((one) => one === wish.species || !named.has(one))} onChange={(more) => change(nth, more)} onDrop={() => onChange(mix.filter((_, i) => i !== nth))} />
      ))}
      {next && mix.length < MOST_WISHES && (
        <p className={css['line']}>
          <Button onClick={() => onChange([...mix, { species: next, least: '', most: '' }])}>{say(mix.length === 0 ? 'mix.add' : 'mix.another')}</Button>
        </p>
      )}
    </fieldset>
  );
}

interface WishProps {
  readonly wish: WishDraft;
  readonly nth: number;
  readonly wrongs: Wrongs;
  readonly offered: readonly WishDraft['species'][];
  readonly onChange: (more: Partial<WishDraft>) => void;
  readonly onDrop: () => void;
}

function Wish({ wish, nth, wrongs, offered, onChange, onDrop }: WishProps) {
  const say = useNightWords();
  const shared = useSharedWords();
  const wrongText = useWrongText();
  const wood = shared(`species.${wish.species}`);
  return (
    <div className={css['wish']}>
      <Pick label={say('mix.wood')} value={wish.species} onChange={(event) => onChange({ species: offered.find((one) => one === event.target.value) ?? wish.species })}>
        {offered.map((one) => <option key={one} value={one}>{shared(`species.${one}`)}</option>)}
      </Pick>
      <Fields narrow>
        <Field label={say('mix.least')} unit="%" inputMode="decimal" value={wish.least} wrong={wrongText(wrongs[wishField(nth, 'least')])} onChange={(event) => onChange({ least: event.target.value })} />
        <Field label={say('mix.most')} unit="%" inputMode="decimal" value={wish.most} wrong={wrongText(wrongs[wishField(nth, 'most')])} onChange={(event) => onChange({ most: event.target.value })} />
      </Fields>
      <Button onClick={onDrop}>{say('mix.drop', { wood })}</Button>
    </div>
  );
}
