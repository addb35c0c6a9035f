import { clamp, type DryBasis, dryBasis, type EpochS, later, requireRange } from '../quantity/index.js';
import type { StackAir } from './climate.js';
import type { Species } from './species.js';

/** One reading of a lot, corrected. */
export interface LotReading {
  readonly at: EpochS;
  readonly moisture: DryBasis;
  /** One standard deviation. */
  readonly deviation: number;
}
/** A lot as it lies and dries. */
export interface SeasoningLot {
  readonly species: Species;
  readonly thicknessM: number;
  /** When it was cut green; without it the first reading is where it begins. */
  readonly cutAt?: EpochS;
  /** When it was split: until then it dries at a fraction of the speed. */
  readonly splitAt?: EpochS;
  readonly readings: readonly LotReading[];
}
export interface CurvePoint {
  readonly at: EpochS;
  readonly moisture: DryBasis;
  /** One standard deviation either way. */
  readonly lowMoisture: DryBasis;
  readonly highMoisture: DryBasis;
}
/** What will become of a lot. */
export interface Seasoning {
  readonly now: { readonly moisture: DryBasis; readonly deviation: number };
  /** Chance that it is ready now. */
  readonly readyFrac: number;
  /** When one chance in ten, one in two, nine in ten says that it is ready; undefined when not within three years. */
  readonly earliestAt: EpochS | undefined;
  readonly readyAt: EpochS | undefined;
  readonly latestAt: EpochS | undefined;
  /** Drying speed at 20 °C as learned of this lot, a part a day. */
  readonly ratePerDay: number;
  readonly curve: readonly CurvePoint[];
}

const DAY_S = 86_400;
/** White oak split 3.6 in thick, at 20 °C, loses this part of what is above equilibrium each day. Source: our fit, to the weighed pieces and the year of common practice in tests/published/wood-seasoning.test.ts. */
const RATE_PER_DAY = 0.008;
const REFERENCE_THICKNESS_M = 0.092;
/** A round dries at this part of the speed of its splits. Source: common practice, no source. */
const UNSPLIT_FRAC = 0.4;
/** Speed beside white oak: middle of the days that inch lumber takes to 20 %, that of white oak over that of the species. [FPL-TN-233]; pecan as hickory, post oak as white oak, live oak, apple and mesquite without a source. */
const SPECIES_SPEED: Readonly<Record<Species, number>> = {
  'shagbark-hickory': 165 / 130, pecan: 165 / 130, 'white-oak': 1, 'red-oak': 165 / 135, 'post-oak': 1, 'live-oak': 0.85, 'sugar-maple': 165 / 125,
  'black-cherry': 165 / 135, 'white-ash': 165 / 130, beech: 165 / 135, 'red-alder': 165 / 100, apple: 1, mesquite: 1,
};
/** Green wood: mean and deviation of the species in [FPL-GTR-190] Table 4-1. */
const GREEN: readonly [number, number] = [0.68, 0.15];
/** What to begin with when it is not known when the wood was cut: anything. */
const ANYTHING: readonly [number, number] = [0.3, 0.3];
/** The stack's own air beside the yard's climate: shade, cover, wind. One deviation in points of equilibrium moisture. Source: common practice, no source. */
const OWN_AIR = 0.012;
/** Splits of one lot differ, one deviation. Source: common practice, no source. */
const PIECES_DIFFER = 0.01;
/** Deviation of the logarithm of the drying speed before anything is read: real splits take a fifth to once the time of the theory. */
const RATE_LOG_DEVIATION = 0.55;
const RATES = 31;
/** Forecast three years, every three days. */
const STEP_S = 3 * DAY_S;
const HORIZON_S = 3 * 365 * DAY_S;

/**
 * What speed a lot is expected to dry at before it is measured, a part a day at 20 °C.
 *
 *     k = 0.008 * species * (92 mm / thickness)       Source: our fit, tests/published/wood-seasoning.test.ts
 *
 * @param wood  species; thickness 0.02 to 0.4 m
 */
export function usualRatePerDay(wood: { readonly species: Species; readonly thicknessM: number }): number {
  requireRange('thickness (m)', wood.thicknessM, 0.02, 0.4);
  return (RATE_PER_DAY * SPECIES_SPEED[wood.species] * REFERENCE_THICKNESS_M) / wood.thicknessM;
}

