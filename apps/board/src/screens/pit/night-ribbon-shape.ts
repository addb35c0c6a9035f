import type { FirePage } from '@stokehold/domain/contract';

type Point = readonly [x: number, y: number];

export interface ToldShape {
  readonly checkId: string;
  readonly x: number;
  /** Between the tenth and the ninetieth of a hundred courses, as one closed outline, until somebody looked again. */
  readonly fan: readonly Point[];
  readonly middle: readonly Point[];
}
export interface NightRibbonShape {
  readonly band: { readonly top: number; readonly bottom: number };
  /** The line as it was, in pieces: `measured` by probes or by hand, else estimated. */
  readonly line: readonly { readonly measured: boolean; readonly points: readonly Point[] }[];
  readonly told: readonly ToldShape[];
  /** Stretches in which what came lay outside the fan told for it. */
  readonly outside: readonly { readonly x: number; readonly width: number }[];
  readonly setBacks: readonly number[];
}

export interface NightRibbonOf {
  readonly page: FirePage;
  readonly fromMs: number;
  readonly untilMs: number;
  readonly width: number;
  readonly height: number;
}

/** From the middle of the band to the ribbon's edge, K: twice as far as on the wall, since a whole night swings wider than an hour. */
const REACH_K = 32;
const EDGE_PX = 4;
/** Two points further apart than this are not one line. */
const GAP_MS = 7 * 60_000;
const MINUTE_MS = 60_000;

/** Where everything on the ribbon of one fire's night lies: the band, what came, and what was forecast at each check. */
export function nightRibbonShape({ page, fromMs, untilMs, width, height }: NightRibbonOf): NightRibbonShape {
  const band = page.night?.band ?? { lowC: 115, highC: 125 };
  const middleC = (band.lowC + band.highC) / 2;
  const x = (ms: number) => ((ms - fromMs) / (untilMs - fromMs)) * width;
  const y = (tempC: number) => Math.min(height - EDGE_PX, Math.max(EDGE_PX, height / 2 - ((tempC - middleC) / REACH_K) * (height / 2)));
  const ends = page.told.map((_, nth) => endOf(page, nth, untilMs));
  return {
    band: { top: y(band.highC), bottom: y(band.lowC) },
    line: pieces(page.line, (at, tempC) => [x(at), y(tempC)]),
    told: page.told.map(({ checkId, lookedAt, fan }, nth) => {
      const fanFrom = Date.parse(fan.from);
      const course = (temps: readonly number[]): Point[] =>
        temps.map((tempC, n) => [fanFrom + n * fan.stepS * 1000, tempC] as const).filter(([at]) => at <= ends[nth]!).map(([at, tempC]) => [x(at), y(tempC)]);
      return { checkId, x: x(Date.parse(lookedAt)), fan: [...course(fan.p90), ...course(fan.p10).reverse()], middle: course(fan.p50) };
    }),
    outside: outsideOf(page, ends).map(({ from, until }) => ({ x: x(from), width: Math.max(2, x(until) - x(from)) })),
    setBacks: page.learned.setBacks.map(({ at }) => Date.parse(at)).filter((at) => at >= fromMs && at <= untilMs).map(x),
  };
}

/** A forecast stands until the next one is made; the last until its own end. */
function endOf(page: FirePage, nth: number, untilMs: number): number {
  const told = page.told[nth]!;
  const next = page.told[nth + 1];
  const own = Date.parse(told.fan.from) + (told.fan.p50.length - 1) * told.fan.stepS * 1000;
  return Math.min(own, next ? Date.parse(next.fan.from) : untilMs);
}

function pieces(line: FirePage['line'], place: (at: number, tempC: number) => Point): NightRibbonShape['line'] {
  const all: { measured: boolean; points: Point[] }[] = [];
  let lastAt = -Infinity;
  for (const { at: iso, tempC, measured } of line) {
    const at = Date.parse(iso);
    const open = all.at(-1);
    const point = place(at, tempC);
    const joins = open !== undefined && at - lastAt <= GAP_MS;
    if (joins && open.measured !== measured) {
      open.points.push(point);
      all.push({ measured, points: [point] });
    } else if (joins) open.points.push(point);
    else all.push({ measured, points: [point] });
    lastAt = at;
  }
  return all;
}

/** What the fan of a forecast says for an instant, straight between its points; undefined outside it. */
export function fanAt({ fan }: Pick<FirePage['told'][number], 'fan'>, atMs: number): { readonly p10: number; readonly p90: number } | undefined {
  const place = (atMs - Date.parse(fan.from)) / (fan.stepS * 1000);
  const below = Math.floor(place);
  const [low, lowNext, high, highNext] = [fan.p10[below], fan.p10[below + 1], fan.p90[below], fan.p90[below + 1]];
  if (low === undefined || high === undefined) return undefined;
  const share = place - below;
  if (share === 0 || lowNext === undefined || highNext === undefined) return share === 0 ? { p10: low, p90: high } : undefined;
  return { p10: low + share * (lowNext - low), p90: high + share * (highNext - high) };
}

function outsideOf(page: FirePage, ends: readonly number[]): { readonly from: number; readonly until: number }[] {
  const stretches: { from: number; until: number }[] = [];
  for (const { at: iso, tempC, measured } of page.line) {
    const at = Date.parse(iso);
    const nth = page.told.filter(({ fan }) => Date.parse(fan.from) < at).length - 1;
    const told = page.told[nth];
    const fan = measured && told && at <= ends[nth]! ? fanAt(told, at) : undefined;
    if (!fan || (tempC >= fan.p10 && tempC <= fan.p90)) continue;
    const open = stretches.at(-1);
    if (open && at - open.until <= GAP_MS) open.until = at;
    else stretches.push({ from: at - MINUTE_MS, until: at });
  }
  return stretches;
}
