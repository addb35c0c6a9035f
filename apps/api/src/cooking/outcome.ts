import type { CookForecast, FindingView, FoodLimits } from '@stokehold/domain/contract';
import { type Answered, type CookRecord, type CookRefusal, type DoneInShort, findingsOf } from '@stokehold/domain/food';
import { type EpochS, fromIso, type Result, toIso } from '@stokehold/domain/quantity';
import type { CookOnHand } from './cooks-on-hand.js';
import { cutOf, limitsOf } from './cut-of.js';
import { standing } from './log-lines.js';

const isoOrNull = (at: EpochS | undefined) => (at === undefined ? null : toIso(at));

/** A forecast as it is kept; one that could not be made says why. */
export function forecastView(done: Result<DoneInShort, CookRefusal>, now: EpochS): CookForecast {
  const nothing = { p10At: null, p50At: null, p90At: null, p95At: null, neverFrac: 0, phase: 'warming' as const, coreC: null, wrapAt: null, hotYieldFrac: null };
  if (!done.ok) return { ...nothing, madeAt: toIso(now), problem: done.refusal.code };
  const { p10At, p50At, p90At, p95At, neverFrac, phase, coreC, wrapAt, hotYieldFrac } = done.value;
  return {
    madeAt: toIso(now), p10At: isoOrNull(p10At), p50At: isoOrNull(p50At), p90At: isoOrNull(p90At), p95At: isoOrNull(p95At), neverFrac, phase, coreC: coreC ?? null, wrapAt: isoOrNull(wrapAt), hotYieldFrac,
    problem: p50At === undefined ? 'not-in-this-heat' : null,
  };
}

/** Each limit that a cook's record can be held against, as the yard has set them; nothing for a cook of an unknown cut. */
export function findingsFor(hand: CookOnHand, limits: FoodLimits, done: DoneInShort | undefined, now: EpochS): readonly Answered[] {
  const { cook, cut, log, pitAir } = hand;
  if (!cut || cook.onAt === null) return [];
  const lines = standing(log);
  const record: CookRecord = {
    cut: cutOf(cut), pieceKg: cook.weightKg / cook.pieces, onAt: fromIso(cook.onAt), ...(cook.offAt !== null && { offAt: fromIso(cook.offAt) }), pitAir,
    temps: lines.flatMap(({ kind, at, stage, tempC }) => (kind === 'reading' && stage !== null && tempC !== null ? [{ at, stage, tempC }] : [])),
    actions: lines.flatMap(({ at, action, limit }) => (action !== null && limit !== null ? [{ at, action, limit }] : [])),
    ...(done?.upperAt !== undefined && cook.offAt === null && { upperAt: done.upperAt }),
  };
  return findingsOf(limitsOf(limits), record, now, limits.probeErrorK);
}

/** A finding as it travels. */
export const findingShown = ({ limit, code, edition, section, outcome, measured, required, runsOutAt, remedies, answered }: Answered): FindingView => ({
  limit, code, edition, section, outcome, measured: measured ?? null, required, runsOutAt: isoOrNull(runsOutAt), remedies: [...remedies], answered,
});
