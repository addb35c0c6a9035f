import type { AlarmView, FireTroubleView, PitView, YardState } from '@stokehold/domain/contract';
import type { Figures } from '../units/figures.js';
import type { SayFireWords } from '../words/fire.js';

/** How much a trouble asks of people. now: hands, at once. soon: at the next look, or sooner. */
export type TroubleLevel = 'now' | 'soon';

/** What may be wrong at a fire, in words. */
export interface Trouble {
  readonly key: string;
  readonly code: FireTroubleView['code'];
  readonly level: TroubleLevel;
  readonly title: string;
  /** What it rests on, with its figures. */
  readonly says: string;
  /** What to do, with the usual caution. */
  readonly does: string;
  /** The alarm to take note of, where one stands. */
  readonly alarmId: string | null;
}

const NOW: readonly FireTroubleView['code'][] = ['running-away', 'bed-nearly-out', 'out'];

/** Everything that may be wrong at one fire, the most urgent first: a temperature that runs away above all. */
export function troublesOf(view: PitView, alarms: readonly AlarmView[], nowMs: number, say: SayFireWords, figures: Figures): readonly Trouble[] {
  const away = alarms.find(({ kind, pitId, state }) => kind === 'running-away' && pitId === view.pit.id && state !== 'normal');
  const others = (view.fire?.troubles ?? []).filter(({ code }) => code !== 'running-away');
  const trouble = (code: FireTroubleView['code'], says: string, alarmId: string | null = null): Trouble => ({
    key: code, code, says, alarmId, level: NOW.includes(code) ? 'now' : 'soon', title: say(code), does: say(`${code}.do`),
  });
  return [
    ...(away ? [away.state === 'returned-unacknowledged' ? ranAway(away, say, figures) : trouble('running-away', say('running-away.say'), away.state === 'acknowledged' ? null : away.id)] : []),
    ...others.map((one) => trouble(one.code, sentenceOf(one, nowMs, say, figures))),
  ];
}

/** One that ran away and is over by its readings stays on show until somebody has taken note of it. */
const ranAway = ({ id, raisedAt, returnedAt }: AlarmView, say: SayFireWords, figures: Figures): Trouble => ({
  key: id, code: 'running-away', level: 'soon', alarmId: id, title: say('ran-away', { time: figures.time(raisedAt) }),
  says: say('ran-away.say', { time: figures.time(returnedAt ?? raisedAt) }), does: say('ran-away.do'),
});

/** A temperature that runs away at another fire than the one on show: told wherever somebody looks, with its name. */
export function runningAwayElsewhere(state: Pick<YardState, 'alarms' | 'pits'>, shownPitId: string | undefined, say: SayFireWords): readonly Trouble[] {
  const away = state.alarms.filter(({ kind, pitId, state: stands }) => kind === 'running-away' && pitId !== shownPitId && (stands === 'unacknowledged' || stands === 'acknowledged'));
  return away.map(({ id, pitId, state: stands }): Trouble => ({
    key: id, code: 'running-away', level: 'now', alarmId: stands === 'acknowledged' ? null : id,
    title: [state.pits.find(({ pit }) => pit.id === pitId)?.pit.name, say('running-away')].filter(Boolean).join(': '),
    says: say('running-away.say'), does: say('running-away.do'),
  }));
}

function sentenceOf(trouble: FireTroubleView, nowMs: number, say: SayFireWords, figures: Figures): string {
  switch (trouble.code) {
    case 'bed-nearly-out':
      return say('bed-nearly-out.say', { percent: figures.percent(trouble.nearlyOutFrac) });
    case 'diverged':
    case 'wood-not-recorded':
      return say(`${trouble.code}.say`, { time: figures.time(trouble.at) });
    case 'nothing-known':
      return say('nothing-known.say', { time: figures.time(trouble.since), span: figures.span((nowMs - Date.parse(trouble.since)) / 1000) });
    case 'probe-lost':
      return say('probe-lost.say', { end: say(`end.${trouble.end}`), time: figures.time(trouble.since) });
    case 'ends-disagree':
      return say('ends-disagree.say', { apart: figures.of('rise', trouble.apartK), time: figures.time(trouble.since) });
    case 'wet-lot':
      return say('wet-lot.say', { percent: figures.percent(Math.max(0, 1 - trouble.burnFactor)) });
    case 'ash':
      return say('ash.say', { mass: figures.of('mass', trouble.ashKg), percent: figures.percent(trouble.burnsFrac) });
    case 'wind-burst':
      return say(`wind-burst.${trouble.onto}`);
    case 'running-away':
    case 'out':
    case 'not-lit':
      return say(`${trouble.code}.say`);
  }
}
