import type { FoodEntryView, YardState } from '@stokehold/domain/contract';
import { Button } from '../../parts/button.js';
import { Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { type SayFoodWords, useFoodWords } from '../../words/food.js';
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
      <ul className={`${css['rows']} ${css['log']}`}>
        {[...log].reverse().map((entry) => (
          <li key={entry.id}>
            <div className={css['line']}>
              <span>
                <span className="figure">{figures.dayTime(entry.at)}</span> <strong className={entry.corrected ? css['corrected'] : undefined}>{entrySaid(say, figures, entry)}</strong>{' '}
                {entry.byProbe ? say('log.byProbe') : people.find(({ id }) => id === entry.personId)?.name} <span className={css['quiet']}>{remarksOn(entry, say)}</span>
              </span>
              {mayRecord && !entry.corrected && entry.kind === 'reading' && <Button onClick={() => onCorrect(entry)}>{say('log.correct')}</Button>}
            </div>
          </li>
        ))}
      </ul>
    </Panel>
  );
}

/** What a line has to say beyond itself; that a reading was used is the rule, and said by its dot in the picture. */
const remarksOn = ({ corrected, corrects, verdict, note }: FoodEntryView, say: SayFoodWords) =>
  [corrected && say('log.corrected'), corrects && say('log.corrects'), verdict && verdict !== 'used' && say(`verdict.${verdict}`), note].filter(Boolean).join(' · ');
