import type { PitView } from '@stokehold/domain/contract';
import { Choice } from '../../parts/choice.js';
import { useRoundWords } from '../../words/round.js';
import { useSharedWords } from '../../words/shared.js';
import { AirAsAdvised } from './air-left.js';
import { USUAL_AIR } from './air-chosen.js';
import type { Put } from './draft.js';
import { BedPicture, LeftPicture, PutPicture } from './pictures.js';
import css from './round.module.css';
import type { Drafting } from './use-draft.js';

const BEDS = ['low', 'fair', 'full'] as const;
const LEFTS = ['coals', 'some', 'most'] as const;
const PUTS: readonly Put[] = ['rake', 'one', 'two'];
const SIZES = ['thin', 'standard', 'thick'] as const;
const SIZES_WITH_OFFCUTS = ['offcut', 'thin', 'standard'] as const;

interface QuestionsProps {
  readonly view: PitView;
  readonly drafting: Drafting;
}

/** What is asked at every fire, one touch each; size and air only where the advice is about them. */
export function Questions({ view, drafting: { draft, change, advisedSize } }: QuestionsProps) {
  const say = useRoundWords();
  const shared = useSharedWords();
  const big = { className: `${css['choice']} ${css['grows']}`, optionClassName: css['big'] };
  return (
    <>
      <Choice {...big} label={say('askBed')} value={draft.bed} onChoose={(bed) => change({ ...draft, bed })}
        options={BEDS.map((bed) => ({ value: bed, label: shared(`bed.${bed}`), picture: <BedPicture bed={bed} /> }))} />
      <Choice {...big} label={say('askLeft')} value={draft.left} onChoose={(left) => change({ ...draft, left })}
        options={LEFTS.map((left) => ({ value: left, label: shared(`left.${left}`), picture: <LeftPicture left={left} /> }))} />
      <Choice {...big} label={say('askPut')} value={draft.put} onChoose={(put) => change({ ...draft, put })}
        options={PUTS.map((put) => ({ value: put, label: say(`put.${put}`), picture: <PutPicture put={put} /> }))} />
      {advisedSize && (
        <Choice className={`${css['choice']} ${css['oneMore']}`} optionClassName={css['middling']} label={say('askSize')} value={draft.size ?? advisedSize} onChoose={(size) => change({ ...draft, size })}
          options={(advisedSize === 'offcut' ? SIZES_WITH_OFFCUTS : SIZES).map((size) => ({ value: size, label: shared(`size.${size}`) }))} />
      )}
      {view.advice?.air && (
        <AirAsAdvised advice={view.advice.air} before={view.fire?.air ?? USUAL_AIR} chosen={draft.air} onAir={(air) => change({ ...draft, air })} />
      )}
    </>
  );
}
