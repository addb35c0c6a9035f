import type { Mark } from './lanes.js';
import css from './night-picture.module.css';

/** Later than this is shown as late. */
export const LATE_FROM_S = 5 * 60;

interface MarkProps {
  readonly mark: Mark;
  readonly x: number;
  readonly dueX: number;
  /** The line it stands on. */
  readonly y: number;
  readonly title: string;
  readonly chosen?: boolean;
}

/** A triangle for a look at a fire, a square for a task; a late one is taller and trails a line from when it was due. */
export function MarkShape({ mark, x, dueX, y, title, chosen = false }: MarkProps) {
  const late = mark.lateS >= LATE_FROM_S;
  const look = [css['mark'], mark.past && css['past'], late && css['late'], mark.pastLatest && css['pastLatest']].filter(Boolean).join(' ');
  const half = late ? 7 : 5.5;
  const high = late ? 17 : 11;
  const shape = mark.kind === 'check' ? `M${x - half} ${y}h${2 * half}l${-half} ${-high}z` : `M${x - half} ${y}v${-2 * half}h${2 * half}v${2 * half}z`;
  return (
    <g className={look}>
      <title>{title}</title>
      {late && <path className={css['trail']} d={`M${dueX} ${y}H${x}`} />}
      {mark.pinned && <path className={css['pin']} d={`M${x} ${y - high - 2}v-5m-3 0h6`} />}
      {chosen && <circle className={css['chosen']} cx={x} cy={y - high / 2} r={13} />}
      <path d={shape} />
      {mark.pastLatest && <path className={css['strike']} d={`M${x} ${y - high - 9}v5m0 2.4v1.6`} />}
    </g>
  );
}
