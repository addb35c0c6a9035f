import type { PlanDecision, PlanView } from '@stokehold/domain/contract';
import { useState } from 'react';
import { Button } from '../../parts/button.js';
import { Panel } from '../../parts/panel.js';
import css from './night.module.css';
import { causeInWords, changeInWords, decisionsListed, newsOf, searchInWords, type Telling } from './plan-changes.js';

const FIRST_CHANGES = 6;

interface ChangesProps {
  readonly plan: PlanView;
  readonly telling: Telling;
  readonly nowS: number;
}

/** What the plan of now changed, and beside it what people decided in the last half hour: fires make newer plans every few minutes. */
export function ChangesPanel({ plan, telling, nowS }: ChangesProps) {
  const { say, time } = telling;
  return (
    <Panel title={say('changes.title')} beside={<span className="figure">{time(plan.madeAt)}</span>}>
      <Changes of={plan} telling={telling} />
      <p className={css['quiet']}>{searchInWords(plan, say)}</p>
      {decisionsListed(plan, nowS).map((decision) => (
        <section key={decision.madeAt} className={css['decided']} aria-label={say('changes.decided', { time: time(decision.madeAt) })}>
          <h3 className="figure">{say('changes.decided', { time: time(decision.madeAt) })}</h3>
          <Changes of={decision} telling={telling} />
        </section>
      ))}
    </Panel>
  );
}

function Changes({ of, telling }: { readonly of: Pick<PlanDecision, 'because' | 'changes'>; readonly telling: Telling }) {
  const { say, shared } = telling;
  const [whole, setWhole] = useState(false);
  const { news, smallMoves } = newsOf(of.changes);
  return (
    <>
      <p>{causeInWords(of, telling)}</p>
      {news.length === 0 && <p>{say('changes.none')}</p>}
      {news.length > 0 && (
        <ul className={css['sentences']}>
          {(whole ? news : news.slice(0, FIRST_CHANGES)).map((change, index) => (
            <li key={index}>{changeInWords(change, telling)}</li>
          ))}
        </ul>
      )}
      {smallMoves > 0 && <p className={css['quiet']}>{say('changes.small', { count: smallMoves })}</p>}
      {news.length > FIRST_CHANGES && <Button onClick={() => setWhole(!whole)}>{shared(whole ? 'do.less' : 'do.more')}</Button>}
    </>
  );
}
