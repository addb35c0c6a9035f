import type { EpochS } from '../quantity/index.js';
import type { Cut } from './cut.js';
import { inOrder, worstOf } from './history.js';
import { callsForHands, cookingKindOf, judgeComeUp, judgeCooking, judgeReheat, judgeRoastOven } from './judge-cooking.js';
import { judgeColdHold, judgeCooling, judgeHotHold, judgeTimeControl } from './judge-keeping.js';
import type { Finding, FoodTemp, LimitName, LimitSet, Remedy } from './limits/limit.js';

/** What food is doing when its temperature is read; `out`: out of control, by time alone. */
export type Stage = 'cooking' | 'holding' | 'cooling' | 'cold' | 'reheating' | 'out';

/** All that is on record of one cook. */
export interface CookRecord {
  readonly cut: Cut;
  readonly pieceKg: number;
  readonly onAt: EpochS;
  readonly offAt?: EpochS;
  /** In any order; of several pieces or probes at one time the worst counts. */
  readonly temps: readonly (FoodTemp & { readonly stage: Stage })[];
  readonly actions: readonly { readonly at: EpochS; readonly limit: LimitName; readonly action: Remedy }[];
  /** The pit's air where it lay. */
  readonly pitAir: readonly FoodTemp[];
  /** When a forecast has the core past the come-up's upper temperature, nine times in ten. */
  readonly upperAt?: EpochS;
  /** Where it cools or stands, °C. */
  readonly chillerC?: number;
}

/** Actions after which a missed limit asks for nobody any more: somebody has dealt with the food. One that is only at risk ends with the food itself. Source: our choice. */
const GONE: readonly Remedy[] = ['discard', 'recook'];
const SETTLED: readonly Remedy[] = ['discard', 'recook', 'reheat-to-limit', 'ask-process-authority'];

/** A finding, and whether a line of the log says that it was dealt with since. */
export interface Answered extends Finding {
  readonly answered: boolean;
}

/**
 * Every limit that a cook's record can be held against, in the order of its way: cooked, come up, oven, held, cooled, cold, reheated, out
 * of control. A stage that nothing was read of is left out, but cooking, which says that it was not measured.
 *
 * Source: limits/, judge-cooking.ts, judge-keeping.ts. Held to findings.test.ts
 */
export function findingsOf(set: LimitSet, record: CookRecord, now: EpochS, probeErrorK = 0): readonly Answered[] {
  const line = (stage: Stage, which: 'coldest' | 'warmest') => worstLine(record, stage, which);
  const kind = cookingKindOf(record.cut);
  const cooking = line('cooking', 'coldest');
  const over = record.offAt !== undefined && record.temps.some(({ stage, at }) => stage !== 'cooking' && at >= record.offAt!);
  const cooked = judgeCooking(set, kind, { line: cooking, probeErrorK, over: over || (record.offAt !== undefined && now - record.offAt > AFTER_OFF_S) });
  const comeUp = cooking.length > 0 ? [judgeComeUp(set, kind, { line: cooking, now: record.offAt ?? now, ...(record.upperAt !== undefined && { upperAt: record.upperAt }) })] : [];
  const oven = kind === 'roast' && record.offAt !== undefined ? [judgeRoastOven(set, { line: inOrder(record.pitAir), pieceKg: record.pieceKg })] : [];
  const all = [cooked, ...comeUp, ...oven, ...kept(set, record, now, probeErrorK, line)];
  return all.map((finding) => ({ ...finding, answered: isAnswered(finding, record) }));
}

/** The rise after the pit counts for so long before a record of cooking is closed, s. Source: our choice. */
const AFTER_OFF_S = 3600;

function kept(set: LimitSet, record: CookRecord, now: EpochS, probeErrorK: number, line: (stage: Stage, which: 'coldest' | 'warmest') => readonly FoodTemp[]): readonly Finding[] {
  const [holding, cooling, cold, reheating, out] = [line('holding', 'coldest'), line('cooling', 'warmest'), line('cold', 'warmest'), line('reheating', 'coldest'), line('out', 'warmest')];
  const roast = cookingKindOf(record.cut) === 'roast';
  const gone = record.actions.find(({ limit, action }) => limit === 'time-control' && (action === 'discard' || action === 'serve-now'));
  const first = out[0];
  return [
    ...(holding.length > 0 ? [judgeHotHold(set, { line: holding, roast, probeErrorK })] : []),
    ...(cooling.length > 0 ? judgeCooling(set, { line: cooling, now: cold[0]?.at ?? now, ...(record.chillerC !== undefined && { aroundC: record.chillerC }) }) : []),
    ...(cold.length > 0 ? [judgeColdHold(set, { line: cold, probeErrorK })] : []),
    ...(reheating.length > 0 ? [judgeReheat(set, { line: reheating, now: holding.find(({ at }) => at >= reheating[0]!.at)?.at ?? now, probeErrorK })] : []),
    ...(first ? [judgeTimeControl(set, { kind: 'four-hours', leftControlAt: first.at, startC: first.tempC, now, ...(gone && { goneAt: gone.at }) })] : []),
  ];
}

/** The worst of what was read in a stage, as one line. */
const worstLine = ({ temps }: CookRecord, stage: Stage, which: 'coldest' | 'warmest'): readonly FoodTemp[] => {
  const own = inOrder(temps.filter((temp) => temp.stage === stage));
  const byInstant = new Map<number, FoodTemp[]>();
  for (const temp of own) byInstant.set(temp.at, [...(byInstant.get(temp.at) ?? []), temp]);
  const pick = (same: readonly FoodTemp[]) => worstOf(same.map((temp) => [temp]), which)[0]!;
  return [...byInstant.values()].map(pick);
};

const isAnswered = (finding: Finding, { actions, temps }: CookRecord): boolean => {
  const ends = finding.outcome === 'missed' ? SETTLED : finding.outcome === 'at-risk' ? GONE : [];
  const done = actions.filter(({ limit, action }) => limit === finding.limit && ends.includes(action));
  return done.some(({ at }) => temps.every((temp) => temp.at <= at || temp.stage === 'reheating' || temp.stage === 'cooking'));
};

/** Limits that call for somebody now: missed and not dealt with, or about to be missed. Source: judge-cooking.ts. */
export const callingLimits = (findings: readonly Answered[]): readonly LimitName[] => [...new Set(findings.filter((finding) => callsForHands(finding) && !finding.answered).map(({ limit }) => limit))];
