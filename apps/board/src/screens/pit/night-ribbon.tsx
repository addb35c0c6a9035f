import type { FirePage } from '@stokehold/domain/contract';
import { useEffect, useRef } from 'react';
import { HourLines, HOURS_PX } from '../../parts/hour-lines.js';
import { lineOf } from '../../parts/line-of.js';
import picture from '../../parts/picture.module.css';
import { useWidth } from '../../parts/use-width.js';
import { usePitWords } from '../../words/pit.js';
import { nightRibbonShape, type NightRibbonShape } from './night-ribbon-shape.js';
import css from './pit.module.css';

const LEAST_PX_AN_HOUR = 72;
const HEIGHT_PX = 260;
const HOUR_MS = 3_600_000;
/** What a forecast says of the time to come is drawn so far. */
const AHEAD_MS = 1.5 * HOUR_MS;

interface NightRibbonProps {
  readonly page: FirePage;
  readonly nowMs: number;
  readonly zone: string;
}

/** The whole night of one fire on one ribbon: what was forecast at each check, and over it what came. */
export function NightRibbon({ page, nowMs, zone }: NightRibbonProps) {
  const say = usePitWords();
  const { ref, width: place } = useWidth<HTMLDivElement>(1200);
  const fromMs = Date.parse(page.night?.from ?? page.line[0]?.at ?? '');
  const runs = page.night ? nowMs < Date.parse(page.night.until) + HOUR_MS : false;
  const lastMs = Math.max(Date.parse(page.line.at(-1)?.at ?? page.night?.from ?? ''), fromMs + HOUR_MS);
  const untilMs = runs ? Math.max(lastMs, nowMs) + AHEAD_MS : lastMs;
  const width = Math.max(place, Math.round(((untilMs - fromMs) / HOUR_MS) * LEAST_PX_AN_HOUR));
  const shape = nightRibbonShape({ page, fromMs, untilMs, width, height: HEIGHT_PX });
  const x = (ms: number) => ((ms - fromMs) / (untilMs - fromMs)) * width;
  useOpenAtEnd(ref, runs ? x(nowMs) : width);
  return (
    <div ref={ref} className={css['ribbon']} tabIndex={0} role="group" aria-label={say('picture.label')}>
      <svg width={width} height={HEIGHT_PX + HOURS_PX} role="img" aria-label={say('picture.said', { count: page.told.length })}>
        <HourLines fromMs={fromMs} untilMs={untilMs} width={width} height={HEIGHT_PX} zone={zone} />
        <Drawn shape={shape} width={width} />
        {runs && <path d={`M${x(nowMs)} 0V${HEIGHT_PX}`} stroke="var(--strong)" strokeWidth="3" />}
      </svg>
    </div>
  );
}

function Drawn({ shape, width }: { readonly shape: NightRibbonShape; readonly width: number }) {
  const { band, told, outside, setBacks } = shape;
  return (
    <>
      <rect x="0" y={band.top} width={width} height={band.bottom - band.top} fill="var(--band)" />
      <path d={`M0 ${band.top}H${width}M0 ${band.bottom}H${width}`} stroke="var(--band-edge)" strokeWidth="1.5" />
      {told.map(({ checkId, fan, middle }) => (
        <g key={checkId}>
          <path d={fan.length > 2 ? `${lineOf(fan)}Z` : ''} fill="var(--fan)" opacity="0.42" />
          <path d={lineOf(middle)} fill="none" stroke="var(--mark)" strokeWidth="2" strokeDasharray="7 5" />
        </g>
      ))}
      {shape.line.map(({ measured, points }, nth) => (
        <path key={nth} d={lineOf(points)} fill="none" stroke={measured ? 'var(--strong)' : 'var(--mark)'} strokeWidth={measured ? 3 : 2} strokeDasharray={measured ? undefined : '2 5'} strokeLinejoin="round" />
      ))}
      {outside.map(({ x, width: wide }) => (
        <path key={x} d={`M${x} ${HEIGHT_PX - 24}v-7h${wide}v7`} fill="none" stroke="var(--soon)" strokeWidth="3" />
      ))}
      {told.map(({ checkId, x }) => (
        <path key={checkId} d={`M${x - 9} ${HEIGHT_PX - 2}h18l-9 -16z`} fill="var(--mark)" />
      ))}
      {setBacks.map((x) => (
        <path key={x} d={`M${x - 8} 10h16M${x} 4v${HEIGHT_PX - 8}`} stroke="var(--wood)" strokeWidth="2.5" />
      ))}
    </>
  );
}

/** Where the ribbon is wider than its place, it opens at its last hours. */
function useOpenAtEnd(ref: { readonly current: HTMLDivElement | null }, endX: number): void {
  const done = useRef(false);
  useEffect(() => {
    const place = ref.current;
    if (done.current || !place || place.scrollWidth <= place.clientWidth) return;
    done.current = true;
    place.scrollLeft = endX - place.clientWidth * 0.72;
  }, [ref, endX]);
}

const LEGEND = ['line', 'estimated', 'fan', 'band', 'check', 'outside'] as const;

/** What the marks of the ribbon mean. */
export function RibbonLegend() {
  const say = usePitWords();
  return (
    <ul className={picture['legend']}>
      {LEGEND.map((what) => (
        <li key={what}>
          <svg width="34" height="20" viewBox="0 0 34 20" aria-hidden="true">
            {what === 'line' && <path d="M1 10h32" stroke="var(--strong)" strokeWidth="3" />}
            {what === 'estimated' && <path d="M1 10h32" stroke="var(--mark)" strokeWidth="2" strokeDasharray="2 5" />}
            {what === 'fan' && (
              <>
                <path d="M1 10 33 2v16z" fill="var(--fan)" opacity="0.42" />
                <path d="M1 10h32" stroke="var(--mark)" strokeWidth="2" strokeDasharray="7 5" />
              </>
            )}
            {what === 'band' && <rect y="3" width="34" height="14" fill="var(--band)" stroke="var(--band-edge)" />}
            {what === 'check' && <path d="M8 18h18l-9 -16z" fill="var(--mark)" />}
            {what === 'outside' && <path d="M3 15v-7h28v7" fill="none" stroke="var(--soon)" strokeWidth="3" />}
          </svg>
          {say(`legend.${what}`)}
        </li>
      ))}
    </ul>
  );
}
