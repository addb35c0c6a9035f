import type { EpochS, PersonId } from '../quantity/index.js';
import { later } from '../quantity/index.js';
import { ALARM_LIST, type AlarmKind, type AlarmPriority, type Tier, TIERS } from './list.js';

/** Who is there to be called. */
export interface Present {
  /** Who has the pit, or the piece of work that the alarm is about; those who are away are left out. */
  readonly holders: readonly PersonId[];
  readonly leads: readonly PersonId[];
  readonly everyone: readonly PersonId[];
}
export interface Told {
  readonly tier: Tier;
  readonly people: readonly PersonId[];
  /** Who is called next if nobody takes note, and when. */
  readonly next: { readonly tier: Tier; readonly at: EpochS } | null;
}

/**
 * Who is called by an alarm that has called since an instant: the person who has the pit, then the lead, then everyone. Where nobody
 * has the pit, or no lead is there, the next are called at once. Source: our own choice. Held to telling.test.ts
 */
export function whoIsTold(kind: AlarmKind, since: EpochS, now: EpochS, present: Present): Told {
  const afterS = afterSOf(kind);
  const peopleOf: Readonly<Record<Tier, readonly PersonId[]>> = {
    holder: present.holders, lead: [...present.holders, ...present.leads], everyone: [...present.holders, ...present.leads, ...present.everyone],
  };
  const planned = TIERS.filter((tier) => afterS[tier] !== undefined);
  const reached = planned.filter((tier) => now - since >= afterS[tier]!).at(-1) ?? 'everyone';
  const from = TIERS.slice(TIERS.indexOf(reached));
  const tier = from.find((one) => peopleOf[one].length > 0) ?? 'everyone';
  return { tier, people: [...new Set(peopleOf[tier])], next: nextTold(kind, since, tier) };
}

/** Who is called after those of a tier if nobody takes note, and when; null after the last. */
export function nextTold(kind: AlarmKind, since: EpochS, tier: Tier): Told['next'] {
  const afterS = afterSOf(kind);
  const next = TIERS.find((one) => TIERS.indexOf(one) > TIERS.indexOf(tier) && afterS[one] !== undefined);
  return next ? { tier: next, at: later(since, afterS[next]!) } : null;
}

function afterSOf(kind: AlarmKind): Readonly<Record<Tier, number | undefined>> {
  const { tellFirst, leadAfterS, everyoneAfterS } = ALARM_LIST[kind];
  return { holder: undefined, lead: leadAfterS, everyone: everyoneAfterS, [tellFirst]: 0 };
}

/** Calls to one person in ten minutes: never more than ten. The last places are kept for what presses. Source: our own choice, after [IEC62682]. */
export const MOST_CALLS = 10;
const KEPT_FOR: Readonly<Record<AlarmPriority, number>> = { critical: 0, high: 1, medium: 2, low: 4 };
export const CALLS_OVER_S = 600;

/** Whether one more alarm may be announced to somebody who was called so often in the last ten minutes; if not, it is shown under the first. */
export const mayCall = (kind: AlarmKind, callsInTenMinutes: number): boolean => callsInTenMinutes < MOST_CALLS - KEPT_FOR[ALARM_LIST[kind].priority];
