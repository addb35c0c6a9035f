import type { EpochS } from '../quantity/index.js';
import { fallsAfterS, fToC, instantOf, lastFallS, longestAtOrAboveS, timeBetweenS } from './history.js';
import { findingOf } from './judge-cooking.js';
import type { CoolingLimit, CoolingStage, Finding, FoodTemp, LimitSet, Remedy } from './limits/limit.js';

/** A crossing of the limit that is nearer than this is a risk, s. Source: our choice. */
const SHORTLY_S = 1800;
/** Readings must span this before a course is read from them, s. Source: our choice. */
const COURSE_S = 600;
/** A stage that was not read for this share of its time is a risk whatever its course said: what is left is still enough to act. Source: our choice. */
const UNREAD_FRAC = 0.5;

/** What can be done while a stage runs: first the quickest way to lose heat. Source: [FDA-FC22] 3-501.15, in kind. */
const COOL_FASTER: readonly Remedy[] = ['cut-smaller', 'ice-bath', 'shallow-pans', 'move-to-colder', 'reheat-to-limit'];

interface CoolingAsk {
  /** Warmest part, in order of time. */
  readonly line: readonly FoodTemp[];
  readonly now: EpochS;
  /** Air or water that it cools in; absent: 3 °C. */
  readonly aroundC?: number;
}

/** One stage: begun when the line came down through its upper end, or with the first reading when that is below already. */
function judgeStage(set: Pick<LimitSet, 'code' | 'edition'>, limit: CoolingLimit, stage: CoolingStage, { line, now, aroundC = 3 }: CoolingAsk): Finding {
  const [fromC, toC] = [fToC(stage.fromF), fToC(stage.toF)];
  const required = { tempC: toC, durationS: stage.withinS };
  const [first, last] = [line[0], line.at(-1)];
  const say = (said: Omit<Parameters<typeof findingOf>[3], 'required'>) => findingOf(set, 'cooling', limit, { ...said, required });
  if (!first || !last) return say({ outcome: 'not-measured', remedies: ['measure-now'] });
  const fellS = lastFallS(line, fromC);
  const startS = fellS ?? (last.tempC <= fromC ? first.at : undefined);
  if (startS === undefined) return say({ outcome: 'open', measured: { tempC: last.tempC, durationS: 0 } });
  const runsOutAt = instantOf(startS + stage.withinS);
  const crossS = lastFallS(line, toC) ?? (last.tempC <= toC ? first.at : undefined);
  const measured = { tempC: crossS === undefined ? last.tempC : toC, durationS: (crossS ?? Math.max(now, last.at)) - startS };
  if (crossS !== undefined && measured.durationS <= stage.withinS) return say({ outcome: 'met', measured });
  if (measured.durationS > stage.withinS) return say({ outcome: 'missed', measured, runsOutAt, remedies: ['discard', 'ask-process-authority'] });
  const leftS = fallsAfterS(line, aroundC, toC);
  const hasCourse = last.at - first.at >= COURSE_S;
  const late = leftS === undefined ? hasCourse : last.at + leftS > startS + stage.withinS;
  const unread = now - Math.max(last.at, startS) >= UNREAD_FRAC * stage.withinS;
  const risky = late || unread || startS + stage.withinS - now < SHORTLY_S / 2;
  return say({ outcome: risky ? 'at-risk' : 'open', measured, runsOutAt, remedies: !risky ? [] : unread ? ['measure-now', ...COOL_FASTER] : COOL_FASTER });
}

/**
 * Cooling, a finding a stage: how long it took or has taken, and, while it runs, whether its course gets there in time.
 *
 * [FDA-FC22] 3-501.14: both stages count from 135 °F; [FSIS-B21]: each from its own upper end. Held to tests/published/food-limits.test.ts
 */
export const judgeCooling = (set: Pick<LimitSet, 'code' | 'edition' | 'cooling'>, ask: CoolingAsk): readonly Finding[] =>
  set.cooling.stages.map((stage) => judgeStage(set, set.cooling, stage, ask));

/**
 * Hot holding: the coldest part never below the limit; a roast that was cooked by the roast chart has its own. [FDA-FC22] 3-501.16(A)(1)
 *
 * @param ask.line      coldest part since it came off or was reheated
 * @param ask.aroundC   where it stands; absent: 21 °C
 */
