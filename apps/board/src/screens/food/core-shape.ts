import type { CookCourse } from '@stokehold/domain/contract';

type Point = readonly [x: number, y: number];

export interface CoreShape {
  readonly fromMs: number;
  readonly untilMs: number;
  /** Between the tenth and the ninetieth of a hundred courses, as one closed outline. */
  readonly fan: readonly Point[];
  readonly middle: readonly Point[];
  readonly readings: readonly { readonly id: string; readonly at: Point; readonly used: boolean }[];
  /** Height of the done temperature; absent where tenderness alone decides. */
  readonly doneY: number | undefined;
  readonly nowX: number | undefined;
}

const HOUR_MS = 3_600_000;
/** Coldest drawn, and room above the done temperature, °C. */
const FLOOR_C = 0;
const HEADROOM_K = 12;

/** The core's picture in pixels: the forecast, what was read, the temperature to reach. */
export function coreShape({ course, nowMs, width, height }: { readonly course: CookCourse; readonly nowMs: number; readonly width: number; readonly height: number }): CoreShape | undefined {
  const { core, cut, log } = course;
  if (!core || core.p50.length < 2) return undefined;
  const fromMs = Date.parse(core.from);
  const untilMs = Math.max(fromMs + (core.p50.length - 1) * core.stepS * 1000, nowMs + HOUR_MS / 2);
  const topC = Math.max(cut?.done.coreTempC ?? 0, ...core.p90, ...log.flatMap(({ tempC, verdict }) => (tempC !== null && verdict === 'used' ? [tempC] : []))) + HEADROOM_K;
  const x = (ms: number) => ((ms - fromMs) / (untilMs - fromMs)) * width;
  const y = (tempC: number) => height - ((Math.min(topC, Math.max(FLOOR_C, tempC)) - FLOOR_C) / (topC - FLOOR_C)) * height;
  const line = (values: readonly number[]) => values.map((tempC, i): Point => [x(fromMs + i * core.stepS * 1000), y(tempC)]);
  const shown = log.filter(({ kind, stage, tempC, corrected }) => kind === 'reading' && stage === 'cooking' && tempC !== null && !corrected);
  const doneC = cut?.done.coreTempC;
  return {
    fromMs, untilMs, fan: [...line(core.p90), ...line(core.p10).reverse()], middle: line(core.p50),
    readings: shown.map(({ id, at, tempC, verdict }) => ({ id, at: [x(Date.parse(at)), y(tempC ?? 0)], used: verdict === 'used' || verdict === 'probe-moved' })),
    doneY: doneC === null || doneC === undefined ? undefined : y(doneC),
    nowX: nowMs >= fromMs && nowMs <= untilMs ? x(nowMs) : undefined,
  };
}
