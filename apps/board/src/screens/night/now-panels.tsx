import { fromIso } from '@stokehold/domain/quantity';
import type { Supposition, YardState } from '@stokehold/domain/contract';
import { useMay } from '../../live/use-setup.js';
import { Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { useNightWords } from '../../words/night.js';
import { usePlanWords } from '../../words/plan.js';
import { useSharedWords } from '../../words/shared.js';
import { LoadChart, LoadSentences, type ShownHour } from './load-chart.js';
import type { Answering } from './answers.js';
import { ChangesPanel } from './changes-panel.js';
import css from './night.module.css';
import { capital, namesIn, workInWords, type Telling } from './plan-changes.js';
import { WhatIfPanel } from './what-if-panel.js';
import { WhyPanel } from './why-panel.js';

const REASONS = ['nobody-on-shift', 'nobody-with-skill', 'no-two-together', 'no-time-left', 'pin-in-the-way'] as const;

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
      <ChangesPanel {...{ plan, telling, nowS }} />
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
