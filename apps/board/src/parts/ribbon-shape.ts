import type { PitView } from '@stokehold/domain/contract';

export const BACK_MIN = 60;
export const AHEAD_MIN = 90;
/** From the middle of the band to the ribbon's edge, K: a pit that is 36 °F off still shows where it stands. */
const REACH_K = 20;

type Point = readonly [x: number, y: number];

export interface RibbonShape {
  readonly nowX: number;
  readonly band: { readonly top: number; readonly bottom: number };
  readonly past: readonly Point[];
  /** The fan between the tenth and the ninetieth of a hundred courses, as one closed outline. */
  readonly fan: readonly Point[];
  readonly middle: readonly Point[];
  readonly checks: readonly number[];
  readonly due: number | null;
  readonly latest: number | null;
  readonly tasks: readonly number[];
}

interface RibbonOf {
  readonly view: PitView;
  readonly band: { readonly lowC: number; readonly highC: number };
  readonly tasksAt: readonly string[];
  readonly nowMs: number;
  readonly width: number;
  readonly height: number;
}

/** Where everything on a pit's ribbon of time lies: an hour back, ninety minutes ahead, temperatures around the band. */
export function ribbonShape({ view, band, tasksAt, nowMs, width, height }: RibbonOf): RibbonShape {
  const nowX = (width * BACK_MIN) / (BACK_MIN + AHEAD_MIN);
  const x = (ms: number) => nowX + ((ms - nowMs) / 60_000) * (width / (BACK_MIN + AHEAD_MIN));
  const middleC = (band.lowC + band.highC) / 2;
  const y = (tempC: number) => {
    const at = height / 2 - ((tempC - middleC) / REACH_K) * (height / 2);
    return Math.min(height - 3, Math.max(3, at));
  };
  const inside = (at: number) => at >= 0 && at <= width;
  const xsOf = (instants: readonly string[]) => instants.map((at) => x(Date.parse(at))).filter(inside);

  const past = view.past.map(({ at, tempC }): Point => [x(Date.parse(at)), y(tempC)]).filter(([at]) => at >= 0 && at <= nowX + 1);
  const forecast = view.fire?.forecast;
  const course = (temps: readonly number[]): Point[] =>
    forecast
      ? temps.map((tempC, n): Point => [x(Date.parse(forecast.from) + n * forecast.stepS * 1000), y(tempC)]).filter(([at]) => at >= nowX - 1 && at <= width)
      : [];
  const upper = course(forecast?.p90 ?? []);
  const lower = course(forecast?.p10 ?? []);
  const dueX = view.due ? x(Date.parse(view.due.dueAt)) : null;
  const latestX = view.due ? x(Date.parse(view.due.latestSafeAt)) : null;
  return {
    nowX,
    band: { top: y(band.highC), bottom: y(band.lowC) },
    past,
    fan: [...upper, ...[...lower].reverse()],
    middle: course(forecast?.p50 ?? []),
    checks: xsOf(view.checks.map((check) => check.seenAt)),
    due: dueX === null || dueX > width ? null : Math.max(0, dueX),
    latest: latestX === null ? null : Math.min(width, Math.max(0, latestX)),
    tasks: xsOf(tasksAt),
  };
}
