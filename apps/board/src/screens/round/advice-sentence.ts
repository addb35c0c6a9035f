import type { AdviceView, AirAdviceView } from '@stokehold/domain/contract';
import type { Figures } from '../../units/figures.js';
import type { SayFireWords } from '../../words/fire.js';
import type { SayRoundWords } from '../../words/round.js';

/** What a sentence is said with. */
export interface AdviceSaying {
  readonly say: SayRoundWords;
  readonly fire: SayFireWords;
  readonly figures: Figures;
  readonly nowMs: number;
}

export interface AdviceSentence {
  /** What to do, in one short sentence. */
  readonly order: string;
  /** Why, and what the other way would bring. */
  readonly reason: string;
}

const ADDS_WOOD: readonly AdviceView['action'][] = ['one', 'two', 'one-thin', 'one-thick', 'two-thin', 'offcut', 'two-offcuts'];

/** Said where it is a reason: the other way leaves the band in time to come, and sooner than this one. */
function comparison(advice: AdviceView, say: SayRoundWords, figures: Figures, nowMs: number): string | undefined {
  const { otherwise, leavesBandAt } = advice;
  if (!otherwise?.leavesBandAt || Date.parse(otherwise.leavesBandAt) <= nowMs) return undefined;
  if (leavesBandAt && figures.time(leavesBandAt) === figures.time(otherwise.leavesBandAt)) return undefined;
  if (leavesBandAt && Date.parse(leavesBandAt) < Date.parse(otherwise.leavesBandAt)) return undefined;
  const other = say(`other.${otherwise.action}`, { time: figures.time(otherwise.leavesBandAt) });
  return `${other}; ${leavesBandAt ? say('leavesToo', { time: figures.time(leavesBandAt) }) : say('holds')}`;
}

/** What to do about the air, in the order in which hands do it: the screen goes up before anything else. */
export function airOrders({ set, changes }: AirAdviceView, say: SayFireWords): { readonly first: string | undefined; readonly then: readonly string[] } {
  return {
    first: changes.includes('screen') && set.screen ? say('set.screen.up') : undefined,
    then: [
      ...(changes.includes('door') ? [say(`set.door.${set.door}`)] : []),
      ...(changes.includes('damper') ? [say(`set.damper.${set.damper}`)] : []),
      ...(changes.includes('screen') && !set.screen ? [say('set.screen.away')] : []),
    ],
  };
}

/** The machine's advice as a person says it across a fire. */
export function adviceSentence(advice: AdviceView, { say, fire, figures, nowMs }: AdviceSaying): AdviceSentence {
  const { bedKg, fullBedKg, tempC, splitLeftFrac, code } = advice.reason;
  const why = say(`why.${code}`, {
    bed: figures.bare('mass', bedKg),
    full: figures.of('mass', fullBedKg),
    temp: figures.of('temp', tempC),
    left: figures.percent(splitLeftFrac),
  });
  const air = advice.air && airOrders(advice.air, fire);
  const sentences = [
    why,
    comparison(advice, say, figures, nowMs),
    advice.air && fire(`air.${advice.air.reason}`, { time: figures.time(advice.lookAgainAt) }),
    advice.freshOnDoorSide && ADDS_WOOD.includes(advice.action) ? say('doorSide') : undefined,
    advice.action === 'rake' && !advice.air ? say('lookAgain', { time: figures.time(advice.lookAgainAt) }) : undefined,
    advice.source === 'pencil-rule' ? say('byRule') : undefined,
  ];
  const order = [air?.first, say(`do.${advice.action}`), ...(air?.then ?? [])].filter(Boolean).join(' ');
  return { order, reason: sentences.filter(Boolean).join(' ') };
}
