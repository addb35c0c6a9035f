import { useState } from 'react';
import { useTick } from '../../live/use-clock.js';
import { useKept } from '../../live/use-kept.js';

/** Long enough for the server's answer to come back through the live push. */
const SETTLES_MS = 4000;

interface JustDone {
  /** Fires whose check is recorded here and not yet in what the server shows. */
  readonly fires: ReadonlySet<string>;
  readonly note: (pitId: string) => void;
}

export function useJustDone(): JustDone {
  useTick();
  const kept = useKept();
  const [noted, setNoted] = useState<ReadonlyMap<string, number>>(new Map());
  const now = performance.now();
  const unsent = kept.flatMap((one) => (one.route === 'recordCheck' && !one.refused ? [one.input.pitId] : []));
  const settling = [...noted].filter(([, at]) => now - at < SETTLES_MS).map(([pitId]) => pitId);
  return { fires: new Set([...unsent, ...settling]), note: (pitId) => setNoted(new Map(noted).set(pitId, performance.now())) };
}
