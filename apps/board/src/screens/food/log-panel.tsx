import type { FoodEntryView, YardState } from '@stokehold/domain/contract';
import { Button } from '../../parts/button.js';
import { Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { useFoodWords } from '../../words/food.js';
import css from './food.module.css';
import { entrySaid } from './food-said.js';

interface LogPanelProps {
  readonly log: readonly FoodEntryView[];
  readonly people: YardState['people'];
  readonly mayRecord: boolean;
  readonly onCorrect: (entry: FoodEntryView) => void;
}

/** Every line of a cook's log, the newest first; a corrected one stays to be read. */
export function LogPanel({ log, people, mayRecord, onCorrect }: LogPanelProps) {
  const say = useFoodWords();
  const figures = useFigures();
  return (
    <Panel title={say('log')}>
      {log.length === 0 && <p>{say('log.none')}</p>}
      <ul className={css['rows']}>
        {[...log].reverse().map((entry) => (
          <li key={entry.id}>
            <div className={css['line']}>
              <span>
                <span className="figure">{figures.dayTime(entry.at)}</span> <strong className={entry.corrected ? css['corrected'] : undefined}>{entrySaid(say, figures, entry)}</strong>{' '}
                {entry.byProbe ? say('log.byProbe') : people.find(({ id }) => id === entry.personId)?.name}
              </span>
              {mayRecord && !entry.corrected && entry.kind === 'reading' && <Button onClick={() => onCorrect(entry)}>{say('log.correct')}</Button>}
            </div>
            <span className={css['quiet']}>
              {[entry.corrected && say('log.corrected'), entry.corrects && say('log.corrects'), entry.verdict && say(`verdict.${entry.verdict}`), entry.note].filter(Boolean).join(' · ')}
            </span>
          </li>
        ))}
      </ul>
    </Panel>
  );
}
