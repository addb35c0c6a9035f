import type { AdviceView, DueView, FireView } from '@stokehold/domain/contract';
import type { Advice, Due, FireEstimate, FireForecast } from '@stokehold/domain/fire';
import { clamp, type EpochS, fromIso, later, toIso } from '@stokehold/domain/quantity';

/** A hundredth of a degree is finer than any screen or gauge; it keeps rows and messages short. */
const short = (value: number) => Math.round(value * 100) / 100;
const isoOf = (at: EpochS | undefined) => (at === undefined ? null : toIso(at));

const fanOf = ({ from, stepS, chamberTempC }: FireForecast): FireView['forecast'] => ({
  from: toIso(from),
  stepS,
  p10: chamberTempC.p10.map(short),
  p50: chamberTempC.p50.map(short),
  p90: chamberTempC.p90.map(short),
});

/** What is believed, with the fan of the last forecast. */
export const fireViewOf = (estimate: FireEstimate, fan: FireForecast | FireView['forecast']): FireView => ({
  at: toIso(estimate.at),
  mode: estimate.mode,
  bed: estimate.bedGrade,
  bedKg: estimate.glowingBedKg,
  fullBedKg: estimate.fullBedKg,
  splitsBurning: estimate.splitsBurning,
  splitLeftFrac: clamp(estimate.splitLeftFrac, 0, 1),
  zoneTempC: estimate.zoneTempC.map(short),
  chamberTempC: { p10: short(estimate.chamberTempC.p10), p50: short(estimate.chamberTempC.p50), p90: short(estimate.chamberTempC.p90) },
  bedLostRiskFrac: clamp(estimate.bedLostRiskFrac, 0, 1),
  dryKgPerS: estimate.dryKgPerS,
  forecast: 'chamberTempC' in fan ? fanOf(fan) : fan,
});

export const dueViewOf = ({ earliestAt, dueAt, latestSafeAt, why }: Due): DueView => ({
  earliestAt: toIso(earliestAt), dueAt: toIso(dueAt), latestSafeAt: toIso(latestSafeAt), why,
});
export const dueFromView = ({ earliestAt, dueAt, latestSafeAt, why }: DueView): Due => ({
  earliestAt: fromIso(earliestAt), dueAt: fromIso(dueAt), latestSafeAt: fromIso(latestSafeAt), why,
});

/** The advice, with the best of the other actions beside it. */
export function adviceViewOf(advice: Advice): AdviceView {
  const other = advice.alternatives.find(({ action }) => action !== advice.action);
  return {
    madeAt: toIso(advice.madeAt),
    action: advice.action,
    lookAgainAt: toIso(later(advice.madeAt, advice.lookAgainS)),
    freshOnDoorSide: advice.layFreshOnDoorSide,
    reason: { ...advice.reason, splitLeftFrac: clamp(advice.reason.splitLeftFrac, 0, 1) },
    leavesBandAt: isoOf(advice.leavesBandAt),
    otherwise: other ? { action: other.action, leavesBandAt: isoOf(other.leavesBandAt) } : null,
    source: advice.source,
  };
}
