import type { SeasoningView } from '@stokehold/domain/contract';

export interface CurveShape {
  /** Path of the mean, and outline of one deviation either way. */
  readonly line: string;
  readonly band: string;
  readonly readings: readonly { readonly x: number; readonly y: number; readonly atLeast: boolean }[];
  readonly nowX: number;
  readonly targetY: number;
  /** Where it is ready: likely, and the stretch from early to late; left out where that lies beyond the picture. */
  readonly ready: { readonly x: number; readonly fromX: number; readonly untilX: number } | undefined;
  /** First days of months, to write below. */
  readonly months: readonly { readonly x: number; readonly at: number }[];
}
const DAY_MS = 86_400_000;
const AHEAD_MS = 365 * DAY_MS;
const BACK_MS = 120 * DAY_MS;
const LEAST_TOP = 0.25;
const BOTTOM = 0.06;

/** A lot's moisture as a picture: four months back, a year ahead; 6 % at its foot. */
export function curveShape(lot: SeasoningView, { nowMs, width, height, targetFrac }: { readonly nowMs: number; readonly width: number; readonly height: number; readonly targetFrac: number }): CurveShape {
  const top = Math.min(0.8, Math.max(LEAST_TOP, ...lot.readings.map(({ moisture }) => moisture), ...lot.curve.map(({ moisture }) => moisture)) + 0.02);
  const x = (ms: number) => (width * (ms - (nowMs - BACK_MS))) / (AHEAD_MS + BACK_MS);
  const y = (moisture: number) => height - (height * (Math.min(top, Math.max(BOTTOM, moisture)) - BOTTOM)) / (top - BOTTOM);
  const place = (at: string, moisture: number) => `${x(Date.parse(at)).toFixed(1)} ${y(moisture).toFixed(1)}`;
  const shown = lot.curve.filter(({ at }) => Date.parse(at) <= nowMs + AHEAD_MS);
  const ms = (at: string | null) => (at === null ? undefined : Math.max(nowMs, Date.parse(at)));
  const [likely, early, late] = [ms(lot.readyAt), ms(lot.earliestAt), ms(lot.latestAt)];
  return {
    line: shown.map(({ at, moisture }, i) => `${i === 0 ? 'M' : 'L'}${place(at, moisture)}`).join(''),
    band: shown.length === 0 ? '' : `M${shown.map(({ at, high }) => place(at, high)).join('L')}L${[...shown].reverse().map(({ at, low }) => place(at, low)).join('L')}Z`,
    readings: lot.readings.filter(({ at }) => Date.parse(at) >= nowMs - BACK_MS).map(({ at, moisture, atLeast }) => ({ x: x(Date.parse(at)), y: y(moisture), atLeast })),
    nowX: x(nowMs), targetY: y(targetFrac),
    ready: likely === undefined || likely > nowMs + AHEAD_MS ? undefined : { x: x(likely), fromX: x(early ?? likely), untilX: Math.min(width, x(late ?? nowMs + AHEAD_MS)) },
    months: monthsFrom(nowMs - BACK_MS, nowMs + AHEAD_MS).map((at) => ({ x: x(at), at })),
  };
}

/** Every third first of a month between two instants, UTC. */
function monthsFrom(from: number, until: number): readonly number[] {
  const start = new Date(from);
  const firsts = Array.from({ length: 20 }, (_, i) => Date.UTC(start.getUTCFullYear(), start.getUTCMonth() + 1 + i, 1));
  return firsts.filter((at) => at < until && new Date(at).getUTCMonth() % 3 === 0);
}
