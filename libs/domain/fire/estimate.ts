import type { EpochS } from '../quantity/index.js';
import { chamberK } from './chamber-temp.js';
import { drawAir } from './air.js';
import { type FireBelief, memberAt, MEMBERS } from './belief.js';
import { newFlows, stepInputsOf } from './flows.js';
import { bedTailFrac } from './bed-risk.js';
import { bedLost, freshestLifeFrac, glowingKg, GRADE_FRAC, gradeBed, piecesBurning } from './grades.js';
import { BED_KG, GAUGE_K, INNER_K, LOG_AIR, LOG_BURN, LOG_COAL, LOG_LOSS, THIRDS } from './layout.js';
import type { BedGrade } from './pit.js';
import { parametersOf, USUAL_DOOR_GAP_M } from './pit-shape.js';
import { quantile, sortFew } from './quantile.js';

export interface Spread {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}
/** start-up: lit and not yet a fire to cook on. bed-nearly-out: put thin splits on the coals now. out: nothing left that would light a split. */
export type FireMode = 'start-up' | 'burning' | 'bed-nearly-out' | 'out';

/** What the screens show of a belief: an estimate, not a measurement. */
export interface FireEstimate {
  readonly at: EpochS;
  readonly mode: FireMode;
  /** Loose coals, kg. */
  readonly bedKg: Spread;
  /** Loose coals and half of the char on the pieces, kg, p50: what the crew grades. */
  readonly glowingBedKg: number;
  readonly bedGrade: BedGrade;
  /** Glowing bed that a crew calls full in this firebox, kg. */
  readonly fullBedKg: number;
  readonly splitsBurning: number;
  /** Left of the freshest split, p50. */
  readonly splitLeftFrac: number;
  /** p50 per zone of the pit, fire end first, °C. */
  readonly zoneTempC: readonly number[];
  /** Middle of both ends' gauges, °C. */
  readonly chamberTempC: Spread;
  readonly airKgPerS: number;
  /** Share of the members whose bed is lost: too small, or too cold to light a split. */
  readonly bedLostRiskFrac: number;
  /** Dry wood burnt a second, running mean over an hour. */
  readonly dryKgPerS: number;
  /** Multipliers that this pit has shown beside its set-up values, p50. */
  readonly learned: { readonly lossFactor: number; readonly burnFactor: number; readonly coalFactor: number; readonly airFactor: number };
}

/** Grates colder than this, after lighting, are no pit to cook on: 150 °F. Source: our fit. */
const START_UP_K = 338.7;
/** More than this of all that is possible with the bed nearly out, and it ranks above everything else. Source: our fit. */
export const NEARLY_OUT_SHARE = 0.01;

function overMembers(value: (member: number) => number): Float64Array {
  const values = new Float64Array(MEMBERS);
  for (let m = 0; m < MEMBERS; m++) values[m] = value(memberAt(m));
  return values;
}
/** Middle of the members; sorts what it is given. */
const middleOf = (value: (member: number) => number) => quantile(sortFew(overMembers(value)), 0.5);
const shareOf = (is: (member: number) => boolean): number => {
  let count = 0;
  for (let m = 0; m < MEMBERS; m++) if (is(memberAt(m))) count++;
  return count / MEMBERS;
};
const spreadOf = (values: Float64Array): Spread => {
  const sorted = sortFew(values);
  return { p10: quantile(sorted, 0.1), p50: quantile(sorted, 0.5), p90: quantile(sorted, 0.9) };
};

/** What is believed of the fire, in numbers for people. */
export function estimateOf(belief: FireBelief): FireEstimate {
  const { members: x, pieces, shape } = belief;
  const p = parametersOf(shape);
  const glowing = middleOf((m) => glowingKg(x, m, pieces));
  const factor = (at: number) => Math.exp(middleOf((m) => x[m + at]!));
  const gaugesC = Array.from({ length: THIRDS }, (_, third) => middleOf((m) => x[m + GAUGE_K + third]!) - 273.15);
  return {
    at: belief.at,
    mode: modeOf(belief),
    bedKg: spreadOf(overMembers((m) => x[m + BED_KG]!)),
    glowingBedKg: glowing,
    bedGrade: gradeBed(p, glowing),
    fullBedKg: GRADE_FRAC.full * p.bedKg,
    splitsBurning: Math.round(middleOf((m) => piecesBurning(x, m, pieces))),
    splitLeftFrac: middleOf((m) => freshestLifeFrac(x, m, pieces)),
    zoneTempC: zonesOf(gaugesC, shape.zones),
    chamberTempC: spreadOf(overMembers((m) => chamberK(x, m) - 273.15)),
    airKgPerS: usualAir(belief),
    bedLostRiskFrac: shareOf((m) => bedLost(p, x, m)),
    dryKgPerS: belief.dryKgPerS,
    learned: { lossFactor: factor(LOG_LOSS), burnFactor: factor(LOG_BURN), coalFactor: factor(LOG_COAL), airFactor: factor(LOG_AIR) },
  };
}

/** How the fire stands as a whole. */
export function modeOf(belief: FireBelief): FireMode {
  const { members: x, pieces } = belief;
  const p = parametersOf(belief.shape);
  const glowing = middleOf((m) => glowingKg(x, m, pieces));
  const burning = shareOf((m) => piecesBurning(x, m, pieces) > 0) > 0.5;
  const grateK = middleOf((m) => x[m + INNER_K + 1]!);
  const low = gradeBed(p, glowing) === 'low';
  if (belief.ungraded && (low || grateK < START_UP_K)) return 'start-up';
  if (low && burning && grateK < START_UP_K) return 'start-up';
  if (!burning && shareOf((m) => bedLost(p, x, m)) > 0.5) return 'out';
  return bedTailFrac(belief) > NEARLY_OUT_SHARE ? 'bed-nearly-out' : 'burning';
}

/** The model's thirds read at the middles of the crew's zones, straight between them. Source: interpolation. */
export function zonesOf(thirdsC: readonly number[], zones: number): number[] {
  return Array.from({ length: zones }, (_, zone) => {
    const place = Math.min(THIRDS - 1, Math.max(0, ((zone + 0.5) / zones) * THIRDS - 0.5));
    const below = Math.min(THIRDS - 2, Math.floor(place));
    return thirdsC[below]! + (place - below) * (thirdsC[below + 1]! - thirdsC[below]!);
  });
}

/** Air that the draft alone would draw with the door at its usual gap in calm, kg/s, p50. */
function usualAir(belief: FireBelief): number {
  const p = parametersOf(belief.shape);
  const calm = { windMPerS: 0, fromFireEndRad: 0, ambientTempC: 15, rainFrac: 0 };
  const inputs = stepInputsOf(p, { weather: calm, air: { doorGapM: USUAL_DOOR_GAP_M, damperFrac: 1 }, foodLoadFrac: 0 }, belief.position, 60);
  const f = newFlows();
  return middleOf((m) => {
    drawAir(p, belief.members, m, inputs, f);
    return f.airKgPerS;
  });
}
