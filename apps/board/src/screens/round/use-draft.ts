import type { PitView } from '@stokehold/domain/contract';
import { useState } from 'react';
import { keepDraft, keptDraft, missingIn, type Draft, type Missing } from './draft.js';

/** A second touch of the same button within this time was one touch of a gloved hand. */
const ONE_TOUCH_MS = 400;

/** The size that the advice asks for, where it is not the usual one. */
function sizeAdvised({ advice }: PitView): 'thin' | 'thick' | 'offcut' | undefined {
  if (advice?.action === 'offcut' || advice?.action === 'two-offcuts') return 'offcut';
  return advice?.action.endsWith('thin') ? 'thin' : advice?.action.endsWith('thick') ? 'thick' : undefined;
}

export interface Drafting {
  readonly draft: Draft;
  readonly change: (next: Draft) => void;
  /** What is still to be said; told once somebody has tried to record without it. */
  readonly missing: Missing | undefined;
  readonly toldMissing: Missing | undefined;
  readonly advisedSize: 'thin' | 'thick' | 'offcut' | undefined;
  readonly done: () => void;
}

/** The check of one fire as it is touched together: kept on the device at each touch, recorded once. */
export function useDraft(view: PitView, onDone: (draft: Draft) => Promise<boolean>): Drafting {
  const [draft, setDraft] = useState<Draft>(() => keptDraft(view.pit.id));
  const [touchedAt, setTouchedAt] = useState(-ONE_TOUCH_MS);
  const [asked, setAsked] = useState(false);
  const missing = missingIn(draft);
  const advisedSize = draft.put === 'rake' ? undefined : sizeAdvised(view);
  const change = (next: Draft) => {
    setDraft(next);
    keepDraft(view.pit.id, next);
  };
  const record = async () => {
    setAsked(true);
    if (missing || performance.now() - touchedAt < ONE_TOUCH_MS) return;
    setTouchedAt(performance.now());
    if (!(await onDone({ ...draft, size: draft.size ?? advisedSize, air: draft.air ?? view.fire?.air }))) return;
    change({});
    setAsked(false);
  };
  return { draft, change, missing, toldMissing: asked ? missing : undefined, advisedSize, done: () => void record() };
}
