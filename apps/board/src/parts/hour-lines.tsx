import { epochS } from '@stokehold/domain/quantity';
import { fullHours } from '../units/typed-wall-time.js';
import { useFigures } from '../units/use-figures.js';
import css from './picture.module.css';

/** Room below a picture for its hours. */
export const HOURS_PX = 30;
const LEAST_PX_A_LABEL = 64;

interface HourLinesProps {
  readonly fromMs: number;
  readonly untilMs: number;
  readonly width: number;
  /** Of the picture, without the room for the hours. */
  readonly height: number;
  readonly zone: string;
}

/** The full hours of the yard as upright lines with their names below; as many as there is room to name. */
export function HourLines({ fromMs, untilMs, width, height, zone }: HourLinesProps) {
  const figures = useFigures();
  const x = (ms: number) => ((ms - fromMs) / (untilMs - fromMs)) * width;
  const all = fullHours(epochS(fromMs / 1000), epochS(untilMs / 1000), zone);
  const every = Math.max(1, Math.ceil((all.length * LEAST_PX_A_LABEL) / width));
  return all.filter((_, nth) => nth % every === 0).map(({ at }) => (
    <g key={at}>
      <path d={`M${x(at * 1000)} 0V${height}`} stroke="var(--line)" strokeWidth="1" />
      <text className={css['word']} x={Math.min(width - 24, Math.max(24, x(at * 1000)))} y={height + 22} textAnchor="middle">
        {figures.time(at * 1000)}
      </text>
    </g>
  ));
}
