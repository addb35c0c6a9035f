import type { AdviceChoiceView, AdviceView } from '@stokehold/domain/contract';
import { airOrders, type AdviceSaying } from './advice-sentence.js';

/** One choice beside the others: what it is, and what it would do. */
export interface ChoiceSaid {
  readonly key: string;
  readonly isAdvice: boolean;
  readonly what: string;
  readonly brings: string;
}

/** From here on the share of courses in which the bed is lost is worth a word. */
const RISK_SAID_FRAC = 0.01;

/** The advice itself and every other choice, each with what it would bring; empty where the pencil spoke. */
export function choicesSaid(advice: AdviceView, saying: AdviceSaying): readonly ChoiceSaid[] {
  const all = [...(advice.expects ? [{ choice: advice.expects, isAdvice: true }] : []), ...advice.alternatives.map((choice) => ({ choice, isAdvice: false }))];
  if (advice.alternatives.length === 0) return [];
  return all.map(({ choice, isAdvice }, nth) => ({ key: `${choice.action}${nth}`, isAdvice, what: whatOf(choice, saying), brings: bringsOf(choice, saying) }));
}

function whatOf({ action, air }: AdviceChoiceView, { say, fire }: AdviceSaying): string {
  const orders = air && airOrders(air, fire);
  return [orders?.first, say(`do.${action}`), ...(orders?.then ?? [])].filter(Boolean).join(' ');
}

function bringsOf(choice: AdviceChoiceView, { say, figures, nowMs }: AdviceSaying): string {
  const { leavesBandAt, inBandMin, woodKg, bedLostRiskFrac, lookAgainAt } = choice;
  const band = leavesBandAt === null ? say('choice.holds') : Date.parse(leavesBandAt) <= nowMs ? say('choice.outNow') : say('choice.leaves', { time: figures.time(leavesBandAt) });
  return [
    band,
    inBandMin !== null && say('choice.inBand', { count: Math.round(inBandMin) }),
    woodKg !== null && say('choice.wood', { mass: figures.of('mass', woodKg) }),
    bedLostRiskFrac >= RISK_SAID_FRAC && say('choice.bedRisk', { percent: figures.percent(bedLostRiskFrac) }),
    say('choice.next', { time: figures.time(lookAgainAt) }),
  ].filter(Boolean).join(' · ');
}
