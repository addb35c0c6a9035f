import { lineOf } from './line-of.js';
import type { RibbonShape } from './ribbon-shape.js';

interface RibbonProps {
  readonly shape: RibbonShape;
  readonly width: number;
  readonly height: number;
  /** The colour of the triangle where somebody looks next. */
  readonly next: string;
  readonly title?: string;
}

/** One ribbon of time: the band, the line so far, the fan of what may come, a triangle where somebody looked or will look. */
export function Ribbon({ shape, width: w, height: h, next, title }: RibbonProps) {
  const { nowX, band, past, fan, middle, checks, due, latest, tasks } = shape;
  const last = past.at(-1);
  return (
    <svg viewBox={`0 0 ${w} ${h}`} width={w} height={h} role={title ? 'img' : undefined} aria-label={title} aria-hidden={!title}>
      <rect x="0" y={band.top} width={w} height={band.bottom - band.top} fill="var(--band)" />
      <path d={`M0 ${band.top}H${w}M0 ${band.bottom}H${w}`} stroke="var(--band-edge)" strokeWidth="1.5" />
      <path d={fan.length > 2 ? `${lineOf(fan)}Z` : ''} fill="var(--fan)" opacity="0.42" />
      <path d={lineOf(middle)} fill="none" stroke="var(--mark)" strokeWidth="3" />
      <path d={lineOf(past)} fill="none" stroke="var(--text)" strokeWidth="4" strokeLinejoin="round" />
      <path d={`M${nowX} 4V${h - 4}`} stroke="var(--strong)" strokeWidth="3" />
      {last && <circle cx={last[0]} cy={last[1]} r="8" fill="var(--strong)" />}
      {checks.map((x) => (
        <path key={x} d={`M${x - 9} ${h - 3}h18l-9 -16z`} fill="var(--mark)" />
      ))}
      {tasks.map((x) => (
        <path key={x} d={`M${x} 4l10 10l-10 10l-10 -10z`} fill="none" stroke="var(--text)" strokeWidth="3" />
      ))}
      {due !== null && latest !== null && <path d={`M${due} ${h - 4}H${Math.max(due, latest)}`} stroke={next} strokeWidth="5" />}
      {due !== null && <path d={`M${Math.max(13, due) - 13} ${h - 2}h26l-13 -25z`} fill={next} />}
    </svg>
  );
}
