import type { CookPlanView, YardState } from '@stokehold/domain/contract';
import type { Figures } from '../../../units/figures.js';
import type { SayCookPlanWords } from '../../../words/cook-plan.js';

export interface Telling {
  readonly say: SayCookPlanWords;
  readonly figures: Figures;
  readonly state: YardState;
}

export const cutOf = ({ state }: Telling, cookId: string): string => state.cooks.find(({ id }) => id === cookId)?.cut ?? '';
export const pitOf = ({ state }: Telling, pitId: string): string => state.pits.find((view) => view.pit.id === pitId)?.pit.name ?? '';
export const serviceOf = ({ state }: Telling, serviceId: string): string => state.services.find(({ id }) => id === serviceId)?.name ?? '';

/** '$3 more', '$2 less' or 'no dearer'. */
export const moneyLine = ({ say, figures }: Telling, cents: number): string => (cents === 0 ? say('money.same') : say(cents > 0 ? 'money.more' : 'money.less', { money: figures.money(Math.abs(cents)) }));

/** A chance as people read it: below one in a hundred it is not told to be nothing. */
export const chance = (figures: Figures, frac: number): string => (frac > 0 && frac < 0.005 ? `< ${figures.percent(0.01)}` : figures.percent(frac));

export const helpLine = (telling: Telling, { code, cookId, pitId, tempC, onAt, lateFrac, moreCents }: CookPlanView['services'][number]['help'][number]): string =>
  telling.say(`help.${code}`, { cut: cutOf(telling, cookId), pit: pitOf(telling, pitId), temp: telling.figures.degrees(tempC), time: telling.figures.dayTime(onAt), percent: chance(telling.figures, lateFrac), money: moneyLine(telling, moreCents) });

/** Times, wrap, window and reason of one cook, in one line. */
export function startLine({ say, figures }: Telling, one: CookPlanView['starts'][number]): string {
  return [
    say('cook.times', { on: figures.dayTime(one.onAt), off: figures.time(one.offBy), likely: figures.time(one.likelyOffAt) }),
    ...(one.wrapAt ? [say('cook.wrap', { time: figures.time(one.wrapAt) })] : []),
    say('cook.window', { from: figures.time(one.offNotBefore), until: figures.time(one.offNotAfter) }),
    ...(one.keptTooLongS > 0 ? [say('cook.kept', { span: figures.span(one.keptTooLongS) })] : []),
    say(`reason.${one.reason}`),
  ].join(' · ');
}
