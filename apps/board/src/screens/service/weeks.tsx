import { useQuery } from '@tanstack/react-query';
import { epochS, toIso } from '@stokehold/domain/quantity';
import { ask } from '../../live/ask.js';
import { yardNowMs } from '../../live/heard.js';
import { passes } from '../../live/refused.js';
import { useMay } from '../../live/use-setup.js';
import { Button } from '../../parts/button.js';
import { Panel } from '../../parts/panel.js';
import picture from '../../parts/picture.module.css';
import { csvOf, saveFile } from '../../parts/save-file.js';
import { useWidth } from '../../parts/use-width.js';
import { useFigures } from '../../units/use-figures.js';
import { useServiceWords } from '../../words/service.js';
import css from './service.module.css';
import { weekRows, weekSums } from './week-sums.js';

const BACK_S = 26 * 7 * 86_400;
const PARTS = [{ look: 'weekWood', word: 'sum.wood', of: 'woodCents' }, { look: 'weekCrew', word: 'sum.crew', of: 'crewCents' }, { look: 'weekMeat', word: 'sum.meat', of: 'meatCents' }] as const;
const SIZE = { width: 1040, height: 180, gap: 6, bar: 130, label: 96 };

/** What the services of the last half year cost, week by week: wood below, crew on it, meat on top. */
export function Weeks() {
  const say = useServiceWords();
  const mayPlan = useMay('plan');
  const query = useQuery({
    queryKey: ['service-costs'], queryFn: () => ask('serviceCosts', { since: toIso(epochS(yardNowMs() / 1000 - BACK_S)) }), enabled: mayPlan, staleTime: 60_000,
    retry: (_count, error) => passes(error), retryDelay: 2000,
  });
  if (!mayPlan || !query.data) return null;
  const weeks = weekSums(query.data);
  return (
    <Panel title={say('byWeek')} beside={query.data.length > 0 && <Button onClick={() => saveFile('services.csv', csvOf(weekRows(query.data)))}>{say('csv')}</Button>}>
      {weeks.every(({ totalCents }) => totalCents === 0) ? <p>{say('week.none')}</p> : (
        <>
          <WeekBars weeks={weeks} />
          <ul className={picture['legend']}>
            {PARTS.filter(({ of }) => weeks.some((week) => week[of] > 0)).map(({ look, word }) => (
              <li key={word}><svg width="16" height="14" aria-hidden="true"><rect width="14" height="14" className={css[look]} /></svg> {say(word)}</li>
            ))}
          </ul>
        </>
      )}
    </Panel>
  );
}

/** A bar a week: wood below, crew on it, meat on top. */
function WeekBars({ weeks }: { readonly weeks: ReturnType<typeof weekSums> }) {
  const say = useServiceWords();
  const figures = useFigures();
  const most = Math.max(1, ...weeks.map(({ totalCents }) => totalCents));
  const { ref, width } = useWidth<HTMLDivElement>(SIZE.width);
  const step = Math.min(SIZE.bar, Math.min(SIZE.width, width) / weeks.length);
  const everyNth = Math.ceil(SIZE.label / step);
  const base = SIZE.height + 20;
  const high = (cents: number) => (cents / most) * SIZE.height;
  return (
    <div ref={ref} className={css['weeksFrame']}>
      <svg className={css['weeks']} width={Math.min(SIZE.width, width)} height={SIZE.height + 48} role="img" aria-label={weeks.map(({ mondayMs, totalCents }) => say('week.spoken', { day: figures.day(mondayMs), money: figures.money(totalCents) })).join(', ')}>
        {weeks.map((week, i) => {
          const x = i * step;
          const [wood, crew, meat] = [high(week.woodCents), high(week.crewCents), high(week.meatCents)];
          return (
            <g key={week.mondayMs}>
              <rect x={x} y={base - wood} width={Math.max(2, step - SIZE.gap)} height={wood} className={css['weekWood']} />
              <rect x={x} y={base - wood - crew} width={Math.max(2, step - SIZE.gap)} height={crew} className={css['weekCrew']} />
              <rect x={x} y={base - wood - crew - meat} width={Math.max(2, step - SIZE.gap)} height={meat} className={css['weekMeat']} />
              {week.totalCents > 0 && everyNth === 1 && <text x={x} y={base - wood - crew - meat - 4}>{figures.money(week.totalCents)}</text>}
              {i % everyNth === 0 && <text x={x} y={base + 20}>{figures.day(week.mondayMs + 12 * 3_600_000)}</text>}
            </g>
          );
        })}
      </svg>
    </div>
  );
}
