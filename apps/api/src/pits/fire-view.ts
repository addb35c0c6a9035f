import type { AdviceChoiceView, AdviceView, AirAdviceView, AirSetView, DueView, FireTroubleView, FireView } from '@stokehold/domain/contract';
import type { Advice, AdviceChoice, AirAdvice, Due, FireEstimate, FireForecast, FireTrouble } from '@stokehold/domain/fire';
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

/** The same with its instants as the contract writes them. */
const troubleOf = (trouble: FireTrouble) =>
  ({ ...trouble, ...('at' in trouble && { at: toIso(trouble.at) }), ...('since' in trouble && { since: toIso(trouble.since) }) }) as FireTroubleView;

/** What stands around an estimate: how the air was left, what may be wrong, the fan of the last forecast. */
export interface AroundEstimate {
  readonly air: AirSetView;
  readonly troubles: readonly FireTrouble[];
  readonly fan: FireForecast | FireView['forecast'];
}

/** What is believed, with the fan of the last forecast. */
export const fireViewOf = (estimate: FireEstimate, { air, troubles, fan }: AroundEstimate): FireView => ({
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
  air,
  troubles: troubles.map(troubleOf),
  forecast: 'chamberTempC' in fan ? fanOf(fan) : fan,
});

export const dueViewOf = ({ earliestAt, dueAt, latestSafeAt, why }: Due): DueView => ({
  earliestAt: toIso(earliestAt), dueAt: toIso(dueAt), latestSafeAt: toIso(latestSafeAt), why,
});
export const dueFromView = ({ earliestAt, dueAt, latestSafeAt, why }: DueView): Due => ({
  earliestAt: fromIso(earliestAt), dueAt: fromIso(dueAt), latestSafeAt: fromIso(latestSafeAt), why,
});

const airOf = ({ set, changes, reason }: AirAdvice): AirAdviceView => ({ set, changes: [...changes], reason });
const choiceOf = (choice: AdviceChoice, madeAt: EpochS): AdviceChoiceView => ({
  action: choice.action,
  air: choice.air ? airOf(choice.air) : null,
  lookAgainAt: toIso(later(madeAt, choice.lookAgainS)),
  leavesBandAt: isoOf(choice.leavesBandAt),
  outOfBandKMin: short(choice.outOfBandKMin),
  inBandMin: choice.inBandMin === undefined ? null : short(choice.inBandMin),
  woodKg: choice.woodKg === undefined ? null : short(choice.woodKg),
  bedLostRiskFrac: clamp(choice.bedLostRiskFrac, 0, 1),
});

/** The advice, with the best of the other actions beside it. */
export function adviceViewOf(advice: Advice): AdviceView {
  const other = advice.alternatives.find(({ action }) => action !== advice.action);
  return {
    madeAt: toIso(advice.madeAt),
    action: advice.action,
    air: advice.air ? airOf(advice.air) : null,
    lookAgainAt: toIso(later(advice.madeAt, advice.lookAgainS)),
    freshOnDoorSide: advice.layFreshOnDoorSide,
    reason: { ...advice.reason, splitLeftFrac: clamp(advice.reason.splitLeftFrac, 0, 1) },
    leavesBandAt: isoOf(advice.leavesBandAt),
    otherwise: other ? { action: other.action, leavesBandAt: isoOf(other.leavesBandAt) } : null,
    expects: advice.expects ? choiceOf(advice.expects, advice.madeAt) : null,
    alternatives: advice.alternatives.map((choice) => choiceOf(choice, advice.madeAt)),
    source: advice.source,
  };
}
