import type { EpochS, PersonId } from '../quantity/index.js';

/** States by IEC 62682 (ISA-18.2): whether the condition holds, and whether somebody has taken note. */
export type AlarmState = 'normal' | 'unacknowledged' | 'acknowledged' | 'returned-unacknowledged';
/** Why logic of the night keeps an alarm from calling: the fire was just looked at, somebody is due there anyway, or it mends itself. */
export type SuppressedBy = 'after-check' | 'check-due' | 'comes-back';
/** Set aside by a person, always for a time. one-shot: until the condition ends, at the latest until then. */
export interface Shelf {
  readonly until: EpochS;
  readonly by: PersonId;
  readonly way: 'timed' | 'one-shot';
}
/** How an alarm stands. While it is shelved or suppressed its state goes on as if it were not. */
export interface Standing {
  readonly state: AlarmState;
  readonly shelf: Shelf | null;
  readonly suppressedBy: SuppressedBy | null;
}
/** What can happen to an alarm. `reminder-due`: somebody took note long ago and the condition still holds. */
export type AlarmStep =
  | { readonly kind: 'condition-began' | 'condition-ended' | 'acknowledged' | 'reminder-due' | 'shelf-ended' | 'suppression-ended' }
  | { readonly kind: 'shelved'; readonly shelf: Shelf }
  | { readonly kind: 'suppressed'; readonly by: SuppressedBy };
export type StepKind = AlarmStep['kind'];
export const STEP_KINDS: readonly StepKind[] = ['condition-began', 'condition-ended', 'acknowledged', 'reminder-due', 'shelved', 'shelf-ended', 'suppressed', 'suppression-ended'];

export const NORMAL: Standing = { state: 'normal', shelf: null, suppressedBy: null };

const AFTER: Readonly<Record<AlarmState, Readonly<Partial<Record<StepKind, AlarmState>>>>> = {
  normal: { 'condition-began': 'unacknowledged' },
  // What is let call again calls, whoever took note of it before.
  unacknowledged: { acknowledged: 'acknowledged', 'condition-ended': 'returned-unacknowledged' },
  acknowledged: { 'condition-ended': 'normal', 'reminder-due': 'unacknowledged', 'shelf-ended': 'unacknowledged', 'suppression-ended': 'unacknowledged' },
  'returned-unacknowledged': { 'condition-began': 'unacknowledged', acknowledged: 'normal' },
};

/**
 * How an alarm stands after a step; a step that means nothing leaves it as it is. Nobody shelves what is normal; the end of a shelf
 * or of a suppression that was not there is no end. A one-shot shelf ends with its condition.
 *
 * Source: [IEC62682] states and transitions, shelving after [OPCUA-9]. Held to state.test.ts, every walk.
 */
export function standingAfter({ state, shelf, suppressedBy }: Standing, step: AlarmStep): Standing {
  const standing: Standing = { state, shelf, suppressedBy };
  switch (step.kind) {
    case 'shelved':
      return state === 'normal' ? standing : { ...standing, shelf: step.shelf };
    case 'suppressed':
      return state === 'normal' ? standing : { ...standing, suppressedBy: step.by };
    case 'shelf-ended':
      return shelf ? { ...standing, state: AFTER[state]['shelf-ended'] ?? state, shelf: null } : standing;
    case 'suppression-ended':
      return suppressedBy ? { ...standing, state: AFTER[state]['suppression-ended'] ?? state, suppressedBy: null } : standing;
    case 'condition-ended': {
      const ended = AFTER[state]['condition-ended'] ?? state;
      // One that never called needs nobody to take note that it is over; with the alarm goes what kept it quiet.
      const after = suppressedBy || ended === 'normal' ? 'normal' : ended;
      return { state: after, shelf: after === 'normal' || shelf?.way === 'one-shot' ? null : shelf, suppressedBy: null };
    }
    default: {
      const after = AFTER[state][step.kind] ?? state;
      return after === 'normal' ? NORMAL : { ...standing, state: after };
    }
  }
}

/** Whether the condition holds in this state. */
export const conditionHolds = (state: AlarmState): boolean => state === 'unacknowledged' || state === 'acknowledged';

/** Whether it calls for somebody: nobody took note, and nothing keeps it quiet. */
export const calls = ({ state, shelf, suppressedBy }: Standing): boolean => state === 'unacknowledged' && shelf === null && suppressedBy === null;
