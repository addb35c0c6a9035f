import type { FindingView } from '@stokehold/domain/contract';
import { Caution } from '../../parts/caution.js';
import { Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { useFoodWords } from '../../words/food.js';
import css from './food.module.css';
import { findingSaid, remediesSaid } from './food-said.js';

/** Each limit that the record can be held against: what was measured, against which section, and what can still be done. */
export function FindingsPanel({ findings }: { readonly findings: readonly FindingView[] }) {
  const say = useFoodWords();
  const figures = useFigures();
  return (
    <Panel title={say('limits')}>
      {findings.length === 0 && <p>{say('limits.none')}</p>}
      <ul className={css['rows']}>
        {findings.map((finding, nth) => {
          const remedies = remediesSaid(say, finding);
          return (
            <li key={`${finding.limit}-${nth}`}>
              <div className={css['line']}>
                <strong>{say(`limit.${finding.limit}`)}</strong>
                <span className={css['outcome']} data-outcome={finding.answered ? 'met' : finding.outcome}>{say(`outcome.${finding.outcome}`)}</span>
              </div>
              <span>{findingSaid(say, figures, finding)}</span>
              {finding.runsOutAt && (finding.outcome === 'open' || finding.outcome === 'at-risk') && <span className="figure">{say('finding.left', { time: figures.dayTime(finding.runsOutAt) })}</span>}
              {remedies && <span>{remedies}</span>}
              <span className={css['quiet']}>{say(`code.${finding.code}`, { edition: finding.edition })}</span>
            </li>
          );
        })}
      </ul>
      <Caution about="food" />
    </Panel>
  );
}
