import type { EpochS } from '../quantity/index.js';
import type { Cut } from './cut.js';
import { fToC, instantOf, longestAtOrAboveS, stretchesAtOrAbove, timeBetweenS, valueAt } from './history.js';
import type { CookingKind, CookingLimit, Finding, FoodTemp, LimitSet, Outcome, Printed, Remedy } from './limits/limit.js';

/** Falling by more than this before the limit is met is heading the wrong way, K. Source: our choice. */
const FALLEN_K = 2;
/** Nearer than this to running out is a risk, s. Source: our choice. */
const SHORTLY_S = 1800;

/** What a finding says beside which limit it is. */
export type Said = Pick<Finding, 'outcome' | 'required'> & { readonly measured?: Finding['measured'] | undefined; readonly runsOutAt?: EpochS | undefined; readonly remedies?: readonly Remedy[] };

/** A finding of one limit of a set. Source: none needed. */
export function findingOf(set: Pick<LimitSet, 'code' | 'edition'>, limit: Finding['limit'], { section, from }: Pick<Printed, 'section' | 'from'>, said: Said): Finding {
  const { measured, runsOutAt, remedies, ...rest } = said;
  const { code, edition } = from ?? set;
  return {
    limit, code, edition, section, ...rest, ...(measured && { measured }), ...(runsOutAt !== undefined && { runsOutAt }), remedies: remedies ?? [], shelvable: false,
  };
}

/** Findings that call for somebody: missed, or about to be. The oven of a roast is a matter of the plan, not of a hand now. Source: our choice. */
export const callsForHands = ({ limit, outcome }: Finding): boolean => limit !== 'roast-oven' && (outcome === 'missed' || outcome === 'at-risk');

/** Which rows of a food code a cut is cooked by; a whole roast of beef, pork or lamb by the roast chart. [FDA-FC22] 3-401.11 */
export const cookingKindOf = ({ meat, state }: Pick<Cut, 'meat' | 'state'>): CookingKind => (meat === 'poultry' ? 'poultry' : state === 'intact' ? 'roast' : 'ground');

/** The row that a record has come furthest with: met when its time is there in one piece. */
function bestRow(line: readonly FoodTemp[], limit: CookingLimit, probeErrorK: number) {
  const tried = limit.rows.map((row) => {
    const tempC = fToC(row.tempF);
    const longestS = longestAtOrAboveS(line, tempC + probeErrorK);
    return { tempC, holdS: row.holdS, longestS: longestS ?? 0, met: longestS !== undefined && longestS >= row.holdS, share: longestS === undefined ? -1 : longestS / Math.max(1, row.holdS) };
  });
  return [...tried].reverse().find(({ met }) => met) ?? tried.reduce((best, row) => (row.share > best.share ? row : best));
}

/**
 * A record of the coldest part held against the rows of a cooking limit: one row in full is enough, its time in one piece, straight
 * between readings. Hold time may include the rise after the pit.
 *
 * [FDA-FC22] 3-401.11; endpoint missed: another row of the same table counts, [FSIS-A21] p. 67. Held to tests/published/food-limits.test.ts
 *
 * @param ask.line         coldest part, in order of time
 * @param ask.probeErrorK  the limit is raised by it, [FSIS-A21] p. 20; absent: 0
 * @param ask.over         nothing more will be measured: it is off and cools
 */
export function judgeCooking(set: LimitSet, kind: CookingKind, ask: { readonly line: readonly FoodTemp[]; readonly probeErrorK?: number; readonly over: boolean }): Finding {
  const limit = set.cooking[kind];
  const { line, over, probeErrorK = 0 } = ask;
  const best = bestRow(line, limit, probeErrorK);
  const required = { tempC: best.tempC, durationS: best.holdS };
  const hottest = Math.max(...line.map(({ tempC }) => tempC));
  if (line.length === 0) return findingOf(set, 'cooking', limit, { outcome: 'not-measured', required, remedies: ['measure-now'] });
  const measured = best.share < 0 ? { tempC: hottest, durationS: 0 } : { tempC: best.tempC, durationS: best.longestS };
  const falling = hottest - line.at(-1)!.tempC > FALLEN_K;
  const outcome: Outcome = best.met ? 'met' : over ? 'missed' : falling ? 'at-risk' : 'open';
  return findingOf(set, 'cooking', limit, { outcome, required, measured, remedies: outcome === 'missed' ? ['recook', 'discard'] : outcome === 'at-risk' ? ['raise-heat', 'keep-cooking'] : [] });
}

/** When a record first met one of the rows, s since 1970; undefined while it has not. */
function lethalFromS(line: readonly FoodTemp[], limit: CookingLimit): number | undefined {
  const times = limit.rows.flatMap(({ tempF, holdS }) => stretchesAtOrAbove(line, fToC(tempF)).filter(({ fromS, toS }) => toS - fromS >= holdS).map(({ fromS }) => fromS + holdS));
  return times.length === 0 ? undefined : Math.min(...times);
}

/**
 * Come-up: all time between the two temperatures until a cooking row is met adds up; a slump adds to it.
 *
 * [FSIS-A21] p. 24 and 25: 50 to 130 °F in 6 h or less; over it the tables may be used with a stated risk (p. 48). Held to tests/published/food-limits.test.ts
 *
 * @param ask.line      the part that is judged, from going on
 * @param ask.upperAt   when a forecast has it past the upper temperature, nine times in ten; absent: not known
 */
