import type { WeatherView, YardState } from '@stokehold/domain/contract';
import { WindArrow } from '../../parts/wind-arrow.js';
import { useFigures } from '../../units/use-figures.js';
import { useWallWords } from '../../words/wall.js';
import css from './wall.module.css';

interface WindProps {
  readonly weather: WeatherView;
  readonly planTopDeg: number;
  readonly arrowPx: number;
}

function Wind({ weather, planTopDeg, arrowPx }: WindProps) {
  const say = useWallWords();
  const figures = useFigures();
  if (weather.seenAt === null) return <span className={css['quiet']}>{say('windUnknown')}</span>;
  return (
    <span className={css['wind']}>
      <WindArrow fromDeg={weather.fromDeg} planTopDeg={planTopDeg} size={arrowPx} />
      {figures.of('speed', weather.windMPerS)}
      {weather.gustMPerS > weather.windMPerS * 1.2 && (
        <span className={css['quiet']}>{say('gusts', { speed: figures.bare('speed', weather.gustMPerS) })}</span>
      )}
    </span>
  );
}

interface WallHeadProps {
  readonly state: YardState;
  readonly nowMs: number;
  readonly arrowPx: number;
}

/** The clock, the next service, the wind over the yard plan; on a practice night the whole line is hatched and says so. */
export function WallHead({ state, nowMs, arrowPx }: WallHeadProps) {
  const say = useWallWords();
  const figures = useFigures();
  const next = state.services
    .map((service) => Date.parse(service.readyBy))
    .filter((at) => at > nowMs)
    .sort((a, b) => a - b)[0];
  const { practice } = state.yard;
  return (
    <header className={`${css['head']} ${practice ? css['practice'] : ''} figure`}>
      <span className={css['clock']}>{figures.time(nowMs)}</span>
      {practice && (
        <strong className={css['practiceWord']}>
          {say('practice')}
          {state.clock.speed !== 1 && ` ×${state.clock.speed}`}
        </strong>
      )}
      {next === undefined ? (
        <span className={css['quiet']}>{say('noService')}</span>
      ) : (
        <span>
          <span className={css['quiet']}>{say('service')}</span> {figures.time(next)} <span className={css['quiet']}>{say('in')}</span>{' '}
          {figures.span((next - nowMs) / 1000)}
        </span>
      )}
      <Wind weather={state.weather} planTopDeg={state.yard.planTopDeg} arrowPx={arrowPx} />
    </header>
  );
}
