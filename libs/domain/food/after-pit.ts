import { clamp, type EpochS, requireRange } from '../quantity/index.js';
import { bodiesAt, CELLS, coreC, shapeMember, stepEnds } from './bodies.js';
import type { FoodCook } from './cook.js';
import type { Composition } from './cut.js';
import { doneS, halfOf, rollMember, workSurface } from './roll.js';
import { seeReadings } from './see-readings.js';
import { settleSurface, stepMember } from './step.js';
import { TRAIT_PLACE, TRAITS } from './prior.js';
import { tablesOf } from './tables.js';

/** Where food stands after the pit. */
export type Standing = 'bench' | 'insulated-box' | 'warm-cabinet' | 'chiller' | 'moving-chiller' | 'ice-bath';

/**
 * Heat that passes between food and what it stands in, all ways together, W/m2K: on the bench and in the box as in a worked
 * course (section 7 of the trade's physics, our fit), a chiller with its fan 15, without 8, iced water round a bag 100. Source: our choice.
 */
export const PASSES_W_PER_M2K: Readonly<Record<Standing, number>> = { bench: 10, 'insulated-box': 1.2, 'warm-cabinet': 10, chiller: 8, 'moving-chiller': 15, 'ice-bath': 100 };

/** One piece with the temperatures inside it, from the core out. */
export interface Piece {
  readonly composition: Composition;
  readonly halfM: number;
  readonly exponent: number;
  /** CELLS temperatures from the core out, °C. */
  readonly tempC: readonly number[];
}
/** A stretch of time somewhere. */
export interface Stay {
  readonly where: Standing;
  readonly airC: number;
  readonly forS: number;
}
/** The course of a piece after the pit; between two points it runs straight. */
export interface Course {
  readonly atS: readonly number[];
  readonly coreC: readonly number[];
  /** Warmest part, which decides cooling; coldest part, which decides hot holding. */
  readonly warmestC: readonly number[];
  readonly coldestC: readonly number[];
  readonly piece: Piece;
}

/** A piece of one temperature through and through. Source: none needed. */
export const evenPiece = (of: { readonly composition: Composition; readonly halfM: number; readonly exponent: number; readonly tempC: number }): Piece => ({
  ...of, tempC: new Array<number>(CELLS).fill(of.tempC),
});

/**
 * Rest, hold, cool: the profile that the pit left, with what stands round it changed, no water leaving (wrapped or covered).
 *
 * Source: step.ts without evaporation. Held to tests/published/food-after-pit.test.ts
 *
 * @param stays  in order; each 0 to 4 days, air -30 to 120 °C
 */
export function courseOf(piece: Piece, stays: readonly Stay[]): Course {
  const meat = tablesOf(piece.composition);
  const body = bodiesAt([piece.tempC[CELLS - 1]!], meat);
  shapeMember(body, 0, piece.halfM, piece.exponent);
  body.tempC.set(piece.tempC);
  const surface = workSurface();
  const course = { atS: [0], coreC: [coreC(body, 0)], warmestC: [Math.max(...piece.tempC)], coldestC: [Math.min(...piece.tempC)] };
  let fromS = 0;
  for (const { where, airC, forS } of stays) {
    requireRange('time of a stay (s)', forS, 0, 4 * 86_400);
    requireRange('air (°C)', airC, -30, 120);
    surface.airC = airC;
    surface.draughtWPerM2K = PASSES_W_PER_M2K[where];
    settleSurface(body, meat, 0, surface);
    const ends = stepEnds(piece.halfM, forS);
    for (let step = 1; step < ends.length; step++) {
      const endS = Math.min(ends[step]!, forS);
      if (endS <= ends[step - 1]!) continue;
      stepMember(body, meat, 0, endS - ends[step - 1]!, surface);
      const core = coreC(body, 0);
      course.atS.push(fromS + endS);
      course.coreC.push(core);
      course.warmestC.push(body.tempC.reduce((most, tempC) => Math.max(most, tempC), core));
      course.coldestC.push(body.tempC.reduce((least, tempC) => Math.min(least, tempC), body.surfaceC[0]!));
    }
    fromS += forS;
  }
  return { ...course, piece: { ...piece, tempC: [...body.tempC] } };
}

/** Highest core after the pit and when: the carry-over. Source: none needed. */
export function peakOf(course: Course): { readonly coreC: number; readonly atS: number } {
  const coreC = Math.max(...course.coreC);
  return { coreC, atS: course.atS[course.coreC.indexOf(coreC)]! };
}

/** First time at which a line of the course has fallen to a temperature, s; undefined while it stays above. Source: straight between points. */
export function fallsTo(course: Pick<Course, 'atS'>, line: readonly number[], tempC: number): number | undefined {
  for (let i = 0; i < line.length; i++) {
    if (line[i]! > tempC) continue;
    if (i === 0) return course.atS[0]!;
    return course.atS[i - 1]! + ((line[i - 1]! - tempC) / (line[i - 1]! - line[i]!)) * (course.atS[i]! - course.atS[i - 1]!);
  }
  return undefined;
}

/**
 * The piece as it leaves the pit at an instant: the middle of all members that the readings left. Source: `forecastDone`'s members.
 *
 * @param offAt  absent: each member as it stands when it is done
 */
export function pulledPiece(cook: FoodCook, now: EpochS, offAt?: EpochS): Piece {
  const { roll, step } = seeReadings(cook, now);
  const { members } = roll.bodies;
  const surface = workSurface();
  const tempC = new Array<number>(CELLS).fill(0);
  let thick = 0;
  let exponent = 0;
  const until = offAt === undefined ? roll.steps : clamp(roll.endS.findIndex((endS) => endS >= offAt - cook.onAt), step, roll.steps);
  for (let m = 0; m < members; m++) {
    if (offAt !== undefined || doneS(roll, m) === Infinity) rollMember(roll, m, step, until, offAt === undefined ? 'ahead' : 'seen', surface);
    for (let cell = 0; cell < CELLS; cell++) tempC[cell] = tempC[cell]! + roll.bodies.tempC[m * CELLS + cell]! / members;
    thick += roll.traits[m * TRAITS.length + TRAIT_PLACE.thick]! / members;
    exponent += roll.bodies.exponent[m]! / members;
  }
  return { composition: cook.cut.composition, halfM: halfOf(cook) * Math.exp(thick), exponent, tempC };
}

/** The piece cut into slices of a thickness, each as warm as the piece's warmest part: no slice is warmer. Source: geometry, on the cautious side. */
export function cutInto(piece: Piece, thicknessM: number): Piece {
  requireRange('thickness (m)', thicknessM, 0.005, 0.4);
  const whole = thicknessM / 2 >= piece.halfM;
  return evenPiece({ composition: piece.composition, halfM: whole ? piece.halfM : thicknessM / 2, exponent: whole ? piece.exponent : 0, tempC: Math.max(...piece.tempC) });
}
