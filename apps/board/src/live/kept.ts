import type { Problem, RouteName } from '@stokehold/domain/contract';
import { ask, type Input } from './ask.js';
import { deviceNow } from './device-clock.js';
import { deviceStore } from './device-store.js';
import { heldForMs } from './held-back.js';
import { passes, Refused } from './refused.js';

/** What a hand records at a fire, with or without signal. */
export type KeptRoute = Extract<RouteName, 'recordCheck' | 'reportBreak' | 'finishTask' | 'reportPresence'>;

interface KeptAs<N extends KeptRoute> {
  /** The order in which it was recorded; sent in this order. */
  readonly nth: number;
  readonly route: N;
  readonly input: Input<N>;
  readonly recordedAt: string;
  /** The device's own clock as it was recorded, ms since 1970: for ten seconds from then it can be taken back. */
  readonly keptAtMs: number;
  /** Recorded on a practice night, by the yard's clock. */
  readonly practice: boolean;
  /** Sent only while this person is signed in: nobody's work goes out under another's name. */
  readonly personId: string;
  /** Set when the server said no: it stays until it is corrected or dropped. */
  readonly refused?: Problem;
}
/** Something recorded on this device that the server has not taken yet. */
export type Kept = { [N in KeptRoute]: KeptAs<N> }[KeptRoute];

const RETRY_MS = 30_000;

let shown: readonly Kept[] = [];
let sending: number | undefined;
let underWay: Promise<void> | undefined;
/** Up to this `nth` nothing is held back any more. */
let letGoUpTo = 0;
let whose: string | undefined;
const listeners = new Set<() => void>();

export const keptNow = (): readonly Kept[] => shown;
/** The `nth` of what is on its way to the server now. */
export const sendingNow = (): number | undefined => sending;
export function whenKeptChanges(listener: () => void): () => void {
  listeners.add(listener);
  return () => void listeners.delete(listener);
}

/** Tells the other tabs of this device that what is kept has changed. */
const otherTabs = globalThis.BroadcastChannel && new BroadcastChannel('kept');
otherTabs?.addEventListener('message', () => void show());

/** Reads what is kept, and shows it. */
export async function show(): Promise<void> {
  shown = (await (await deviceStore()).getAll('kept')) as readonly Kept[];
  for (const listener of listeners) listener();
}

async function changed(): Promise<void> {
  await show();
  otherTabs?.postMessage('changed');
}

/** Writes to the device first, lastingly; sends when it can no longer be taken back with a touch. Rejects when the device has no room left: nothing was recorded then. */
export async function keep<N extends KeptRoute>(kept: Omit<KeptAs<N>, 'nth' | 'keptAtMs' | 'refused'>): Promise<void> {
  const tx = (await deviceStore()).transaction('kept', 'readwrite', { durability: 'strict' });
  await tx.store.add({ ...kept, keptAtMs: Date.now() } as unknown as Kept);
  await tx.done;
  // Asked once there is something to lose: browsers grant it by how much a page is used.
  void navigator.storage?.persist?.();
  await changed();
  void sendKept();
}

/** Takes back what was not sent yet, or drops what was refused. False when it is on its way or gone already. */
export async function takeBack(nth: number): Promise<boolean> {
  if (sending === nth) return false;
  const db = await deviceStore();
  const there = (await db.get('kept', nth)) !== undefined;
  await db.delete('kept', nth);
  await changed();
  return there;
}

/** The next to go: the first of this person's that was not refused. */
const nextOf = (kept: readonly Kept[]) => kept.find((one) => one.personId === whose && one.refused === undefined);

/** The clock of the device as it sends, from which the server learns how far it is off: not as it recorded, hours ago. */
const asSentNow = ({ input, practice }: Kept) => ('sentAt' in input ? { ...input, sentAt: deviceNow(practice) } : input);

async function sendOne(one: Kept): Promise<'on' | 'stop'> {
  const db = await deviceStore();
  try {
    await ask(one.route, () => asSentNow(one) as never);
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

/** Of several tabs one sends at a time; where the browser has no locks each may, and the keys see to it that nothing is taken twice. */
const alone = async (send: () => Promise<void>): Promise<void> => {
  if (!navigator.locks) return send();
  await navigator.locks.request('send-kept', send);
};

/** Sends what is kept, in order, one after the other, each under its own key: whatever happens, the server takes it once. */
export function sendKept(): Promise<void> {
  underWay ??= alone(sendInOrder).finally(() => (underWay = undefined));
  return underWay;
}

/** Holds nothing back any longer: whoever puts the phone away, or signs out, has done with it. */
export async function letGo(): Promise<void> {
  letGoUpTo = shown.at(-1)?.nth ?? letGoUpTo;
  await underWay;
  await sendKept();
}

async function sendInOrder(): Promise<void> {
  try {
    await show();
    for (let one = nextOf(shown); one; one = nextOf(shown)) {
      const heldMs = one.nth > letGoUpTo ? heldForMs(one.keptAtMs, Date.now()) : 0;
      if (heldMs > 0) return void setTimeout(() => void sendKept(), heldMs);
      sending = one.nth;
      const then = await sendOne(one);
      await changed();
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
  const onSight = () => void (document.visibilityState === 'visible' ? again() : letGo());
  again();
  const timer = setInterval(again, RETRY_MS);
  addEventListener('online', again);
  document.addEventListener('visibilitychange', onSight);
  return () => {
    whose = undefined;
    clearInterval(timer);
    removeEventListener('online', again);
    document.removeEventListener('visibilitychange', onSight);
  };
}
