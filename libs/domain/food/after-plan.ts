import { type EpochS, HOUR_S, ok, refuse, type Result } from '../quantity/index.js';
import { courseOf, fallsTo, peakOf, pulledPiece, type Standing, type Stay } from './after-pit.js';
import type { CookRefusal, FoodCook } from './cook.js';
import { refusalOf } from './done-time.js';
import { fToC } from './history.js';
import { cookingKindOf } from './judge-cooking.js';
import type { LimitSet } from './limits/limit.js';
import { type PortionAdvice, thickestThatCools, whenToPortion } from './portioning.js';

/** What surrounds food that stands neither in the yard's air nor in a box out there, °C: a warm cabinet of 150 °F, a chiller, iced water. Source: common practice, no source. */
const AROUND_C: Readonly<Record<Exclude<Standing, 'bench' | 'insulated-box'>, number>> = { 'warm-cabinet': 65.6, chiller: 3, 'moving-chiller': 3, 'ice-bath': 0.5 };
/** Cooling is looked at for so long, s. Source: longer than any limit of limits/. */
const COOLS_S = 16 * HOUR_S;

/** What is meant for a cook after the pit: it rests on the bench as its cut asks, is kept hot, then cooled. */
export interface AfterAsk {
  readonly cook: FoodCook;
  readonly now: EpochS;
  /** When it came off; absent: it comes off when it is done. */
  readonly offAt?: EpochS;
  readonly limits: LimitSet;
  /** The yard's air, where bench and box stand, °C. */
  readonly outsideC: number;
  readonly holdIn: Extract<Standing, 'bench' | 'insulated-box' | 'warm-cabinet'>;
  /** 0 to 48 h. */
  readonly holdS: number;
  readonly coolIn: Extract<Standing, 'chiller' | 'moving-chiller' | 'ice-bath'>;
  /** Thickness of the pieces if it is cut, m. */
  readonly sliceM: number;
}
/** How it goes on, in seconds after it came off; the middle of what is possible. */
export interface AfterPit {
  readonly leavesC: number;
  readonly peakC: number;
  readonly peakS: number;
  /** Hot holding: core and outside through the limit's temperature; absent: they stay above it until they are cooled. */
  readonly hold: { readonly limitC: number; readonly section: string; readonly coreBelowS?: number; readonly outsideBelowS?: number; readonly endsC: number };
  /** Cooling begins at `fromS`; the advice's times count from there. */
  readonly cool: { readonly fromS: number; readonly section: string; readonly advice: PortionAdvice; readonly thickestM?: number };
}

/**
 * Carry-over, rest, hold and cooling of one cook as they are meant, held against a set of limits: a forecast, no record.
 *
 * Source: after-pit.ts, portioning.ts. Held to after-plan.test.ts
 */
export function afterPit(ask: AfterAsk): Result<AfterPit, CookRefusal> {
  const { cook, now, offAt, limits, outsideC, holdIn, holdS, coolIn, sliceM } = ask;
  const refusal = refusalOf(cook);
  if (refusal) return refuse(refusal);
  const stay = (where: Standing, forS: number): Stay => ({ where, airC: where === 'bench' || where === 'insulated-box' ? outsideC : AROUND_C[where], forS });
  const pulled = pulledPiece(cook, offAt === undefined ? now : (Math.min(now, offAt) as EpochS), offAt);
  const kept = courseOf(pulled, [stay('bench', cook.cut.rest.leastS), stay(holdIn, holdS)]);
  const peak = peakOf(kept);
  const hot = cookingKindOf(cook.cut) === 'roast' ? limits.hotHoldRoast : limits.hotHold;
  const limitC = fToC(hot.tempF);
  const below = (line: readonly number[]) => fallsTo(kept, line, limitC);
  const [coreBelowS, outsideBelowS] = [below(kept.coreC), below(kept.coldestC)];
  const cooled = { piece: kept.piece, stay: stay(coolIn, COOLS_S), thicknessM: sliceM };
  const thickestM = thickestThatCools(limits.cooling, { composition: kept.piece.composition, fromC: Math.max(...kept.piece.tempC), stay: cooled.stay });
  return ok({
    leavesC: kept.coreC[0]!, peakC: peak.coreC, peakS: peak.atS,
    hold: { limitC, section: hot.section, ...(coreBelowS !== undefined && { coreBelowS }), ...(outsideBelowS !== undefined && { outsideBelowS }), endsC: kept.coreC.at(-1)! },
    cool: { fromS: cook.cut.rest.leastS + holdS, section: limits.cooling.section, advice: whenToPortion(limits.cooling, cooled), ...(thickestM !== undefined && { thickestM }) },
  });
}
