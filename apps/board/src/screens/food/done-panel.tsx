import type { CookCourse } from '@stokehold/domain/contract';
import { Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { useFoodWords } from '../../words/food.js';
import { CoreLegend, CorePicture } from './core-picture.js';
import css from './food.module.css';
import { doneSaid } from './food-said.js';

/** When one cook is done, and the course of its core. */
export function DonePanel({ course, nowMs, zone }: { readonly course: CookCourse; readonly nowMs: number; readonly zone: string }) {
  const say = useFoodWords();
  const figures = useFigures();
  const { cook, log } = course;
  const { forecast } = cook;
  const wrapped = log.some(({ kind, corrected }) => kind === 'wrapped' && !corrected);
  const facts = forecast && [
    say(`phase.${forecast.phase}`),
    forecast.coreC !== null && say('done.core', { temp: figures.of('temp', forecast.coreC) }),
    forecast.p95At && say('done.late', { time: figures.dayTime(forecast.p95At) }),
    wrapped ? say('done.wrapped') : forecast.wrapAt && say('done.wrap', { time: figures.time(forecast.wrapAt) }),
    forecast.hotYieldFrac !== null && say('done.yield', { percent: figures.percent(forecast.hotYieldFrac) }),
    say('done.madeAt', { time: figures.time(forecast.madeAt) }),
  ];
  return (
    <Panel title={say('done')}>
      {cook.offAt !== null && <p className={css['large']}>{say('list.off', { time: figures.dayTime(cook.offAt) })}</p>}
      {cook.offAt === null && (
        <p className={css['large']}>
          {forecast ? doneSaid(say, figures, forecast) : say(cook.onAt === null ? 'list.waiting' : course.cut ? 'list.soonForecast' : 'list.noForecast')}
        </p>
      )}
      {cook.offAt === null && facts && <p className={css['facts']}>{facts.filter(Boolean).map((fact) => <span key={String(fact)}>{fact}</span>)}</p>}
      <CorePicture course={course} nowMs={nowMs} zone={zone} />
      {course.core && <CoreLegend />}
    </Panel>
  );
}
