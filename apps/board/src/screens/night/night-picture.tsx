import type { EpochS } from '@stokehold/domain/quantity';
import { useEffect, useRef, type ReactNode } from 'react';
import type { ServiceSettings } from '@stokehold/domain/contract';
import { fromIso } from '@stokehold/domain/quantity';
import { useWidth } from '../../parts/use-width.js';
import type { Figures } from '../../units/figures.js';
import { useNightWords } from '../../words/night.js';
import type { PersonLane, PitLane, Span } from './lanes.js';
import css from './night-picture.module.css';
import { PersonLaneRow } from './person-lane.js';
import { PitLaneRow } from './pit-lane.js';
import { ticksOf, timeScale, type Tick, type TimeScale } from './time-scale.js';

/** What every lane is drawn with. */
export interface Drawing {
  readonly scale: TimeScale;
  readonly now: EpochS;
  readonly figures: Figures;
  /** The lines that run through all lanes: hours, services, now. */
  readonly lines: (heightPx: number) => ReactNode;
  /** The picture is wider than its place: what is named at its begin is named at now again. */
  readonly scrolls: boolean;
}

interface NightPictureProps {
  readonly span: Span;
  readonly people: readonly PersonLane[];
  readonly pits: readonly PitLane[];
  readonly services: readonly ServiceSettings[];
  readonly now: EpochS;
  readonly zone: string;
  readonly figures: Figures;
  readonly nameOfPit: (id: string | null) => string | undefined;
}

/** The whole night on one sheet: who, which fires, what lies on them, and where it all stands now. */
export function NightPicture(props: NightPictureProps) {
  const { span, people, pits, services, now, zone, figures, nameOfPit } = props;
  const say = useNightWords();
  const { ref, width } = useWidth<HTMLDivElement>(1200);
  const gutter = width < 700 ? 92 : 132;
  const scale = timeScale(span, Math.max(width - gutter, 200));
  const ticks = ticksOf(scale, zone);
  const shown = services.filter(({ readyBy }) => fromIso(readyBy) > span.from && fromIso(readyBy) <= span.until);
  const lines = (heightPx: number) => <Lines {...{ scale, ticks, now, heightPx }} services={shown} />;
  const drawing: Drawing = { scale, now, figures, lines, scrolls: scale.widthPx > width - gutter };
  useScrollToNow(ref, scale, now);
  return (
    <div ref={ref} className={css['picture']} style={{ gridTemplateColumns: `${gutter}px ${scale.widthPx}px` }} tabIndex={0} role="group" aria-label={say('picture.label')}>
      <div className={css['corner']} />
      <TimeRow {...{ scale, ticks, figures }} services={shown} now={now} />
      {people.map((lane) => (
        <PersonLaneRow key={lane.personId} {...{ lane, drawing, nameOfPit }} />
      ))}
      <div className={css['gap']} />
      {pits.map((lane) => (
        <PitLaneRow key={lane.pitId} {...{ lane, drawing }} />
      ))}
    </div>
  );
}

/** Where the picture is wider than its place, it opens at now. */
function useScrollToNow(ref: { readonly current: HTMLDivElement | null }, scale: TimeScale, now: EpochS): void {
  const done = useRef(false);
  useEffect(() => {
    const place = ref.current;
    if (done.current || !place || place.scrollWidth <= place.clientWidth) return;
    done.current = true;
    place.scrollLeft = scale.xOf(now) - place.clientWidth / 4;
  }, [ref, scale, now]);
}

interface LinesProps {
  readonly scale: TimeScale;
  readonly ticks: readonly Tick[];
  readonly services: readonly ServiceSettings[];
  readonly now: EpochS;
  readonly heightPx: number;
}

function Lines({ scale, ticks, services, now, heightPx }: LinesProps) {
  return (
    <g aria-hidden="true">
      {ticks.map(({ at, x, clocksByS }) => (
        <path key={at} className={clocksByS === 0 ? css['hour'] : css['clocks']} d={`M${x} 0V${heightPx}`} />
      ))}
      {services.map(({ id, readyBy }) => (
        <path key={id} className={css['service']} d={`M${scale.xOf(fromIso(readyBy))} 0V${heightPx}`} />
      ))}
      <path className={css['now']} d={`M${scale.xOf(now)} 0V${heightPx}`} />
    </g>
  );
}

const TIME_ROW_PX = 66;

function TimeRow({ scale, ticks, services, now, figures }: Omit<LinesProps, 'heightPx'> & { readonly figures: Figures }) {
  const say = useNightWords();
  const nowX = scale.xOf(now);
  const nowShown = now >= scale.span.from && now <= scale.span.until;
  return (
    <svg className={css['times']} width={scale.widthPx} height={TIME_ROW_PX} role="img" aria-label={say('picture.times')}>
      {ticks.map(({ at, x, again, clocksByS }) => (
        <g key={at}>
          <path className={clocksByS === 0 ? css['hour'] : css['clocks']} d={`M${x} 52V${TIME_ROW_PX}`} />
          <text x={x} y={44} className={css['hourName']} textAnchor={x < 20 ? 'start' : x > scale.widthPx - 20 ? 'end' : 'middle'}>
            {figures.time(at * 1000)}
          </text>
          {again && <text x={x} y={62} className={css['small']} textAnchor="middle">{say('picture.again')}</text>}
          {clocksByS !== 0 && (
            <text x={x} y={20} className={css['hourName']} textAnchor="middle">
              {say(clocksByS > 0 ? 'picture.clocksForward' : 'picture.clocksBack')}
            </text>
          )}
        </g>
      ))}
      {services.map((service) => {
        const x = scale.xOf(fromIso(service.readyBy));
        return (
          <g key={service.id}>
            <path className={css['service']} d={`M${x} 24V${TIME_ROW_PX}`} />
            <text x={x - 6} y={20} className={css['serviceName']} textAnchor="end">
              {service.name} {figures.time(service.readyBy)}
            </text>
          </g>
        );
      })}
      {nowShown && (
        <g>
          <rect className={css['nowPlate']} x={nowX - 30} y={24} width={60} height={26} rx={6} />
          <text x={nowX} y={43} className={css['nowTime']} textAnchor="middle">
            {figures.time(now * 1000)}
          </text>
          <path className={css['now']} d={`M${nowX} 50V${TIME_ROW_PX}`} />
        </g>
      )}
    </svg>
  );
}
