import type { PlanDecision, PlanView } from '@stokehold/domain/contract';
import { type EpochS, fromIso, later, MINUTE_S, toIso } from '@stokehold/domain/quantity';
import type { KeptPlan } from './plan.store.js';

/** What a person says or decides and no fire: somebody is away, work was given by hand, the shift or a pit was changed. */
const DECISIONS: readonly PlanView['because']['cause'][] = ['presence', 'by-hand', 'shift', 'pit'];
/** Fires make the plan anew every few minutes; what a person decided stays listed beside that for so long. Source: common practice, no source. */
const LISTED_S = 30 * MINUTE_S;

export const isDecision = ({ cause }: PlanView['because']): boolean => DECISIONS.includes(cause);

/** The decisions that stay listed with the plan that comes after `before`, the latest first. Held to decisions.test.ts */
export function decisionsAfter(before: Pick<KeptPlan, 'madeAt' | 'because' | 'changes' | 'decisions'>, now: EpochS): PlanDecision[] {
  return [...ownDecision(before), ...before.decisions].filter(({ listedUntil }) => fromIso(listedUntil) > now);
}

const ownDecision = ({ madeAt, because, changes }: Parameters<typeof decisionsAfter>[0]): readonly PlanDecision[] =>
  isDecision(because) && changes.length > 0 ? [{ madeAt: toIso(madeAt), listedUntil: toIso(later(madeAt, LISTED_S)), because, changes }] : [];
