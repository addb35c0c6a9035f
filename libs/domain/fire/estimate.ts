import type { EpochS } from '../quantity/index.js';
import { chamberK } from './advance.js';
import { drawAir } from './air.js';
import { type FireBelief, memberAt, MEMBERS } from './belief.js';
import { newFlows, stepInputsOf } from './flows.js';
import { bedLost, bedNearlyOut, freshestLifeFrac, glowingKg, GRADE_FRAC, gradeBed, piecesBurning } from './grades.js';
import { BED_KG, GAUGE_K, INNER_K, LOG_AIR, LOG_BURN, LOG_COAL, LOG_LOSS, THIRDS } from './layout.js';
import type { BedGrade } from './pit.js';
import { parametersOf, USUAL_DOOR_GAP_M } from './pit-shape.js';
import { quantile, quantileOf } from './quantile.js';

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
/** More members than this with the bed nearly out, and it ranks above everything else. Source: our fit. */
const NEARLY_OUT_SHARE = 0.2;

const overMembers = (value: (member: number) => number) => Float64Array.from({ length: MEMBERS }, (_, m) => value(memberAt(m)));
const spreadOf = (values: Float64Array): Spread => {
  const sorted = values.slice().sort();
  return { p10: quantile(sorted, 0.1), p50: quantile(sorted, 0.5), p90: quantile(sorted, 0.9) };
};

/** What is believed of the fire, in numbers for people. */
export function estimateOf(belief: FireBelief): FireEstimate {
  const { members: x, pieces, shape } = belief;
  const p = parametersOf(shape);
  const glowing = quantileOf(overMembers((m) => glowingKg(x, m, pieces)), 0.5);
  const factor = (at: number) => Math.exp(quantileOf(overMembers((m) => x[m + at]!), 0.5));
  const gaugesC = Array.from({ length: THIRDS }, (_, third) => quantileOf(overMembers((m) => x[m + GAUGE_K + third]!), 0.5) - 273.15);
  return {
    at: belief.at,
    mode: modeOf(belief),
    bedKg: spreadOf(overMembers((m) => x[m + BED_KG]!)),
    glowingBedKg: glowing,
    bedGrade: gradeBed(p, glowing),
    fullBedKg: GRADE_FRAC.full * p.bedKg,
    splitsBurning: Math.round(quantileOf(overMembers((m) => piecesBurning(x, m, pieces)), 0.5)),
    splitLeftFrac: quantileOf(overMembers((m) => freshestLifeFrac(x, m, pieces)), 0.5),
    zoneTempC: zonesOf(gaugesC, shape.zones),
    chamberTempC: spreadOf(overMembers((m) => chamberK(x, m) - 273.15)),
    airKgPerS: usualAir(belief),
    bedLostRiskFrac: overMembers((m) => (bedLost(p, x, m) ? 1 : 0)).reduce((sum, lost) => sum + lost, 0) / MEMBERS,
    dryKgPerS: belief.dryKgPerS,
    learned: { lossFactor: factor(LOG_LOSS), burnFactor: factor(LOG_BURN), coalFactor: factor(LOG_COAL), airFactor: factor(LOG_AIR) },
  };
}

/** How the fire stands as a whole. */
export function modeOf(belief: FireBelief): FireMode {
  const { members: x, pieces } = belief;
  const p = parametersOf(belief.shape);
  const share = (is: (member: number) => boolean) => overMembers((m) => (is(m) ? 1 : 0)).reduce((sum, one) => sum + one, 0) / MEMBERS;
  const glowing = quantileOf(overMembers((m) => glowingKg(x, m, pieces)), 0.5);
  const burning = share((m) => piecesBurning(x, m, pieces) > 0) > 0.5;
  const grateK = quantileOf(overMembers((m) => x[m + INNER_K + 1]!), 0.5);
  const low = gradeBed(p, glowing) === 'low';
  if (belief.ungraded && (low || grateK < START_UP_K)) return 'start-up';
  if (low && burning && grateK < START_UP_K) return 'start-up';
  if (!burning && share((m) => bedLost(p, x, m)) > 0.5) return 'out';
  return share((m) => bedNearlyOut(p, x, m)) > NEARLY_OUT_SHARE ? 'bed-nearly-out' : 'burning';
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
  return quantileOf(
    overMembers((m) => {
      drawAir(p, belief.members, m, inputs, f);
      return f.airKgPerS;
    }),
    0.5,
  );
}
