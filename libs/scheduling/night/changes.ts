import { later, MINUTE_S, type EpochS, type PersonId } from '@stokehold/domain/quantity';
import { workKey, type PlanChange, type Work } from '../rounds/index.js';
import { rootCauses, type ShownCause } from './causes.js';
import type { Shown } from './facts.js';
import { PROMISED_AHEAD_S } from './practice.js';

/** A start that moves by less is no change that anybody has to hear of. */
const TOLD_FROM_S = MINUTE_S;

export interface ShownChange {
  readonly work: Work;
  readonly code: 'new' | 'gone' | 'moved' | 'other-person' | 'moved-other-person';
  readonly from: Shown | undefined;
  readonly to: Shown | undefined;
  readonly because: ShownCause;
}

const samePeople = (one: readonly PersonId[], other: readonly PersonId[]) => one.length === other.length && one.every((id) => other.includes(id));

function codeOf(from: Shown | undefined, to: Shown | undefined): ShownChange['code'] | undefined {
  if (!from) return 'new';
  if (!to) return 'gone';
  const moved = Math.abs(to.startsAt - from.startsAt) >= TOLD_FROM_S;
  if (samePeople(from.personIds, to.personIds)) return moved ? 'moved' : undefined;
  return moved ? 'moved-other-person' : 'other-person';
}

interface Telling {
  readonly now: EpochS;
  readonly isDone: (work: Work) => boolean;
  readonly told: readonly PlanChange[];
}

/** The cause of a change that the repair found too small to tell. */
const PLAIN: { readonly [C in ShownChange['code']]: ShownCause['code'] } = {
  new: 'new-work', gone: 'not-needed', moved: 'made-room', 'other-person': 'made-room', 'moved-other-person': 'made-room',
};

function causesOf(before: readonly Shown[], { now, told, isDone }: Telling): ReadonlyMap<string, ShownCause> {
  const ends = new Map(before.map(({ work, endsAt }) => [workKey(work), endsAt]));
  const open = told.filter(({ work }) => !isDone(work));
  return rootCauses(open.map((change) => {
    const endBefore = ends.get(workKey(change.work));
    return { ...change, ...(endBefore !== undefined && { endBefore }) };
  }), now);
}

/**
 * What of the next two hours differs between the plan that people saw and the new one, in order of time, each with what began it.
 * Work that was done in between is no change.
 *
 * @param before  what was shown
 * @param after   the new plan
 * @param about.isDone  whether a piece of work needs nobody any more
 * @param about.told    the changes as the repair told them, for their causes
 */
export function changesBetween(before: readonly Shown[], after: readonly Shown[], about: Telling): readonly ShownChange[] {
  const { now, isDone } = about;
  const causes = causesOf(before, about);
  const until = later(now, PROMISED_AHEAD_S);
  const old = new Map(before.filter(({ work }) => !isDone(work)).map((one) => [workKey(one.work), one]));
  const fresh = new Map(after.filter(({ work }) => !isDone(work)).map((one) => [workKey(one.work), one]));
  const start = (change: ShownChange) => Math.min(change.from?.startsAt ?? Infinity, change.to?.startsAt ?? Infinity);
  return [...new Set([...old.keys(), ...fresh.keys()])]
    .flatMap((key): ShownChange[] => {
      const [from, to] = [old.get(key), fresh.get(key)];
      const work = (from ?? to)?.work;
      const code = codeOf(from, to);
      return work && code ? [{ work, code, from, to, because: causes.get(key) ?? { code: PLAIN[code] } }] : [];
    })
    .filter((change) => start(change) < until)
    .sort((one, other) => start(one) - start(other) || (workKey(one.work) < workKey(other.work) ? -1 : 1));
}
