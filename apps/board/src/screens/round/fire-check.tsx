import type { PitView } from '@stokehold/domain/contract';
import type { ReactNode } from 'react';
import { Button } from '../../parts/button.js';
import { Caution } from '../../parts/caution.js';
import { Choice } from '../../parts/choice.js';
import { Field } from '../../parts/field.js';
import { Troubles } from '../../parts/troubles.js';
import type { Trouble } from '../../parts/troubles-of.js';
import { useFigures } from '../../units/use-figures.js';
import { useRoundWords } from '../../words/round.js';
import { useSharedWords } from '../../words/shared.js';
import { AirLeft } from './air-left.js';
import { USUAL_AIR } from './air-chosen.js';
import type { Draft } from './draft.js';
import { Gauges } from './gauges.js';
import { OtherChoices } from './other-choices.js';
import { Questions } from './questions.js';
import css from './round.module.css';
import { useDraft, type Drafting } from './use-draft.js';

const SMOKES = ['clean', 'dirty'] as const;

interface FireCheckProps {
  readonly view: PitView;
  readonly nowMs: number;
  readonly troubles: readonly Trouble[];
  /** What stands above the questions: they share one screen of the phone with it. */
  readonly head: ReactNode;
  /** Resolves to whether it was recorded. */
  readonly onDone: (draft: Draft) => Promise<boolean>;
}

/** One check in four touches: the bed, what is left, what was put on, done. Mounted anew for each fire. */
export function FireCheck({ view, nowMs, troubles, head, onDone }: FireCheckProps) {
  const drafting = useDraft(view, onDone);
  return (
    <>
      <section className={css['front']}>
        {head}
        <Questions {...{ view, drafting }} />
        <DoneButton drafting={drafting} />
      </section>
      <Caution about={view.advice?.air ? 'air' : 'fire'} />
      <Troubles troubles={troubles.filter(({ level }) => level === 'soon')} />
      <OtherChoices view={view} nowMs={nowMs} />
      <More {...{ view, drafting }} />
    </>
  );
}

/** Records what was touched; says what is still missing when it is touched too early. */
function DoneButton({ drafting: { draft, missing, toldMissing, done } }: { readonly drafting: Drafting }) {
  const say = useRoundWords();
  const figures = useFigures();
  const [fire, stack] = [draft.fireEndTempC, draft.stackEndTempC].map((tempC) => (tempC === undefined ? '–' : figures.degrees(tempC)));
  const read = draft.fireEndTempC !== undefined || draft.stackEndTempC !== undefined;
  return (
    <Button look="main" className={`${css['done']} figure`} aria-disabled={missing !== undefined} onClick={done}>
      {toldMissing ? say(toldMissing) : read ? say('doneWith', { temps: say('tempsBoth', { fire: fire!, stack: stack! }) }) : say('done')}
    </Button>
  );
}

/** Below the button: what may be said of a fire besides, and need not. */
function More({ view, drafting: { draft, change } }: { readonly view: PitView; readonly drafting: Drafting }) {
  const say = useRoundWords();
  const shared = useSharedWords();
  return (
    <>
      <Gauges view={view} draft={draft} onDraft={change} />
      <AirLeft before={view.fire?.air ?? USUAL_AIR} chosen={draft.air} onAir={(air) => change({ ...draft, air })} />
      <Choice className={css['choice']} optionClassName={css['middling']} label={say('askSmoke')} value={draft.smoke} onChoose={(smoke) => change({ ...draft, smoke })}
        options={SMOKES.map((smoke) => ({ value: smoke, label: shared(`smoke.${smoke}`) }))} />
      <Field label={say('note')} maxLength={500} value={draft.note ?? ''} onChange={(event) => change({ ...draft, note: event.target.value })} />
    </>
  );
}
