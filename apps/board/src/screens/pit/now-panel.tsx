import type { PitView, YardState } from '@stokehold/domain/contract';
import { airSaid } from '../../parts/air-said.js';
import { Caution } from '../../parts/caution.js';
import { Panel } from '../../parts/panel.js';
import { PitDrawing } from '../../parts/pit-drawing.js';
import { Troubles } from '../../parts/troubles.js';
import { troublesOf } from '../../parts/troubles-of.js';
import { useFigures } from '../../units/use-figures.js';
import { useFireWords } from '../../words/fire.js';
import { usePitWords } from '../../words/pit.js';
import { useRoundWords } from '../../words/round.js';
import { useSharedWords } from '../../words/shared.js';
import { adviceSentence } from '../round/advice-sentence.js';
import { liesOn } from '../wall/stripe-row.js';
import css from './pit.module.css';

/** How the fire stands now: what is believed of it, what may be wrong, and what to do next. */
export function NowPanel({ state, view, nowMs }: { readonly state: YardState; readonly view: PitView; readonly nowMs: number }) {
  const say = usePitWords();
  const round = useRoundWords();
  const shared = useSharedWords();
  const fireWords = useFireWords();
  const figures = useFigures();
  const { fire, advice } = view;
  const troubles = troublesOf(view, state.alarms, nowMs, fireWords, figures);
  const runsAway = troubles.some(({ code }) => code === 'running-away');
  const looked = view.checks.at(-1)?.seenAt;
  const said = advice && !runsAway ? adviceSentence(advice, { say: round, fire: fireWords, figures, nowMs }) : undefined;
  if (!fire || !view.tonight) return <Panel title={say('now')}>{say('notBurning')}<Troubles troubles={troubles} /></Panel>;
  return (
    <Panel title={say('now')} beside={<span className={css['quiet']}>{shared(`mode.${fire.mode}`)}</span>}>
      <div className={css['now']}>
        <div className={css['drawing']}>
          <PitDrawing pit={view.pit} lies={liesOn(state, view.pit.id)} bedFrac={fire.bedKg / Math.max(fire.fullBedKg, 0.01)} lit />
        </div>
        <ul className="figure">
          <li className={css['large']}>
            {say('believed', {
              temp: figures.of('temp', fire.chamberTempC.p50), low: figures.bare('temp', fire.chamberTempC.p10), high: figures.degrees(fire.chamberTempC.p90),
            })}
          </li>
          <li>{say('bedOf', { bed: figures.of('mass', fire.bedKg), full: figures.of('mass', fire.fullBedKg) })}</li>
          <li>{fire.splitsBurning > 0 ? say('splits', { count: fire.splitsBurning, left: figures.percent(fire.splitLeftFrac) }) : say('noSplits')}</li>
          <li>{airSaid(fire.air, fireWords)}</li>
          <li>{looked ? say('lookedAgo', { span: figures.span((nowMs - Date.parse(looked)) / 1000) }) : say('neverLooked')}</li>
        </ul>
      </div>
      <Troubles troubles={troubles} />
      {said && (
        <p className={css['advice']}>
          <span className={css['quiet']}>{say('advisedAt', { time: figures.time(advice!.madeAt) })}</span> <strong>{said.order}</strong> {said.reason}
        </p>
      )}
      <Caution about="fire" />
    </Panel>
  );
}
