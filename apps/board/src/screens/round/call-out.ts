import { useEffect, useRef } from 'react';

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

/** Sounds and shakes the phone when a fire passes into being due, and again when it passes latest safe; never twice for one. */
export function useCallOut(pitId: string | undefined, calls: 'due' | 'past' | undefined): void {
  const before = useRef<string>(undefined);
  const now = pitId && calls ? `${pitId} ${calls}` : undefined;
  useEffect(() => {
    const first = before.current === undefined;
    before.current = now ?? '';
    if (first || !now || !calls) return;
    navigator.vibrate?.(calls === 'past' ? [300, 120, 300, 120, 300] : [200, 120, 200]);
    // A page that nobody has touched yet may not sound; the phone's shaking and the screen say it all the same.
    if (navigator.userActivation?.hasBeenActive) sound(NOTES_HZ[calls]);
  }, [now, calls]);
}
