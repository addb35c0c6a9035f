import type { PitView, YardState } from '@stokehold/domain/contract';
import { useState } from 'react';
import { deviceNow } from '../../live/device-clock.js';
import { takeBack, type Kept } from '../../live/kept.js';
import { useRecord } from '../../live/use-kept.js';
import { useFigures } from '../../units/use-figures.js';
import { useRoundWords } from '../../words/round.js';
import { checkOf, draftOf, keepDraft, type Draft } from './draft.js';

/** What was recorded last, for the line that says so. */
export interface Recorded {
  readonly what: string;
  readonly seenAt: string;
}

interface Recording {
  readonly state: YardState;
  /** The fire to show from now on; undefined for the next one. */
  readonly choose: (pitId: string | undefined) => void;
  readonly onRecorded: (pitId: string) => void;
}

/** Records a check on this device and goes on to the next fire; takes one back to correct it. */
export function useRecording({ state, choose, onRecorded }: Recording) {
  const say = useRoundWords();
  const figures = useFigures();
  const { record, full } = useRecord();
  const [recorded, setRecorded] = useState<Recorded>();
  /** Counts up, so that the fire's questions begin anew from the draft that was put back. */
  const [corrected, setCorrected] = useState(0);

  const done = async (view: PitView, draft: Draft) => {
    const seenAt = deviceNow(state.yard.practice);
    const check = checkOf(draft, view.pit.id, seenAt);
    if (!check || !(await record('recordCheck', check))) return false;
    setRecorded({ what: say('what.recordCheck', { pit: view.pit.name, time: figures.time(seenAt) }), seenAt });
    onRecorded(view.pit.id);
    choose(undefined);
    return true;
  };
  const correct = async (kept: Kept) => {
    if (kept.route !== 'recordCheck' || !(await takeBack(kept.nth))) return;
    const check = kept.input;
    keepDraft(check.pitId, draftOf(check));
    choose(check.pitId);
    setCorrected(corrected + 1);
    setRecorded(undefined);
  };
  return { done, correct, corrected, recorded, full };
}
