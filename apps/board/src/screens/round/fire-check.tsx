import type { PitView } from '@stokehold/domain/contract';
import { useState } from 'react';
import { Button } from '../../parts/button.js';
import { Caution } from '../../parts/caution.js';
import { Choice } from '../../parts/choice.js';
import { Field } from '../../parts/field.js';
import { useFigures } from '../../units/use-figures.js';
import { useRoundWords } from '../../words/round.js';
import { useSharedWords } from '../../words/shared.js';
import { keepDraft, keptDraft, missingIn, type Draft, type Put } from './draft.js';
import { Gauges } from './gauges.js';
import { BedPicture, LeftPicture, PutPicture } from './pictures.js';
import css from './round.module.css';

const BEDS = ['low', 'fair', 'full'] as const;
const LEFTS = ['coals', 'some', 'most'] as const;
const PUTS: readonly Put[] = ['rake', 'one', 'two'];
const SIZES = ['thin', 'standard', 'thick'] as const;
/** A second touch of the same button within this time was one touch of a gloved hand. */
const ONE_TOUCH_MS = 400;

/** The size that the advice asks for, where it is not the usual one. */
const sizeAdvised = ({ advice }: PitView) => (advice?.action.endsWith('thin') ? 'thin' : advice?.action.endsWith('thick') ? 'thick' : undefined);

interface FireCheckProps {
  readonly view: PitView;
  /** Resolves to whether it was recorded. */
  readonly onDone: (draft: Draft) => Promise<boolean>;
}

/** One check in four touches: the bed, what is left, what was put on, done. Mounted anew for each fire. */
export function FireCheck({ view, onDone }: FireCheckProps) {
  const say = useRoundWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const [draft, setDraft] = useState<Draft>(() => keptDraft(view.pit.id));
  const [touchedAt, setTouchedAt] = useState(-ONE_TOUCH_MS);
  const [asked, setAsked] = useState(false);
  const missing = missingIn(draft);
  const advisedSize = draft.put === 'rake' ? undefined : sizeAdvised(view);
  const change = (next: Draft) => {
    setDraft(next);
    keepDraft(view.pit.id, next);
  };
  const done = async () => {
    setAsked(true);
    if (missing || performance.now() - touchedAt < ONE_TOUCH_MS) return;
    setTouchedAt(performance.now());
    if (!(await onDone({ ...draft, size: draft.size ?? advisedSize }))) return;
    change({});
    setAsked(false);
  };
  const temps = [draft.fireEndTempC, draft.stackEndTempC].map((tempC) => (tempC === undefined ? '–' : figures.degrees(tempC)));
  const read = draft.fireEndTempC !== undefined || draft.stackEndTempC !== undefined;
  const big = { className: css['choice'], optionClassName: css['big'] };
  return (
    <>
      <Choice {...big} label={say('askBed')} value={draft.bed} onChoose={(bed) => change({ ...draft, bed })}
        options={BEDS.map((bed) => ({ value: bed, label: shared(`bed.${bed}`), picture: <BedPicture bed={bed} /> }))} />
      <Choice {...big} label={say('askLeft')} value={draft.left} onChoose={(left) => change({ ...draft, left })}
        options={LEFTS.map((left) => ({ value: left, label: shared(`left.${left}`), picture: <LeftPicture left={left} /> }))} />
      <Choice {...big} label={say('askPut')} value={draft.put} onChoose={(put) => change({ ...draft, put })}
        options={PUTS.map((put) => ({ value: put, label: say(`put.${put}`), picture: <PutPicture put={put} /> }))} />
      {advisedSize && (
        <Choice className={css['choice']} optionClassName={css['middling']} label={say('askSize')} value={draft.size ?? advisedSize} onChoose={(size) => change({ ...draft, size })}
          options={SIZES.map((size) => ({ value: size, label: shared(`size.${size}`) }))} />
      )}
      <div className={css['doneBar']}>
        <Button look="main" className={`${css['done']} figure`} aria-disabled={missing !== undefined} onClick={() => void done()}>
          {missing && asked ? say(missing) : read ? say('doneWith', { temps: say('tempsBoth', { fire: temps[0]!, stack: temps[1]! }) }) : say('done')}
        </Button>
      </div>
      <Caution about="fire" />
      <Gauges view={view} draft={draft} onDraft={change} />
      <Choice className={css['choice']} optionClassName={css['middling']} label={say('askSmoke')} value={draft.smoke} onChoose={(smoke) => change({ ...draft, smoke })}
        options={(['clean', 'dirty'] as const).map((smoke) => ({ value: smoke, label: shared(`smoke.${smoke}`) }))} />
      <Field label={say('note')} maxLength={500} value={draft.note ?? ''} onChange={(event) => change({ ...draft, note: event.target.value })} />
    </>
  );
}
