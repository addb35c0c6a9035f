import { type Course, courseOf, cutInto, evenPiece, fallsTo, type Piece, type Stay } from './after-pit.js';
import type { Composition } from './cut.js';
import { fToC } from './history.js';
import type { CoolingLimit } from './limits/limit.js';

/** How a course keeps a cooling limit: seconds each stage took and whether all were kept. */
export interface CoolingCourse {
  readonly kept: boolean;
  /** For each stage, from its upper to its lower end; undefined when the course ends before. */
  readonly stagesS: readonly (number | undefined)[];
}

/** A reckoned course held against a limit, by its warmest part. Source: the limit. */
export function courseKeeps(course: Pick<Course, 'atS' | 'warmestC'>, limit: CoolingLimit): CoolingCourse {
  const stagesS = limit.stages.map(({ fromF, toF }) => {
    const from = fallsTo(course, course.warmestC, fToC(fromF));
    const to = fallsTo(course, course.warmestC, fToC(toF));
    return from === undefined || to === undefined ? undefined : to - from;
  });
  return { stagesS, kept: limit.stages.every(({ withinS }, i) => stagesS[i] !== undefined && stagesS[i] <= withinS) };
}

/** Reckoned slower than this share of the limit is not counted on: the model leaves out trays, wraps and neighbours. Source: our choice. */
const MARGIN = 0.9;
const tighter = (limit: CoolingLimit): CoolingLimit => ({ ...limit, stages: limit.stages.map((stage) => ({ ...stage, withinS: MARGIN * stage.withinS })) });

/**
 * The thickest pieces that cool in time from a temperature of all parts: flat, both sides in the open. Source: after-pit.ts, a tenth of each
 * stage kept back.
 *
 * @param ask.fromC  their temperature when they go in, 57 to 100 °C
 * @returns m; undefined when not even 1 cm does
 */
export function thickestThatCools(limit: CoolingLimit, ask: { readonly composition: Composition; readonly fromC: number; readonly stay: Stay }): number | undefined {
  const keeps = (thicknessM: number) =>
    courseKeeps(courseOf(evenPiece({ composition: ask.composition, halfM: thicknessM / 2, exponent: 0, tempC: ask.fromC }), [ask.stay]), tighter(limit)).kept;
  if (!keeps(0.01)) return undefined;
  let [low, high] = [0.01, 0.3];
  for (let i = 0; i < 9; i++) {
    const middle = (low + high) / 2;
    if (keeps(middle)) low = middle;
    else high = middle;
  }
  return low;
}

export type PortionAdvice =
  | { readonly code: 'cools-whole' }
  /** Cut to `thicknessM` no later than `byS` after going in. */
  | { readonly code: 'cut-by'; readonly byS: number; readonly thicknessM: number }
  | { readonly code: 'cut-before-it-goes-in'; readonly thicknessM: number }
  | { readonly code: 'too-slow-even-cut'; readonly thicknessM: number };

/** Grain of the search for the time to cut, s. Source: our choice. */
const GRAIN_S = 600;

/**
 * When to portion so that cooling meets its limit: whole if it may, else the latest time at which cutting still does. Before the cut the
 * piece cools whole, afterwards each slice from the temperature of its warmest part.
 *
 * Source: after-pit.ts, a tenth of each stage kept back.
 *
 * @param ask.stay        where it cools; its time is how far is looked, 8 h and more
 * @param ask.thicknessM  of the slices
 */
export function whenToPortion(limit: CoolingLimit, ask: { readonly piece: Piece; readonly stay: Stay; readonly thicknessM: number }): PortionAdvice {
  const { piece, stay, thicknessM } = ask;
  const strict = tighter(limit);
  const cutAt = (byS: number) => {
    const before = courseOf(piece, [{ ...stay, forS: byS }]);
    const after = courseOf(cutInto(before.piece, thicknessM), [stay]);
    return courseKeeps({ atS: [...before.atS, ...after.atS.map((atS) => byS + atS)], warmestC: [...before.warmestC, ...after.warmestC] }, strict).kept;
  };
  if (courseKeeps(courseOf(piece, [stay]), strict).kept) return { code: 'cools-whole' };
  if (!cutAt(0)) return { code: 'too-slow-even-cut', thicknessM };
  let last = 0;
  while (last + GRAIN_S < stay.forS && cutAt(last + GRAIN_S)) last += GRAIN_S;
  return last === 0 ? { code: 'cut-before-it-goes-in', thicknessM } : { code: 'cut-by', byS: last, thicknessM };
}
