import type { RosterView } from '@stokehold/domain/contract';
import { useFigures } from '../../units/use-figures.js';
import { usePlanWords } from '../../words/plan.js';
import css from './need-chart.module.css';

type Hour = RosterView['hours'][number];
export type ShownNeed = Pick<Hour, 'needed' | 'present' | 'fails'> & { readonly fromAt: string | number; readonly untilAt: string | number };

const STEP_PX = 22;

/** A column an hour: a block for each person needed, filled where somebody is there, hollow and marked where one is missing. */
export function NeedChart({ hours }: { readonly hours: readonly ShownNeed[] }) {
  const say = usePlanWords();
  const figures = useFigures();
  const most = Math.max(1, ...hours.map(({ needed, present }) => Math.max(needed, Math.ceil(present))));
  return (
    <figure role="img" aria-label={say('need.spoken', { count: hours.length })}>
      <div className={css['columns']} style={{ height: most * STEP_PX + 4 }} aria-hidden="true">
        {hours.map(({ fromAt, untilAt, needed, present }) => (
          <div key={fromAt} title={say('need.hour', { from: figures.time(fromAt), until: figures.time(untilAt), needed, present: figures.count(present, Number.isInteger(present) ? 0 : 1) })}>
            {Array.from({ length: Math.max(needed, Math.floor(present)) }, (_, n) => (
              <span key={n} className={n >= needed ? css['spare'] : n < present - 0.25 ? css['there'] : css['missing']}>
                {n < needed && n >= present - 0.25 ? '▲' : ''}
              </span>
            ))}
          </div>
        ))}
      </div>
      <div className={css['names']} aria-hidden="true">
        {hours.map(({ fromAt }) => <span key={fromAt}>{figures.time(fromAt).slice(0, 2)}</span>)}
      </div>
    </figure>
  );
}
