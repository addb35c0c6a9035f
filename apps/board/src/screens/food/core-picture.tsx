import type { CookCourse } from '@stokehold/domain/contract';
import { HourLines, HOURS_PX } from '../../parts/hour-lines.js';
import { lineOf } from '../../parts/line-of.js';
import picture from '../../parts/picture.module.css';
import { useWidth } from '../../parts/use-width.js';
import { useFigures } from '../../units/use-figures.js';
import { useFoodWords } from '../../words/food.js';
import { coreShape } from './core-shape.js';
import css from './food.module.css';

const HEIGHT_PX = 260;

/** The core from going on until done: the forecast as a fan, each reading as it was read. */
export function CorePicture({ course, nowMs, zone }: { readonly course: CookCourse; readonly nowMs: number; readonly zone: string }) {
  const say = useFoodWords();
  const figures = useFigures();
  const { ref, width } = useWidth<HTMLDivElement>(800);
  const shape = coreShape({ course, nowMs, width, height: HEIGHT_PX });
  const forecast = course.cook.forecast;
  if (!shape) return null;
  const doneC = course.cut?.done.coreTempC;
  const said = say('picture.said', { temp: forecast?.coreC == null ? '–' : figures.of('temp', forecast.coreC), done: doneC == null ? '–' : figures.of('temp', doneC) });
  return (
    <div ref={ref} className={css['ribbon']} role="group" aria-label={say('picture.label')}>
      <svg width={width} height={HEIGHT_PX + HOURS_PX} role="img" aria-label={said}>
        <HourLines fromMs={shape.fromMs} untilMs={shape.untilMs} width={width} height={HEIGHT_PX} zone={zone} />
        <path d={`${lineOf(shape.fan)}Z`} fill="var(--fan)" opacity="0.42" />
        <path d={lineOf(shape.middle)} fill="none" stroke="var(--mark)" strokeWidth="2" strokeDasharray="7 5" />
        {shape.doneY !== undefined && <path d={`M0 ${shape.doneY}H${width}`} stroke="var(--band-edge)" strokeWidth="2" />}
        {shape.doneY !== undefined && doneC != null && (
          <text className={picture['word']} x="6" y={shape.doneY - 6}>{say('picture.doneAt', { temp: figures.of('temp', doneC) })}</text>
        )}
        {shape.readings.map(({ id, at: [cx, cy], used }) =>
          used ? <circle key={id} cx={cx} cy={cy} r="5" fill="var(--strong)" /> : <path key={id} d={`M${cx - 6} ${cy - 6}l12 12M${cx + 6} ${cy - 6}l-12 12`} stroke="var(--soon)" strokeWidth="3" />,
        )}
        {shape.nowX !== undefined && <path d={`M${shape.nowX} 0V${HEIGHT_PX}`} stroke="var(--strong)" strokeWidth="3" />}
      </svg>
    </div>
  );
}

/** What the marks of the picture mean. */
export function CoreLegend() {
  const say = useFoodWords();
  return (
    <ul className={picture['legend']}>
      {(['fan', 'used', 'unused', 'done'] as const).map((what) => (
        <li key={what}>
          <svg width="34" height="20" viewBox="0 0 34 20" aria-hidden="true">
            {what === 'fan' && <path d="M1 10 33 2v16z" fill="var(--fan)" opacity="0.42" />}
            {what === 'used' && <circle cx="17" cy="10" r="5" fill="var(--strong)" />}
            {what === 'unused' && <path d="M11 4l12 12M23 4l-12 12" stroke="var(--soon)" strokeWidth="3" />}
            {what === 'done' && <path d="M1 10h32" stroke="var(--band-edge)" strokeWidth="2" />}
          </svg>
          {say(`legend.${what}`)}
        </li>
      ))}
    </ul>
  );
}
