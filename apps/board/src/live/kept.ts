import type { Problem, RouteName } from '@stokehold/domain/contract';
import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import { ask, type Input } from './ask.js';
import { passes, Refused } from './refused.js';

/** What a hand records at a fire, with or without signal. */
export type KeptRoute = Extract<RouteName, 'recordCheck' | 'reportBreak' | 'finishTask' | 'reportPresence'>;

interface KeptAs<N extends KeptRoute> {
  /** The order in which it was recorded; sent in this order. */
  readonly nth: number;
  readonly route: N;
  readonly input: Input<N>;
  readonly recordedAt: string;
  /** Sent only while this person is signed in: nobody's work goes out under another's name. */
  readonly personId: string;
  /** Set when the server said no: it stays until it is corrected or dropped. */
  readonly refused?: Problem;
}
/** Something recorded on this device that the server has not taken yet. */
export type Kept = { [N in KeptRoute]: KeptAs<N> }[KeptRoute];

interface KeptStore extends DBSchema {
  kept: { key: number; value: Kept };
}

const RETRY_MS = 30_000;

let database: Promise<IDBPDatabase<KeptStore>> | undefined;
const open = () =>
  (database ??= openDB<KeptStore>('stokehold', 1, {
    upgrade: (db) => void db.createObjectStore('kept', { keyPath: 'nth', autoIncrement: true }),
  }));

let shown: readonly Kept[] = [];
let sending: number | undefined;
let whose: string | undefined;
const listeners = new Set<() => void>();

export const keptNow = (): readonly Kept[] => shown;
/** The `nth` of what is on its way to the server now. */
export const sendingNow = (): number | undefined => sending;
export function whenKeptChanges(listener: () => void): () => void {
  listeners.add(listener);
  return () => void listeners.delete(listener);
}

async function show(): Promise<void> {
  shown = (await (await open()).getAll('kept')) as readonly Kept[];
  for (const listener of listeners) listener();
}

/** Writes to the device first, lastingly; then sends. Rejects when the device has no room left: nothing was recorded then. */
export async function keep<N extends KeptRoute>(kept: Omit<KeptAs<N>, 'nth' | 'refused'>): Promise<void> {
  const tx = (await open()).transaction('kept', 'readwrite', { durability: 'strict' });
  await tx.store.add(kept as unknown as Kept);
  await tx.done;
  await show();
  void sendKept();
}

/** Takes back what was not sent yet, or drops what was refused. False when it is on its way or gone already. */
export async function takeBack(nth: number): Promise<boolean> {
  if (sending === nth) return false;
  const db = await open();
  const there = (await db.get('kept', nth)) !== undefined;
  await db.delete('kept', nth);
  await show();
  return there;
}

/** The next to go: the first of this person's that was not refused. */
const nextOf = (kept: readonly Kept[]) => kept.find((one) => one.personId === whose && one.refused === undefined);

async function sendOne(one: Kept): Promise<'on' | 'stop'> {
  const db = await open();
  try {
    await ask(one.route, one.input as never);
    await db.delete('kept', one.nth);
    return 'on';
  } catch (error) {
    // Not signed in is about the device, not about what was recorded: it waits for its person.
    if (passes(error) || (error instanceof Refused && error.problem.status === 401)) return 'stop';
    if (!(error instanceof Refused)) throw error;
    await db.put('kept', { ...one, refused: error.problem });
    return 'on';
  }
}

/** Sends what is kept, in order, one after the other, each under its own key: whatever happens, the server takes it once. */
export async function sendKept(): Promise<void> {
  if (sending !== undefined) return;
  try {
    for (let one = nextOf(shown); one; one = nextOf(shown)) {
      sending = one.nth;
      const then = await sendOne(one);
      await show();
      if (then === 'stop') return;
    }
  } finally {
    sending = undefined;
    for (const listener of listeners) listener();
  }
}

/** Keeps sending for a person, whenever there may be signal again; until the returned function is called. */
export function sendFor(personId: string): () => void {
  whose = personId;
  const again = () => void show().then(sendKept);
  const onReturn = () => document.visibilityState === 'visible' && again();
  again();
  const timer = setInterval(again, RETRY_MS);
  addEventListener('online', again);
  document.addEventListener('visibilitychange', onReturn);
  return () => {
    whose = undefined;
    clearInterval(timer);
    removeEventListener('online', again);
    document.removeEventListener('visibilitychange', onReturn);
  };
}