export function judgeHotHold(
  set: LimitSet, ask: { readonly line: readonly FoodTemp[]; readonly roast: boolean; readonly aroundC?: number; readonly probeErrorK?: number },
): Finding {
  const limit = ask.roast ? set.hotHoldRoast : set.hotHold;
  const limitC = fToC(limit.tempF);
  const tempC = limitC + (ask.probeErrorK ?? 0);
  const last = ask.line.at(-1);
  if (!last) return findingOf(set, 'hot-hold', limit, { outcome: 'not-measured', required: { tempC: limitC, durationS: 0 }, remedies: ['measure-now'] });
  const lowestC = Math.min(...ask.line.map((temp) => temp.tempC));
  const required = { tempC: limitC, durationS: 0 };
  const belowS = timeBetweenS(ask.line, -273, tempC);
  if (lowestC < tempC) return findingOf(set, 'hot-hold', limit, { outcome: 'missed', required, measured: { tempC: lowestC, durationS: belowS }, remedies: ['reheat-to-limit', 'discard'] });
  const measured = { tempC: lowestC, durationS: longestAtOrAboveS(ask.line, tempC) ?? 0 };
  const leftS = fallsAfterS(ask.line, ask.aroundC ?? 21, tempC);
  const risky = leftS !== undefined && leftS < SHORTLY_S;
  const runsOutAt = risky ? instantOf(last.at + leftS) : undefined;
  return findingOf(set, 'hot-hold', limit, { outcome: risky ? 'at-risk' : 'met', required, measured, runsOutAt, remedies: risky ? ['raise-heat', 'serve-hot'] : [] });
}

/** Cold holding: the warmest part never above the limit. [FDA-FC22] 3-501.16(A)(2) @param ask.line warmest part */
export function judgeColdHold(set: LimitSet, ask: { readonly line: readonly FoodTemp[]; readonly probeErrorK?: number }): Finding {
  const required = { tempC: fToC(set.coldHold.tempF), durationS: 0 };
  const tempC = required.tempC - (ask.probeErrorK ?? 0);
  if (ask.line.length === 0) return findingOf(set, 'cold-hold', set.coldHold, { outcome: 'not-measured', required, remedies: ['measure-now'] });
  const highestC = Math.max(...ask.line.map((temp) => temp.tempC));
  const measured = { tempC: highestC, durationS: timeBetweenS(ask.line, tempC, 300) };
  const missed = highestC > tempC;
  return findingOf(set, 'cold-hold', set.coldHold, { outcome: missed ? 'missed' : 'met', required, measured, remedies: missed ? ['move-to-colder', 'serve-now', 'discard'] : [] });
}

/**
 * Time in place of temperature: food out of control since an instant, served or discarded within the time, marked. Hot or cold at the start;
 * the longer time only for cold food that stays cool. [FDA-FC22] 3-501.19
 *
 * @param ask.kind      'four-hours' or 'six-hours-cold'
 * @param ask.startC    its temperature when it left control
 * @param ask.warmestC  warmest part since then; needed for six hours
 * @param ask.goneAt    when the last of it was served or discarded
 */
export function judgeTimeControl(
  set: LimitSet, ask: { readonly kind: 'four-hours' | 'six-hours-cold'; readonly leftControlAt: EpochS; readonly startC: number; readonly warmestC?: number; readonly goneAt?: EpochS; readonly now: EpochS },
): Finding {
  const limit = ask.kind === 'four-hours' ? set.timeControl : set.timeControlCold;
  const required = { tempC: fToC(limit.warmestF ?? limit.startsColdF), durationS: limit.withinS };
  const untilS = (ask.goneAt ?? ask.now) - ask.leftControlAt;
  const measured = { tempC: ask.warmestC ?? ask.startC, durationS: untilS };
  const runsOutAt = instantOf(ask.leftControlAt + limit.withinS);
  const begunRight = ask.startC <= fToC(limit.startsColdF) || (limit.startsHotF !== undefined && ask.startC >= fToC(limit.startsHotF));
  const tooWarm = limit.warmestF !== undefined && ask.warmestC !== undefined && ask.warmestC > fToC(limit.warmestF);
  const say = (outcome: Finding['outcome'], remedies: readonly Remedy[] = []) => findingOf(set, 'time-control', limit, { outcome, required, measured, runsOutAt, remedies });
  if (!begunRight || tooWarm || untilS > limit.withinS) return say('missed', ['discard']);
  if (ask.goneAt !== undefined) return say('met');
  if (limit.warmestF !== undefined && ask.warmestC === undefined) return say('not-measured', ['measure-now']);
  return untilS > limit.withinS - SHORTLY_S ? say('at-risk', ['serve-now', 'discard']) : say('open');
}
