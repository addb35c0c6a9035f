import type { SeasoningView, WoodyardView, YardState } from '@stokehold/domain/contract';
import { useClock } from '../../live/use-clock.js';
import { useFigures } from '../../units/use-figures.js';
import { useWoodyardWords } from '../../words/woodyard.js';
import { curveShape } from './curve-shape.js';
import css from './forecast.module.css';

const SIZE = { width: 420, height: 96 };

/** The lots in the order in which to open them, each with its curve and the day it is ready. */
export function Drying({ view, state }: { readonly view: WoodyardView; readonly state: YardState }) {
  const say = useWoodyardWords();
  if (view.lots.length === 0) return <p>{say('noLots')}</p>;
  return (
    <>
      <ol className={css['drying']}>
        {view.lots.map((lot) => (
          <DryingLot key={lot.lotId} {...{ lot, state }} targetFrac={view.readyAtFrac} />
        ))}
      </ol>
      {view.isClimateAssumed && <p className={css['quiet']}>{say('climate.assumed')}</p>}
      <p className={css['quiet']}>{say('drying.estimate')}</p>
    </>
  );
}

function DryingLot({ lot, state, targetFrac }: { readonly lot: SeasoningView; readonly state: YardState; readonly targetFrac: number }) {
  const say = useWoodyardWords();
  const figures = useFigures();
  const nowMs = useClock();
  const name = state.wood.lots.find(({ id }) => id === lot.lotId)?.name ?? '';
  const moisture = say('drying.moisture', { percent: figures.percent(lot.moisture), spread: figures.count(lot.deviationFrac * 100) });
  return (
    <li>
      <div>
        <strong className={css['strong']}>{name}</strong>
        <br />
        <span className="figure">{moisture}</span>
        <br />
        {lot.state === 'ready' && <span>{say('drying.ready')}</span>}
        {lot.state === 'not-yet' && lot.readyAt && (
          <span className="figure">
            {say('drying.readyAt', { day: figures.date(lot.readyAt) })}
            <span className={css['quiet']}> {say('drying.between', { from: lot.earliestAt ? figures.date(lot.earliestAt) : '…', until: lot.latestAt ? figures.date(lot.latestAt) : '…' })}</span>
          </span>
        )}
        {lot.state === 'not-within-three-years' && <span className={css['soon']}>{say('drying.never')}</span>}
      </div>
      <Curve {...{ lot, nowMs, targetFrac }} spoken={`${name}: ${moisture}`} />
    </li>
  );
}

/** Moisture over time: what meters showed, the forecast with its spread, good wood as a band, now and ready as upright lines. */
function Curve({ lot, nowMs, targetFrac, spoken }: { readonly lot: SeasoningView; readonly nowMs: number; readonly targetFrac: number; readonly spoken: string }) {
  const figures = useFigures();
  const { width, height } = SIZE;
  const shape = curveShape(lot, { nowMs, width, height, targetFrac });
  return (
    <svg className={css['curve']} viewBox={`0 0 ${width} ${height + 20}`} role="img" aria-label={spoken}>
      <rect x="0" y={shape.targetY} width={width} height={Math.max(0, height - shape.targetY)} className={css['good']} />
      {shape.ready && <rect x={shape.ready.fromX} y={height - 8} width={Math.max(2, shape.ready.untilX - shape.ready.fromX)} height="8" className={css['window']} />}
      <path d={shape.band} className={css['band']} />
      <path d={shape.line} className={css['line']} />
      {shape.readings.map(({ x, y, atLeast }) => (atLeast ? <path key={x} d={`M${x - 5} ${y + 4}L${x} ${y - 5}L${x + 5} ${y + 4}Z`} className={css['reading']} /> : <circle key={x} cx={x} cy={y} r="4" className={css['reading']} />))}
      <path d={`M${shape.nowX} 0V${height}`} className={css['nowLine']} />
      {shape.ready && <path d={`M${shape.ready.x} 8V${height}`} className={css['readyLine']} />}
      <text x="2" y={Math.max(12, shape.targetY - 3)}>{figures.percent(targetFrac)}</text>
      {shape.months.map(({ x, at }) => (
        <text key={at} x={x} y={height + 15} textAnchor="middle">{figures.month(at)}</text>
      ))}
    </svg>
  );
}
