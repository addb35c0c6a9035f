import { STRONG_GUST_M_PER_S } from '@stokehold/domain/chamber';
import type { ForecastView, YardState } from '@stokehold/domain/contract';
import { ForecastSaid } from '../../parts/forecast-said.js';
import { WindArrow } from '../../parts/wind-arrow.js';
import { useFigures } from '../../units/use-figures.js';
import { useNightWords } from '../../words/night.js';
import { windOf } from './compass.js';
import css from './wind-ahead.module.css';

const HOURS = 12;
/** The scale reaches at least here, so that a calm night looks calm. */
const LEAST_TOP_M_PER_S = 10;
const HIGH_PX = 72;

type Hour = ForecastView['hours'][number];

/** The wind of the hours ahead: a column up to the wind, a frame up to the gusts, an arrow where it blows on the yard plan. */
export function WindAhead({ forecast, state }: { readonly forecast: ForecastView; readonly state: YardState }) {
  const say = useNightWords();
  const figures = useFigures();
  if (!forecast.asked || !forecast.placed) return undefined;
  const hours = forecast.hours.slice(0, HOURS);
  const topMPerS = Math.max(LEAST_TOP_M_PER_S, ...hours.map(({ gustMPerS }) => gustMPerS));
  const highOf = (speedMPerS: number) => (speedMPerS / topMPerS) * HIGH_PX;
  const fromOf = ({ fromDeg }: Hour) => (fromDeg === null ? say('ahead.anywhere') : say(`wind.${windOf(fromDeg)}`));
  const strong = hours.find(({ gustMPerS }) => gustMPerS >= STRONG_GUST_M_PER_S);
  return (
    <section className={css['ahead']} aria-label={say('ahead.title')}>
      <h3>{say('ahead.title')}</h3>
      {strong && <p className={css['warn']}>▲ {say('ahead.strong', { time: figures.time(strong.from), gusts: figures.of('speed', strong.gustMPerS), from: fromOf(strong) })}</p>}
      {hours.length > 0 && (
        <ol className={css['hours']}>
          {hours.map((hour) => (
            <li key={hour.from} data-strong={hour.gustMPerS >= STRONG_GUST_M_PER_S}>
              <span className="unseen">{say('ahead.hour', { time: figures.time(hour.from), wind: figures.of('speed', hour.windMPerS), gusts: figures.of('speed', hour.gustMPerS), from: fromOf(hour) })}</span>
              <b aria-hidden="true">{figures.shown('speed', hour.gustMPerS)}</b>
              <i aria-hidden="true" style={{ height: highOf(hour.gustMPerS) }}>
                <i style={{ height: highOf(hour.windMPerS) }} />
              </i>
              <em aria-hidden="true">{hour.fromDeg === null ? '–' : <WindArrow fromDeg={hour.fromDeg} planTopDeg={state.yard.planTopDeg} size={20} />}</em>
              <small aria-hidden="true">{figures.time(hour.from).slice(0, 2)}</small>
            </li>
          ))}
        </ol>
      )}
      {hours.length > 0 && <p>{say('ahead.legend', { unit: figures.unit('speed') })}</p>}
      <ForecastSaid forecast={forecast} />
    </section>
  );
}
