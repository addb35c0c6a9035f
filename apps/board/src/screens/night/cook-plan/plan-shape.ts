import type { CookPlanView } from '@stokehold/domain/contract';

/** A stretch of the drawing, in parts of its width. */
export interface Stretch {
  readonly from: number;
  readonly width: number;
}
export interface CookBar extends Stretch {
  readonly cookId: string;
  readonly likely: number;
  readonly atRisk: boolean;
  readonly row: number;
}
export interface PitBars {
  readonly pitId: string;
  readonly fire: Stretch;
  readonly bars: readonly CookBar[];
  readonly rows: number;
}
export interface PlanShape {
  readonly fromMs: number;
  readonly untilMs: number;
  readonly pits: readonly PitBars[];
  readonly services: readonly { readonly serviceId: string; readonly at: number }[];
  /** Whole hours of the yard's day that are marked, as a part of the width and as an instant. */
  readonly hours: readonly { readonly at: number; readonly ms: number }[];
}

const HOUR_MS = 3_600_000;
/** Hours between marks, so that no more stand than there is room for. */
const MARKS_H = [1, 2, 3, 4, 6, 12, 24];

/** Each fire with its cooks as bars, cooks that overlap one below the other, and the services as lines. */
export function shapeOf(plan: CookPlanView, mostMarks = 12): PlanShape {
  const times = [...plan.burns.flatMap(({ lightAt, firstOnAt, lastOffBy }) => [lightAt ?? firstOnAt, lastOffBy]), ...plan.starts.map(({ onAt }) => onAt), ...plan.services.map(({ readyBy }) => readyBy)].map((at) => Date.parse(at));
  const fromMs = Math.floor(Math.min(...times) / HOUR_MS) * HOUR_MS;
  const untilMs = Math.ceil(Math.max(...times) / HOUR_MS) * HOUR_MS;
  const place = (at: string) => (Date.parse(at) - fromMs) / (untilMs - fromMs);
  const stretch = (from: string, until: string): Stretch => ({ from: place(from), width: place(until) - place(from) });
  const every = (MARKS_H.find((hours) => (untilMs - fromMs) / HOUR_MS / hours <= mostMarks) ?? 24) * HOUR_MS;
  return {
    fromMs, untilMs,
    pits: plan.burns.map(({ pitId, lightAt, firstOnAt, lastOffBy }) => {
      const bars = rowed(plan.starts.filter((one) => one.pitId === pitId).map((one) => ({ cookId: one.cookId, ...stretch(one.onAt, one.offBy), likely: place(one.likelyOffAt), atRisk: one.reason === 'as-early-as-can-be' })));
      return { pitId, fire: stretch(lightAt ?? firstOnAt, lastOffBy), bars, rows: 1 + Math.max(0, ...bars.map(({ row }) => row)) };
    }),
    services: plan.services.map(({ serviceId, readyBy }) => ({ serviceId, at: place(readyBy) })),
    hours: Array.from({ length: Math.floor((untilMs - fromMs) / every) + 1 }, (_, i) => ({ ms: fromMs + i * every, at: (i * every) / (untilMs - fromMs) })),
  };
}

/** The first row in which a bar meets no other. */
function rowed(bars: readonly Omit<CookBar, 'row'>[]): readonly CookBar[] {
  const ends: number[] = [];
  return [...bars].sort((a, b) => a.from - b.from).map((bar) => {
    const free = ends.findIndex((end) => end <= bar.from + 1e-9);
    const row = free >= 0 ? free : ends.length;
    ends[row] = bar.from + bar.width;
    return { ...bar, row };
  });
}

const STEP_MS = 900_000;
/** Where a bar is dropped: whole quarter hours from where it was. */
export const droppedAt = (onAt: string, movedFrac: number, { fromMs, untilMs }: Pick<PlanShape, 'fromMs' | 'untilMs'>): number =>
  Date.parse(onAt) + Math.round((movedFrac * (untilMs - fromMs)) / STEP_MS) * STEP_MS;

/** Stretches of hours in which more is asked of the crew than may be planned. */
export function shortHours(plan: Pick<CookPlanView, 'crewHours'>): readonly { readonly fromMs: number; readonly untilMs: number; readonly neededS: number; readonly thereS: number }[] {
  const found: { fromMs: number; untilMs: number; neededS: number; thereS: number }[] = [];
  for (const { from, neededS, thereS } of plan.crewHours) {
    if (neededS <= thereS) continue;
    const fromMs = Date.parse(from);
    const last = found.at(-1);
    if (last?.untilMs === fromMs) Object.assign(last, { untilMs: fromMs + HOUR_MS, neededS: last.neededS + neededS, thereS: last.thereS + thereS });
    else found.push({ fromMs, untilMs: fromMs + HOUR_MS, neededS, thereS });
  }
  return found;
}
