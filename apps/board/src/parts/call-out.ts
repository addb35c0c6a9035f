import type { PitView, YardState } from '@stokehold/domain/contract';
import { useEffect, useRef } from 'react';
import { callsPerson } from './alarms-said.js';

/** Two short notes, for a fire that has just fallen due; lower and three of them once past latest safe. */
const NOTES_HZ = { due: [660, 880], past: [523, 523, 523] } as const;
const NOTE_S = 0.16;

function sound(notes: readonly number[]): void {
  const context = new AudioContext();
  notes.forEach((hz, n) => {
    const note = context.createOscillator();
    const loudness = context.createGain();
    const from = context.currentTime + n * NOTE_S * 1.3;
    loudness.gain.setValueAtTime(0.25, from);
    loudness.gain.exponentialRampToValueAtTime(0.001, from + NOTE_S);
    note.frequency.value = hz;
    note.connect(loudness).connect(context.destination);
    note.start(from);
    note.stop(from + NOTE_S);
  });
  setTimeout(() => void context.close(), 2000);
}

/** What a device calls out: a fire or an alarm, and whether it is due or past help soon. */
export interface Call {
  readonly id: string;
  readonly calls: 'due' | 'past';
}

/** What there is to call out to somebody now: a fire that runs away, wherever it is; an alarm that calls them; the fire on show. */
export function callFor(state: Pick<YardState, 'alarms'>, view: PitView | undefined, nowMs: number, personId: string): Call | undefined {
  const away = state.alarms.find(({ kind, state: stands }) => kind === 'running-away' && stands === 'unacknowledged');
  const called = away ?? callsPerson(state.alarms, personId);
  if (called) return { id: called.id, calls: 'past' };
  if (!view?.due || nowMs < Date.parse(view.due.dueAt)) return undefined;
  return { id: view.pit.id, calls: nowMs >= Date.parse(view.due.latestSafeAt) ? 'past' : 'due' };
}

/** Sounds and shakes the device when a fire passes into being due, when it passes latest safe, and when an alarm calls; never twice for one. */
export function useCallOut(call: Call | undefined): void {
  const before = useRef<string>(undefined);
  const calls = call?.calls;
  const now = call && `${call.id} ${call.calls}`;
  useEffect(() => {
    const first = before.current === undefined;
    before.current = now ?? '';
    if (first || !now || !calls) return;
    navigator.vibrate?.(calls === 'past' ? [300, 120, 300, 120, 300] : [200, 120, 200]);
    // A page that nobody has touched yet may not sound; the phone's shaking and the screen say it all the same.
    if (navigator.userActivation?.hasBeenActive) sound(NOTES_HZ[calls]);
  }, [now, calls]);
}
