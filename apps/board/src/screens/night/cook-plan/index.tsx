import type { CookPlanView, CookSupposed, YardState } from '@stokehold/domain/contract';
import type { CookId } from '@stokehold/domain/quantity';
import { useState } from 'react';
import { useCommand } from '../../../live/use-command.js';
import { useLoading } from '../../../live/use-loading.js';
import { Button } from '../../../parts/button.js';
import { Failure } from '../../../parts/failure.js';
import { Panel } from '../../../parts/panel.js';
import { useFigures } from '../../../units/use-figures.js';
import { useCookPlanWords } from '../../../words/cook-plan.js';
import { useLoadingWords } from '../../../words/loading.js';
import { setAsideLine } from '../../loading/loading-words.js';
import css from './cook-plan.module.css';
import { PlanPicture } from './plan-picture.js';
import { shortHours } from './plan-shape.js';
import { chance, cutOf, helpLine, moneyLine, pitOf, serviceOf, startLine, type Telling } from './telling.js';

/** Which cook goes on which pit when, from the services backwards; what is at risk and what would help; what another time would do. */
export function CookPlanPanel({ state }: { readonly state: YardState }) {
  const say = useCookPlanWords();
  const loadingWords = useLoadingWords();
  const figures = useFigures();
  const { loading, failed } = useLoading(state);
  const telling = { say, figures, state };
  return (
    <div className={css['whole']}>
      <Panel title={say('title')}>
        <Failure of={failed} />
        {!loading && !failed && <p role="status">{say('making')}</p>}
        {loading?.setAside.map((aside, i) => <p key={i} className={css['warn']}>▲ {setAsideLine({ say: loadingWords, figures, state }, aside)}</p>)}
        {loading && !loading.cookPlan && <p>{say('nothing')}</p>}
        {loading?.cookPlan && <Planned plan={loading.cookPlan} telling={telling} />}
      </Panel>
    </div>
  );
}

interface Part {
  readonly plan: CookPlanView;
  readonly telling: Telling;
}

function Planned({ plan, telling }: Part) {
  const { say, figures } = telling;
  const [supposed, setSupposed] = useState<{ readonly cookId: string; readonly onAtMs: number }>();
  const [answer, setAnswer] = useState<CookSupposed>();
  const command = useCommand('supposeCook');
  const suppose = async (cookId: string, onAtMs: number) => {
    setSupposed({ cookId, onAtMs });
    setAnswer(await command.send({ cookId: cookId as CookId, onAt: new Date(onAtMs).toISOString() }));
  };
  const before = plan.starts.find(({ cookId }) => cookId === supposed?.cookId);
  return (
    <>
      <Services plan={plan} telling={telling} />
      <PlanPicture plan={plan} telling={telling} onSuppose={(cookId, onAtMs) => void suppose(cookId, onAtMs)} supposed={supposed} />
      <Failure of={command.failed} />
      {supposed && before && (
        <div className={css['supposed']} role="status">
          <strong>{say('dragged', { cut: cutOf(telling, supposed.cookId), time: figures.dayTime(supposed.onAtMs), before: figures.dayTime(before.onAt) })}</strong>
          {answer && <Answer answer={answer} telling={telling} />}
          <Button onClick={() => setSupposed(undefined)}>{say('again')}</Button>
        </div>
      )}
      <Fires plan={plan} telling={telling} />
      {plan.unplaced.map(({ cookId, hindrances }) => (
        <p key={cookId} className={css['warn']}>▲ {say('unplaced', { cut: cutOf(telling, cookId), why: hindrances.map(({ pitId, hindrance }) => say(`hindrance.${hindrance}`, { pit: pitOf(telling, pitId) })).join(', ') })}</p>
      ))}
      {shortHours(plan).map(({ fromMs, untilMs, neededS, thereS }) => (
        <p key={fromMs} className={css['warn']}>▲ {say('crewShort', { from: figures.dayTime(fromMs), until: figures.time(untilMs), needed: figures.span(neededS), there: figures.span(thereS) })}</p>
      ))}
      <p className={css['quiet']}>{say('cost', { cost: figures.money(plan.costCents) })} {plan.proven ? say('cost.best') : plan.boundCents > 0 && say('cost.bound', { bound: figures.money(plan.boundCents) })}</p>
    </>
  );
}

function Services({ plan, telling }: Part) {
  const { say, figures } = telling;
  return (
    <ul className={css['list']}>
      {plan.services.map(({ serviceId, readyBy, lateFrac, atRisk, promisableAt, help }) => (
        <li key={serviceId}>
          <span className={atRisk ? css['warn'] : undefined}>
            {atRisk ? '▲ ' : ''}{say(atRisk ? 'service.risk' : 'service.holds', { service: serviceOf(telling, serviceId), time: figures.dayTime(readyBy), percent: chance(figures, lateFrac), limit: figures.percent(plan.lateLimitFrac) })}
          </span>
          {atRisk && promisableAt && <> {say('service.promise', { time: figures.dayTime(promisableAt) })}</>}
          {atRisk && (
            <ul className={css['help']}>
              {help.length === 0 && <li>{say('help.none')}</li>}
              {help.map((one, i) => <li key={i}>{helpLine(telling, one)}</li>)}
            </ul>
          )}
        </li>
      ))}
    </ul>
  );
}

function Answer({ answer, telling }: { readonly answer: CookSupposed; readonly telling: Telling }) {
  const { say, figures } = telling;
  if (answer.breaks.length > 0) return <p className={css['warn']}>▲ {say('dragged.breaks', { why: answer.breaks.map((code) => say(`breaks.${code}`)).join(', ') })}</p>;
  return (
    <>
      {answer.services.filter(({ beforeLateFrac, afterLateFrac }) => beforeLateFrac !== afterLateFrac).map(({ serviceId, beforeLateFrac, afterLateFrac }) => (
        <p key={serviceId}>{say('dragged.late', { service: serviceOf(telling, serviceId), after: chance(figures, afterLateFrac), before: chance(figures, beforeLateFrac) })}</p>
      ))}
      {answer.keptTooLongS > 0 && <p>{say('dragged.kept', { span: figures.span(answer.keptTooLongS) })}</p>}
      <p>{moneyLine(telling, answer.moreCents)}</p>
    </>
  );
}

/** Each fire: when to light it, what it holds, what it takes; below it its cooks with their times. */
function Fires({ plan, telling }: Part) {
  const { say, figures } = telling;
  return (
    <ul className={css['fires']}>
      {plan.burns.map((burn) => (
        <li key={burn.pitId}>
          <strong>{say('fire', { pit: pitOf(telling, burn.pitId), temp: figures.of('temp', burn.tempC) })}</strong>{' '}
          <span className="figure">{burn.lightAt ? say('fire.light', { time: figures.dayTime(burn.lightAt) }) : say('fire.burns')}</span>
          <p className={css['quiet']}>{say('fire.use', { from: figures.time(burn.firstOnAt), until: figures.time(burn.lastOffBy), wood: figures.of('mass', burn.woodKg), span: figures.span(burn.crewS), full: figures.percent(burn.fullestFrac) })}</p>
          <ul className={css['list']}>
            {plan.starts.filter(({ pitId }) => pitId === burn.pitId).map((one) => (
              <li key={one.cookId}>
                {one.reason === 'as-early-as-can-be' && <span className={css['warn']}>▲ </span>}
                {say('cook', { cut: cutOf(telling, one.cookId) })} <span className={`figure ${css['quiet']}`}>{startLine(telling, one)}</span>
              </li>
            ))}
          </ul>
        </li>
      ))}
    </ul>
  );
}