export function judgeComeUp(set: LimitSet, kind: CookingKind, ask: { readonly line: readonly FoodTemp[]; readonly now: EpochS; readonly upperAt?: EpochS }): Finding {
  const { fromF, toF, withinS } = set.comeUp;
  const [fromC, toC] = [fToC(fromF), fToC(toF)];
  const required = { tempC: toC, durationS: withinS };
  const { line, now, upperAt } = ask;
  const last = line.at(-1);
  if (!last) return findingOf(set, 'come-up', set.comeUp, { outcome: 'not-measured', required, remedies: ['measure-now'] });
  const lethalS = lethalFromS(line, set.cooking[kind]);
  const until = lethalS === undefined ? line : line.filter(({ at }) => at <= lethalS);
  const within = last.tempC >= fromC && last.tempC < toC && lethalS === undefined;
  const spentS = timeBetweenS(until, fromC, toC) + (within ? Math.max(0, now - last.at) : 0);
  const measured = { tempC: last.tempC, durationS: spentS };
  const through = line.some(({ tempC }) => tempC >= toC);
  if (spentS > withinS) return findingOf(set, 'come-up', set.comeUp, { outcome: 'missed', required, measured, remedies: ['keep-cooking', 'ask-process-authority'] });
  if (!within) return findingOf(set, 'come-up', set.comeUp, { outcome: through || lethalS !== undefined ? 'met' : 'open', required, measured });
  const runsOutAt = instantOf(now + withinS - spentS);
  const risky = upperAt === undefined ? runsOutAt - now < SHORTLY_S : upperAt > runsOutAt;
  return findingOf(set, 'come-up', set.comeUp, { outcome: risky ? 'at-risk' : 'open', required, measured, runsOutAt, remedies: risky ? ['raise-heat'] : [] });
}

/**
 * The oven that goes with a roast's chart: a pit is a convection oven of dry heat. Below the row for its weight the chart alone does not
 * meet the section; [FDA-FC22] 3-401.11(B)(1).
 *
 * @param ask.line  the pit's air while the roast lay in it
 */
export function judgeRoastOven(set: LimitSet, ask: { readonly line: readonly FoodTemp[]; readonly pieceKg: number }): Finding {
  const row = set.roastOvens.rows.find(({ oven, belowKg }) => oven === 'convection' && (belowKg === undefined || ask.pieceKg < belowKg))!;
  const required = { tempC: fToC(row.atLeastF ?? 0), durationS: 0 };
  const first = ask.line[0];
  if (!first) return findingOf(set, 'roast-oven', set.roastOvens, { outcome: 'not-measured', required, remedies: ['measure-now'] });
  const hottestC = Math.max(...ask.line.map(({ tempC }) => tempC));
  const met = hottestC >= required.tempC;
  const measured = { tempC: hottestC, durationS: longestAtOrAboveS(ask.line, required.tempC) ?? 0 };
  return findingOf(set, 'roast-oven', set.roastOvens, { outcome: met ? 'met' : 'missed', required, measured, remedies: met ? [] : ['ask-process-authority'] });
}

/**
 * Reheating for hot holding: from the cold temperature to the hot one within its time, there for its hold. [FDA-FC22] 3-403.11(A), (D)
 *
 * @param ask.line  coldest part from the start of reheating
 */
export function judgeReheat(set: LimitSet, ask: { readonly line: readonly FoodTemp[]; readonly now: EpochS; readonly probeErrorK?: number }): Finding {
  const { tempF, holdS, withinS } = set.reheat;
  const tempC = fToC(tempF) + (ask.probeErrorK ?? 0);
  const required = { tempC: fToC(tempF), durationS: holdS };
  const [first, last] = [ask.line[0], ask.line.at(-1)];
  if (!first || !last) return findingOf(set, 'reheat', set.reheat, { outcome: 'not-measured', required, remedies: ['measure-now'] });
  const deadlineS = first.at + withinS;
  const runsOutAt = instantOf(deadlineS);
  const held = stretchesAtOrAbove(ask.line, tempC).find(({ fromS, toS }) => toS - fromS >= holdS);
  const measured = { tempC: last.tempC, durationS: (held ? held.fromS : Math.max(last.at, ask.now)) - first.at };
  if (held && held.fromS <= deadlineS) return findingOf(set, 'reheat', set.reheat, { outcome: 'met', required, measured });
  if (held || ask.now > deadlineS) return findingOf(set, 'reheat', set.reheat, { outcome: 'missed', required, measured, runsOutAt, remedies: ['discard'] });
  const halfHourAgo = valueAt(ask.line, Math.max(first.at, last.at - SHORTLY_S) as EpochS) ?? first.tempC;
  const perS = last.at > first.at ? (last.tempC - halfHourAgo) / Math.min(SHORTLY_S, last.at - first.at) : 0;
  const reachesS = perS > 0 ? last.at + (tempC - last.tempC) / perS + holdS : Infinity;
  const risky = last.at > first.at ? reachesS > deadlineS : deadlineS - ask.now < SHORTLY_S;
  return findingOf(set, 'reheat', set.reheat, { outcome: risky ? 'at-risk' : 'open', required, measured, runsOutAt, remedies: risky ? ['raise-heat', 'cut-smaller', 'serve-now'] : [] });
}
