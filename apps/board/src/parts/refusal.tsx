import type { Problem } from '@stokehold/domain/contract';
import { lazy, Suspense } from 'react';

/** Seventy sentences that are seldom said: no first picture waits for them. */
const told = () => import('./refusal-told.js');
const Told = lazy(() => told().then((m) => ({ default: m.RefusalTold })));

/** Fetches them while there is signal, so that they are there when something is refused. What fails here is asked for again then. */
export const fetchRefusals = (): void => void told().catch(() => undefined);

/** The sentence of a refusal. */
export const Refusal = ({ problem }: { readonly problem: Problem }) => (
  <Suspense>
    <Told problem={problem} />
  </Suspense>
);
