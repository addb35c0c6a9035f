import { later, type EpochS } from '@stokehold/domain/quantity';
import { LEAD_S } from '@stokehold/domain/shift';
import type { Setup } from '@stokehold/domain/contract';
import { useState } from 'react';
import { Button } from '../../parts/button.js';
import { Field } from '../../parts/field.js';
import { NightTimeField } from '../../parts/wall-field.js';
import { useFigures } from '../../units/use-figures.js';
import { chosen, momentOf, nightTime, nightTimeOf } from '../../units/typed-wall-time.js';
import { useNightWords } from '../../words/night.js';
import css from './night.module.css';
import type { DraftPit, ShiftDraft, Typing } from './shift-draft.js';
import { lightUp, suggestLightUps } from './suggestions.js';

interface ShiftPitsProps {
  readonly draft: ShiftDraft;
  readonly setup: Setup;
  readonly startsAt: EpochS | undefined;
  readonly faultText: (field: string) => string | undefined;
  readonly typing: Typing;
  readonly onChange: (pits: readonly DraftPit[]) => void;
}

/** Which pits burn tonight, in which band, lit when. */
export function ShiftPits({ draft, setup, startsAt, faultText, typing, onChange }: ShiftPitsProps) {
  const say = useNightWords();
  const figures = useFigures();
  const { zone } = typing;
  const [foodOn, setFoodOn] = useState(nightTime('20:00'));
  const change = (pitId: string, part: Partial<DraftPit>) => onChange(draft.pits.map((pit) => (pit.pitId === pitId ? { ...pit, ...part } : pit)));
  const from = startsAt === undefined ? undefined : later(startsAt, -LEAD_S);
  const foodOnAt = from === undefined ? undefined : chosen(momentOf(foodOn, from, zone), foodOn.again);

  const suggest = () => {
    if (foodOnAt === undefined) return;
    const burning = setup.pits.filter(({ id }) => draft.pits.some((pit) => pit.pitId === id && pit.burns));
    const times = suggestLightUps(burning, foodOnAt);
    onChange(draft.pits.map((pit) => {
      const at = times.get(pit.pitId);
      return at === undefined ? pit : { ...pit, light: nightTimeOf(at, zone) };
    }));
  };
  return (
    <section className={css['roster']}>
      <h3>{say('pits.title')}</h3>
      <div className={css['suggest']}>
        <NightTimeField label={say('pits.foodOn')} zone={zone} from={from} value={foodOn} onChange={setFoodOn} />
        <Button onClick={suggest}>{say('pits.suggest')}</Button>
      </div>
      <div className={css['panels']}>
        {draft.pits.map((pit) => {
          const known = setup.pits.find(({ id }) => id === pit.pitId);
          if (!known) return null;
          const field = `pits.${pit.pitId}`;
          const lightAt = from === undefined ? undefined : chosen(momentOf(pit.light, from, zone), pit.light.again);
          const after = lightAt === undefined ? undefined : lightUp(known, lightAt);
          return (
            <div key={pit.pitId} className={css['entry']} data-off={!pit.burns} role="group" aria-label={known.name}>
              <label className={css['tick']}>
                <input type="checkbox" checked={pit.burns} onChange={(event) => change(pit.pitId, { burns: event.target.checked })} />
                {known.name}
                {!pit.burns && <span className={css['quiet']}>{say('pits.rests')}</span>}
              </label>
              {pit.burns && (
                <>
                  <div className={css['threes']}>
                    <NightTimeField label={say('pits.light')} zone={zone} from={from} value={pit.light} wrong={faultText(`${field}.light`)} onChange={(light) => change(pit.pitId, { light })} />
                    <Field label={say('pits.low')} unit={figures.unit('temp')} inputMode="decimal" value={pit.low} wrong={faultText(`${field}.low`)} onChange={(event) => change(pit.pitId, { low: event.target.value })} />
                    <Field label={say('pits.high')} unit={figures.unit('temp')} inputMode="decimal" value={pit.high} wrong={faultText(`${field}.high`)} onChange={(event) => change(pit.pitId, { high: event.target.value })} />
                  </div>
                  {after && <p className={css['quiet']}>{say('pits.after', { fit: figures.time(after.bedFitAt * 1000), hot: figures.time(after.hotAt * 1000) })}</p>}
                </>
              )}
            </div>
          );
        })}
      </div>
    </section>
  );
}