/** One drying speed with what the readings leave to believe of the start and of the stack's own air: X = a X0 + b + (1 - a) o. */
interface Branch {
  readonly ratePerS: number;
  weightLog: number;
  a: number;
  b: number;
  /** Mean of X0 and o, and their covariance. */
  mean: [number, number];
  cov: [number, number, number];
}

/**
 * Forecast of a lot's moisture: first order towards the equilibrium of the yard's air, speed by temperature, fitted to the readings.
 *
 *     dX/dt = -k speed(T) (X - Xe(t) - o)
 *
 * k on a grid of 31 around the usual, each with its likelihood; the start X0 and the stack's own air o as normal numbers, corrected
 * by each reading in the manner of a Kalman filter. [CRANK] for the first order; fit after Bayes. Readings later than `now` are left out.
 *
 * @param lot     readings in any order
 * @param air     the yard's, of `stackAir`
 * @param now     the forecast begins here
 * @param target  ready at or below, 0.08 to 0.3; usually 0.15
 * @returns Held to tests/published/wood-seasoning.test.ts
 */
export function forecastSeasoning(lot: SeasoningLot, air: StackAir, now: EpochS, target: DryBasis): Seasoning {
  requireRange('moisture to be ready at', target, 0.08, 0.3);
  const readings = lot.readings.filter(({ at }) => at <= now).sort((a, b) => a.at - b.at);
  const begin = Math.min(lot.cutAt ?? readings[0]?.at ?? now, now) as EpochS;
  const [mean0, deviation0] = lot.cutAt === undefined ? ANYTHING : GREEN;
  const branches = branchesOf(usualRatePerDay(lot), mean0, deviation0);
  let at = begin;
  for (const reading of readings.filter((one) => one.at >= begin)) {
    walk(branches, lot, air, at, reading.at);
    for (const branch of branches) correct(branch, reading);
    at = reading.at;
  }
  walk(branches, lot, air, at, now);
  return foresee(branches, lot, air, now, target);
}

function branchesOf(usualPerDay: number, mean0: number, deviation0: number): readonly Branch[] {
  return Array.from({ length: RATES }, (_, i) => {
    const z = (i / (RATES - 1)) * 6 - 3;
    return {
      ratePerS: (usualPerDay * Math.exp(z * RATE_LOG_DEVIATION)) / DAY_S, weightLog: -z * z / 2, a: 1, b: 0,
      mean: [mean0, 0], cov: [deviation0 ** 2, 0, OWN_AIR ** 2],
    };
  });
}

/** Carries every branch from one instant to another; the air stands still for at most three days. */
function walk(branches: readonly Branch[], lot: SeasoningLot, air: StackAir, from: EpochS, until: EpochS): void {
  for (let at = from; at < until; ) {
    const stepS = Math.min(STEP_S, until - at);
    const middle = later(at, stepS / 2);
    const equilibrium = air.equilibriumAt(middle);
    const speedS = air.speedAt(middle) * (lot.splitAt !== undefined && middle < lot.splitAt ? UNSPLIT_FRAC : 1) * stepS;
    for (const branch of branches) {
      const keep = Math.exp(-branch.ratePerS * speedS);
      branch.b = branch.b * keep + equilibrium * (1 - keep);
      branch.a *= keep;
    }
    at = later(at, stepS);
  }
}

function seen({ a, b, mean, cov }: Branch): { readonly mean: number; readonly variance: number } {
  const o = 1 - a;
  return { mean: a * mean[0] + b + o * mean[1], variance: a * a * cov[0] + 2 * a * o * cov[1] + o * o * cov[2] };
}

function correct(branch: Branch, reading: LotReading): void {
  const { mean, variance } = seen(branch);
  const total = variance + reading.deviation ** 2 + PIECES_DIFFER ** 2;
  const miss = reading.moisture - mean;
  const o = 1 - branch.a;
  const [v0, v01, v1] = branch.cov;
  const [g0, g1] = [(branch.a * v0 + o * v01) / total, (branch.a * v01 + o * v1) / total];
  branch.weightLog -= (Math.log(total) + (miss * miss) / total) / 2;
  branch.mean = [branch.mean[0] + g0 * miss, branch.mean[1] + g1 * miss];
  branch.cov = [v0 - g0 * g0 * total, v01 - g0 * g1 * total, v1 - g1 * g1 * total];
}

