import type { AdviceView } from '@stokehold/domain/contract';
import type { Figures } from '../../units/figures.js';
import type { SayRoundWords } from '../../words/round.js';

export interface AdviceSentence {
  /** What to do, in one short sentence. */
  readonly order: string;
  /** Why, and what the other way would bring. */
  readonly reason: string;
}

const ADDS_WOOD: readonly AdviceView['action'][] = ['one', 'two', 'one-thin', 'one-thick', 'two-thin'];

/** Said where it is a reason: the other way leaves the band in time to come, and sooner than this one. */
function comparison(advice: AdviceView, say: SayRoundWords, figures: Figures, nowMs: number): string | undefined {
  const { otherwise, leavesBandAt } = advice;
  if (!otherwise?.leavesBandAt || Date.parse(otherwise.leavesBandAt) <= nowMs) return undefined;
  if (leavesBandAt && figures.time(leavesBandAt) === figures.time(otherwise.leavesBandAt)) return undefined;
  if (leavesBandAt && Date.parse(leavesBandAt) < Date.parse(otherwise.leavesBandAt)) return undefined;
  const other = say(`other.${otherwise.action}`, { time: figures.time(otherwise.leavesBandAt) });
  return `${other}; ${leavesBandAt ? say('leavesToo', { time: figures.time(leavesBandAt) }) : say('holds')}`;
}

/** The machine's advice as a person says it across a fire. */
export function adviceSentence(advice: AdviceView, say: SayRoundWords, figures: Figures, nowMs: number): AdviceSentence {
  const { bedKg, fullBedKg, tempC, splitLeftFrac, code } = advice.reason;
  const why = say(`why.${code}`, {
    bed: figures.bare('mass', bedKg),
    full: figures.of('mass', fullBedKg),
    temp: figures.of('temp', tempC),
    left: figures.percent(splitLeftFrac),
  });
  const sentences = [
    why,
    comparison(advice, say, figures, nowMs),
    advice.freshOnDoorSide && ADDS_WOOD.includes(advice.action) ? say('doorSide') : undefined,
    advice.action === 'rake' ? say('lookAgain', { time: figures.time(advice.lookAgainAt) }) : undefined,
    advice.source === 'pencil-rule' ? say('byRule') : undefined,
  ];
  return { order: say(`do.${advice.action}`), reason: sentences.filter(Boolean).join(' ') };
}
