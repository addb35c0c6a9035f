import { MINUTE_S, type EpochS, type PersonId } from '@stokehold/domain/quantity';
import { workKey, type ChangeCause, type PlanChange, type Work } from '../rounds/index.js';

/** Why a shown assignment changed, followed back to the fact that began it. */
export interface ShownCause {
  readonly code: ChangeCause['code'] | 'not-reported';
  /** Who is not there, or whose work ran over. */
  readonly personId?: PersonId;
  /** The work that ran over, or that room was made for. */
  readonly work?: Work;
}

/** A change and its nearest cause, as the repair tells them. */
export type CausedChange = Pick<PlanChange, 'work' | 'personsBefore' | 'startBefore' | 'because'> & { readonly endBefore?: EpochS };

/** How many steps a cause is followed back. */
const STEPS = 8;
/** A start that lies so near to another's end had to wait for it. */
const NEXT_TO_S = 10 * MINUTE_S;

/**
 * The cause of each change by its work's key. A repair tells what stood in the way; here it is followed to what began it: work that
 * nobody reported done holds up what follows it, somebody who is not there hands on their work, a check that moved moves the
 * next check of its pit.
 *
 * @param changes  all changes of a repair, with the end that each had before
 * @param now      work that should be over by now and is still to do was not reported
 * @returns one cause a change. Held to libs/scheduling/night/causes.test.ts
 */
export function rootCauses(changes: readonly CausedChange[], now: EpochS): ReadonlyMap<string, ShownCause> {
  const byKey = new Map(changes.map((change) => [workKey(change.work), change]));
  return new Map(changes.map((change) => [workKey(change.work), rootOf(change, byKey, now)]));
}

function rootOf(change: CausedChange, byKey: ReadonlyMap<string, CausedChange>, now: EpochS): ShownCause {
  let [at, steps] = [change, 0];
  const seen = new Set<string>();
  for (;;) {
    const here = nearest(at, now);
    if (here.code === 'not-reported' && at !== change) return ranOver(at);
    const next = steps < STEPS ? before(at, here, byKey) : undefined;
    if (!next || seen.has(workKey(next.work))) return here;
    seen.add(workKey(at.work));
    at = next;
    steps += 1;
  }
}

const ranOver = ({ work, personsBefore: [personId] }: CausedChange): ShownCause => ({ code: 'work-before-ran-over', work, ...(personId !== undefined && { personId }) });

function nearest({ endBefore, because }: CausedChange, now: EpochS): ShownCause {
  const weak = because.code === 'made-room' || because.code === 'due-moved';
  return weak && endBefore !== undefined && endBefore <= now ? { code: 'not-reported' } : because;
}

/** The change that led to this one, if there is one: what took its place, the check before it, the work of the same hands before it. */
function before(change: CausedChange, { code, work }: ShownCause, byKey: ReadonlyMap<string, CausedChange>): CausedChange | undefined {
  const own = change.work;
  if (code === 'due-moved') return own.kind === 'check' ? byKey.get(workKey({ ...own, nth: own.nth - 1 })) : undefined;
  if (code !== 'made-room') return undefined;
  return (work && byKey.get(workKey(work))) ?? sameHandsBefore(change, byKey);
}

function sameHandsBefore({ startBefore, personsBefore }: CausedChange, byKey: ReadonlyMap<string, CausedChange>): CausedChange | undefined {
  if (startBefore === undefined) return undefined;
  return [...byKey.values()]
    .filter((one) => one.endBefore !== undefined && one.endBefore <= startBefore && startBefore - one.endBefore <= NEXT_TO_S && one.personsBefore.some((id) => personsBefore.includes(id)))
    .sort((one, other) => (other.endBefore ?? 0) - (one.endBefore ?? 0))[0];
}
