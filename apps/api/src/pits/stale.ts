import type { AdviceView, DueView, FireView } from '@stokehold/domain/contract';
import { type EpochS, fromIso, MINUTE_S } from '@stokehold/domain/quantity';

/** A forecast looks an hour and a half ahead: a few minutes change little of it, least while its fire is not due for long. */
const OUTLOOK_HOLDS_S = 6 * MINUTE_S;
const OUTLOOK_HOLDS_FAR_S = 12 * MINUTE_S;
const FAR_S = 12 * MINUTE_S;
/** Advice is for whoever walks to the fire now: made at the check, when the next one comes near, and again while it waits. */
const ADVICE_WITHIN_S = 8 * MINUTE_S;
const ADVICE_HOLDS_S = 6 * MINUTE_S;

/** Fires are carried on even minutes: the estimator takes in readings every two. */
export const isCarryMinute = (now: EpochS) => Math.floor(now / MINUTE_S) % 2 === 0;

export const isOutlookStale = (fire: FireView | undefined, due: DueView | null, now: EpochS) =>
  fire === undefined || due === null || now - fromIso(fire.forecast.from) >= (fromIso(due.dueAt) - now > FAR_S ? OUTLOOK_HOLDS_FAR_S : OUTLOOK_HOLDS_S);

export const isAdviceStale = (advice: AdviceView | null, due: DueView | null, now: EpochS) =>
  advice === null || (due !== null && fromIso(due.dueAt) - now <= ADVICE_WITHIN_S && now - fromIso(advice.madeAt) >= ADVICE_HOLDS_S);