/** Standard normal distribution. [ABRAMOWITZ] 26.2.17, error under 7.5e-8. */
function normalBelow(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail = Math.exp((-z * z) / 2) * 0.3989422804014327 * t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z > 0 ? 1 - tail : tail;
}

function foresee(branches: readonly Branch[], lot: SeasoningLot, air: StackAir, now: EpochS, target: number): Seasoning {
  const most = Math.max(...branches.map(({ weightLog }) => weightLog));
  const raw = branches.map(({ weightLog }) => Math.exp(weightLog - most));
  const sum = raw.reduce((all, one) => all + one, 0);
  const weights = raw.map((one) => one / sum);
  const curve: CurvePoint[] = [];
  const reached: (EpochS | undefined)[] = [undefined, undefined, undefined];
  let first = { moisture: 0, deviation: 0, readyFrac: 0 };
  for (let at = now; at <= now + HORIZON_S; at = later(at, STEP_S)) {
    const mixed = mix(branches, weights, target);
    if (at === now) first = mixed;
    [0.1, 0.5, 0.9].forEach((chance, i) => {
      if (mixed.readyFrac >= chance) reached[i] ??= at;
    });
    if (curve.length === 0 || at - curve.at(-1)!.at >= 7 * DAY_S) curve.push(point(at, mixed));
    walk(branches, lot, air, at, later(at, STEP_S));
  }
  const [earliestAt, readyAt, latestAt] = reached;
  return {
    now: { moisture: dryBasis(first.moisture), deviation: first.deviation }, readyFrac: first.readyFrac, earliestAt, readyAt, latestAt,
    ratePerDay: branches.reduce((all, { ratePerS }, i) => all + weights[i]! * ratePerS * DAY_S, 0), curve,
  };
}

const point = (at: EpochS, { moisture, deviation }: { readonly moisture: number; readonly deviation: number }): CurvePoint => ({
  at, moisture: dryBasis(moisture), lowMoisture: dryBasis(Math.max(0, moisture - deviation)), highMoisture: dryBasis(moisture + deviation),
});

/** Mean and deviation over all speeds, and the chance that the lot as a whole is at or below the target. */
function mix(branches: readonly Branch[], weights: readonly number[], target: number) {
  let [mean, square, readyFrac] = [0, 0, 0];
  branches.forEach((branch, i) => {
    const one = seen(branch);
    const deviation = Math.sqrt(Math.max(1e-8, one.variance) + PIECES_DIFFER ** 2);
    mean += weights[i]! * one.mean;
    square += weights[i]! * (one.mean * one.mean + deviation * deviation);
    readyFrac += weights[i]! * normalBelow((target - one.mean) / Math.sqrt(Math.max(1e-8, one.variance)));
  });
  return { moisture: clamp(mean, 0, 1.4), deviation: Math.sqrt(Math.max(0, square - mean * mean)), readyFrac };
}

/** A lot in the order in which lots are opened. */
export interface Opening<Id extends string> {
  readonly id: Id;
  readonly state: 'ready' | 'not-yet' | 'not-within-three-years';
}

/**
 * Which lot to open when: first in, first ready. Those more likely ready than not come first, the one bought first before the
 * others; then the others by the day they are ready. Source: common practice, no source.
 */
export function openingOrder<Id extends string>(lots: readonly { readonly id: Id; readonly boughtAt: EpochS; readonly seasoning: Seasoning }[]): readonly Opening<Id>[] {
  const stateOf = ({ seasoning }: { readonly seasoning: Seasoning }): Opening<Id>['state'] =>
    seasoning.readyFrac >= 0.5 ? 'ready' : seasoning.readyAt === undefined ? 'not-within-three-years' : 'not-yet';
  const rank = { ready: 0, 'not-yet': 1, 'not-within-three-years': 2 } as const;
  return [...lots]
    .map((lot) => ({ lot, state: stateOf(lot) }))
    .sort((a, b) => rank[a.state] - rank[b.state] || (a.state === 'not-yet' ? a.lot.seasoning.readyAt! - b.lot.seasoning.readyAt! : 0) || a.lot.boughtAt - b.lot.boughtAt || (a.lot.id < b.lot.id ? -1 : 1))
    .map(({ lot, state }) => ({ id: lot.id, state }));
}
