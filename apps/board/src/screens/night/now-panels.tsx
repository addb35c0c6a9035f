import { fromIso } from '@stokehold/domain/quantity';
import type { Supposition, YardState } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useMay } from '../../live/use-setup.js';
import { Button } from '../../parts/button.js';
import { Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { useNightWords } from '../../words/night.js';
import { usePlanWords } from '../../words/plan.js';
import { useSharedWords } from '../../words/shared.js';
import { LoadChart, LoadSentences, type ShownHour } from './load-chart.js';
import type { Answering } from './answers.js';
import css from './night.module.css';
import { capital, causeInWords, changeInWords, namesIn, newsOf, searchInWords, workInWords, type Telling } from './plan-changes.js';
import { WhatIfPanel } from './what-if-panel.js';
import { WhyPanel } from './why-panel.js';

const REASONS = ['nobody-on-shift', 'nobody-with-skill', 'no-two-together', 'no-time-left', 'pin-in-the-way'] as const;
const FIRST_CHANGES = 6;

/** How the plan stands: does it hold, what changed and why, what found no place. */
export function NowPanels({ state, nowS, dragged }: { readonly state: YardState; readonly nowS: number; readonly dragged: Supposition | undefined }) {
  const say = useNightWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const planWords = usePlanWords();
  const mayPlan = useMay('plan');
  const { plan } = state;
  if (!plan) return <Panel title={say('load.title')}>{say('noPlan')}</Panel>;
  const hours: ShownHour[] = plan.load.map((hour) => ({ ...hour, fromAt: fromIso(hour.fromAt), untilAt: fromIso(hour.untilAt), mend: { code: hour.mend } }));
  const telling: Telling = { say, shared, time: figures.time, names: namesIn(state) };
  const answering: Answering = { ...telling, plan: planWords, figures };
  const all = hours.filter(({ skill }) => skill === null);
  const failing = new Set(all.filter(({ fails }) => fails).map(({ fromAt }) => fromAt));
  const lacking = hours.filter(({ skill, fromAt }) => skill !== null && !failing.has(fromAt));
  return (
    <>
      <Panel title={say('load.title')}>
        <LoadChart hours={all} figures={figures} />
        <LoadSentences hours={[...all, ...lacking]} figures={figures} skillName={(skill) => shared(`skill.${skill as 'fire'}`)} />
      </Panel>
      <Changes state={state} telling={telling} />
      <WhyPanel {...{ state, answering, nowS }} />
      {mayPlan && <WhatIfPanel {...{ state, answering, nowS, dragged }} />}
      {plan.unplaced.length > 0 && (
        <Panel title={say('unplaced.title')}>
          <ul className={css['sentences']}>
            {plan.unplaced.map(({ work, reason }, index) => (
              <li key={index}>
                <strong className={css['warn']}>▲ {capital(workInWords(work, telling))}</strong>: {say(`unplaced.${REASONS.find((known) => known === reason) ?? 'other'}`)}
              </li>
            ))}
          </ul>
        </Panel>
      )}
    </>
  );
}

function Changes({ state, telling }: { readonly state: YardState; readonly telling: Telling }) {
  const { say, shared } = { say: telling.say, shared: telling.shared };
  const [whole, setWhole] = useState(false);
  if (!state.plan) return null;
  const { news, smallMoves } = newsOf(state.plan.changes);
  const shown = whole ? news : news.slice(0, FIRST_CHANGES);
  return (
    <Panel title={say('changes.title')} beside={<span className="figure">{telling.time(state.plan.madeAt)}</span>}>
      <p>{causeInWords(state.plan, telling)}</p>
      {news.length === 0 && <p>{say('changes.none')}</p>}
      <ul className={css['sentences']}>
        {shown.map((change, index) => (
          <li key={index}>{changeInWords(change, telling)}</li>
        ))}
      </ul>
      {smallMoves > 0 && <p className={css['quiet']}>{say('changes.small', { count: smallMoves })}</p>}
      <p className={css['quiet']}>{searchInWords(state.plan, say)}</p>
      {news.length > FIRST_CHANGES && <Button onClick={() => setWhole(!whole)}>{shared(whole ? 'do.less' : 'do.more')}</Button>}
    </Panel>
  );
}
