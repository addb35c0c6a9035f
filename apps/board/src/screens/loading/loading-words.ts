import type { LoadingView, PitLoadingView, YardState } from '@stokehold/domain/contract';
import type { Figures } from '../../units/figures.js';
import type { SayLoadingWords } from '../../words/loading.js';

export interface Telling {
  readonly say: SayLoadingWords;
  readonly figures: Figures;
  readonly state: YardState;
}

export const cutName = ({ state, say }: Telling, cookId: string | null): string => state.cooks.find(({ id }) => id === cookId)?.cut ?? say('aCook');
export const pitName = ({ state, say }: Telling, pitId: string | null): string => state.pits.find((view) => view.pit.id === pitId)?.pit.name ?? say('aPit');

/** Differences smaller than this are not told. */
const TOLD_K = 1;

/** Why a cook lies here, in one line: reason, off what was planned, turning, when it comes off. */
export function placingLine({ say, figures }: Telling, placing: PitLoadingView['placings'][number]): string {
  const off = Math.abs(placing.offByK) < TOLD_K ? [] : [say(placing.offByK > 0 ? 'hotter' : 'cooler', { rise: figures.of('rise', Math.abs(placing.offByK)) })];
  const turn = placing.turnEveryS === null ? [] : [say('turnEvery', { span: figures.span(placing.turnEveryS) })];
  return [say(`reason.${placing.reason}`), ...off, ...turn].join(' · ');
}

/** What the other zones would be like for it. */
export const elsewhereLine = ({ say, figures }: Telling, elsewhere: PitLoadingView['placings'][number]['elsewhere']): string =>
  elsewhere.map(({ zone, moreS, hindrance }) => {
    if (hindrance) return say(`elsewhere.${hindrance}`, { zone: zone + 1 });
    return moreS !== null && moreS > 30 ? say('elsewhere.more', { zone: zone + 1, span: figures.span(Math.max(60, moreS)) }) : say('elsewhere.same', { zone: zone + 1 });
  }).join(' · ');

/** Why something is not planned and what to do. */
export function setAsideLine(telling: Telling, aside: LoadingView['setAside'][number]): string {
  const { say, figures, state } = telling;
  const service = state.services.find(({ id }) => id === aside.serviceId);
  return say(`aside.${aside.code}`, {
    cut: cutName(telling, aside.slowest ?? aside.cookId), pit: pitName(telling, aside.pitId), service: service?.name ?? '', time: service ? figures.dayTime(service.readyBy) : '',
    earliest: aside.earliestAt ? figures.dayTime(aside.earliestAt) : '', why: say(`waits.${aside.waitsFor ?? 'cooking'}`),
  });
}
