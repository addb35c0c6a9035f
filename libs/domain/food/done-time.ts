import { clamp, type EpochS, later, ok, refuse, type Result } from '../quantity/index.js';
import type { CookRefusal, DoneTime, FoodCook, Phase, Spread3 } from './cook.js';
import { doneS, halfOf, type Roll, rollMember, stepAt, workSurface } from './roll.js';
import { type Seen, seeReadings } from './see-readings.js';

/** Half of the band from p10 to p90 is at least this share of the time that is left: nearer, the members hold too few. Source: our fit, tests/bench/food.mjs */
const LEAST_BAND_SHARE = 0.1;
/** The same when many cooks of this cut and pit have taught. Source: our choice. */
const LEAST_TAUGHT_SHARE = 0.06;
/** Cooks after which half of that is gained. Source: our choice. */
const HALF_TAUGHT_COOKS = 6;
/** Fat that leaves a cut by the time its core is at 95 °C, share of its fat; none at 60 °C. Source: our fit to a yield of 60 % in smoked brisket [KERTH-MMB]. */
const RENDERED_FRAC = 0.5;

/** What is wrong with a cook before anything can be reckoned; undefined when nothing is. Source: the ranges of the model. */
export function refusalOf(cook: FoodCook): CookRefusal | undefined {
  const { pieceKg, air } = cook;
  if (!(pieceKg > 0)) return { code: 'weight-missing' };
  if (!(pieceKg >= 0.02 && pieceKg <= 300)) return { code: 'piece-weight-out-of-range', pieceKg, min: 0.02, max: 300 };
  const thicknessM = 2 * halfOf(cook);
  if (!(thicknessM >= 0.008 && thicknessM <= 0.5)) return { code: 'thickness-out-of-range', thicknessM, min: 0.008, max: 0.5 };
  if (air.tempC.length === 0 || !(air.stepS > 0)) return { code: 'air-missing' };
  for (let i = 0; i < air.tempC.length; i++) {
    const tempC = air.tempC[i]!;
    if (!(tempC >= -30 && tempC <= 200)) return { code: 'air-out-of-range', tempC, min: -30, max: 200 };
  }
  const startC = cook.startTempC ?? cook.cut.startTempC;
  return startC >= -1 && startC <= 60 ? undefined : { code: 'start-out-of-range', tempC: startC, min: -1, max: 60 };
}

/** Quantile of sorted numbers, straight between the two nearest (R type 7). */
function quantile(sorted: ArrayLike<number>, frac: number): number {
  const place = clamp(frac, 0, 1) * (sorted.length - 1);
  const below = Math.floor(place);
  const above = Math.min(sorted.length - 1, below + 1);
  return place === below ? sorted[below]! : sorted[below]! + (place - below) * (sorted[above]! - sorted[below]!);
}
const spreadOf = (sorted: Float64Array): Spread3 => ({ p10: quantile(sorted, 0.1), p50: quantile(sorted, 0.5), p90: quantile(sorted, 0.9) });

/** How much of the time left the band must span: less when earlier cooks taught. */
function leastShare(cook: FoodCook): number {
  const cooks = cook.learned ? Math.min(cook.learned.cut.cooks, 2 * cook.learned.pit.cooks) : 0;
  return LEAST_TAUGHT_SHARE + (LEAST_BAND_SHARE - LEAST_TAUGHT_SHARE) * (HALF_TAUGHT_COOKS / (HALF_TAUGHT_COOKS + cooks));
}

/** Done times in order, widened about their middle where they stand closer than the model's evidence allows. */
function widened(sorted: Float64Array, fromS: number, share: number): Float64Array {
  if (sorted.length < 3) return sorted;
  const middle = quantile(sorted, 0.5);
  const half = 0.5 * (quantile(sorted, 0.9) - quantile(sorted, 0.1));
  const least = share * Math.max(0, middle - fromS);
  if (half >= least || !(middle > fromS)) return sorted;
  const factor = half > 1 ? least / half : 0;
  return factor === 0 ? sorted.map((_, i) => middle + least * (2 * (i / (sorted.length - 1)) - 1)) : sorted.map((value) => Math.max(fromS, middle + factor * (value - middle)));
}

/** Core of all members at even times, as a fan; a member that is done stays where it was. */
function fanOf(roll: Roll, points: number, everyS: number, stoppedAt: Int32Array) {
  const { members } = roll.bodies;
  const fan = { p10: [] as number[], p50: [] as number[], p90: [] as number[] };
  const column = new Float64Array(members);
  for (let point = 0; point < points; point++) {
    const step = stepAt(roll, point * everyS);
    const next = Math.min(roll.steps, step + 1);
    const share = next > step ? (point * everyS - roll.endS[step]!) / (roll.endS[next]! - roll.endS[step]!) : 0;
    for (let m = 0; m < members; m++) {
      const row = m * (roll.steps + 1);
      const here = roll.kept[row + Math.min(step, stoppedAt[m]!)]!;
      column[m] = here + share * (roll.kept[row + Math.min(next, stoppedAt[m]!)]! - here);
    }
    column.sort();
    fan.p10.push(quantile(column, 0.1));
    fan.p50.push(quantile(column, 0.5));
    fan.p90.push(quantile(column, 0.9));
  }
  return fan;
}

/** What the middle of the fan is doing: slow between 60 and 80 °C is the plateau. Source: our choice; the plateau itself [BLONDER-2011]. */
const PLATEAU_K_PER_H = 4.5;
function phaseAt(core: readonly number[], place: number, keptS: number, done: boolean): Phase {
  if (done) return 'done';
  const hour = Math.max(1, Math.round(3600 / keptS));
  const here = Math.min(place, core.length - 1);
  const ahead = Math.min(core.length - 1, here + hour);
  const back = Math.max(0, here - hour);
  const now = core[here]!;
  const perHour = ahead > back ? ((core[ahead]! - core[back]!) / (ahead - back)) * (3600 / keptS) : 0;
  if (now < 60) return 'warming';
  return now < 82 && perHour < PLATEAU_K_PER_H ? 'plateau' : 'rising';
}

/**
 * When a cook will be done, as a distribution: an ensemble of possible pieces in possible places of the pit, each reckoned to the end
 * in the air that was measured and is forecast, corrected by every reading of a probe in the meat. On the plateau the core hardly
 * moves while water leaves; the members know that, a straight line through the readings does not.
 *
 * Source: our model (step.ts, prior.ts). Held to tests/published/food-plateau.test.ts and done-time.test.ts; calibration in
 * tests/bench/food.mjs
 *
 * @param now  readings after it are left out
 */
export function forecastDone(cook: FoodCook, now: EpochS): Result<DoneTime, CookRefusal> {
  const refusal = refusalOf(cook);
  return refusal ? refuse(refusal) : ok(rolledOut(seeReadings(cook, now), now));
}

/** Rolls members that have seen all readings to their end. Source: roll.ts. */
export function rolledOut(seen: Seen, now: EpochS): DoneTime {
  const { roll, step, verdicts } = seen;
  const { cook } = roll;
  const { members } = roll.bodies;
  const surface = workSurface();
  const stoppedAt = new Int32Array(members);
  for (let m = 0; m < members; m++) stoppedAt[m] = rollMember(roll, m, step, roll.steps, 'ahead', surface);
  const times = Float64Array.from({ length: members }, (_, m) => doneS(roll, m)).sort();
  const finite = times.filter((value) => value < Infinity);
  const sinceOnS = Math.max(0, now - cook.onAt);
  const doneAfterS = widened(finite, sinceOnS, leastShare(cook));
  const reachS = finite.length ? quantile(finite, 0.9) : roll.endS[roll.steps]!;
  const keptS = reachS > 3 * 3600 ? 600 : reachS > 3600 ? 300 : 60;
  const core = fanOf(roll, Math.ceil(reachS / keptS) + 1, keptS, stoppedAt);
  const wrapped = roll.wrappedS.filter((value) => value < Infinity).sort();
  const middle = finite.length ? quantile(finite, 0.5) : Infinity;
  return {
    onAt: cook.onAt,
    doneAt: Array.from(doneAfterS, (value) => later(cook.onAt, value)),
    neverFrac: 1 - finite.length / members,
    phase: phaseAt(core.p50, Math.floor(sinceOnS / keptS), keptS, sinceOnS >= middle),
    core: { from: cook.onAt, stepS: keptS, ...core },
    ...(wrapped.length > members / 2 && { wrapAfterS: spreadOf(wrapped) }),
    hotYieldFrac: yieldOf(roll),
    verdicts,
  };
}

/** Weight at done over raw weight: what evaporated, dripped and rendered is gone. */
function yieldOf(roll: Roll): Spread3 {
  const { fatFrac, waterFrac, proteinFrac, ashFrac } = roll.cook.cut.composition;
  const fat = fatFrac / (fatFrac + waterFrac + proteinFrac + ashFrac);
  return spreadOf(roll.lostFrac.map((lost, m) => 1 - lost - RENDERED_FRAC * fat * clamp((roll.lastCoreC[m]! - 60) / 35, 0, 1)).sort());
}

/**
 * The instant by which a share of all possible cooks is done. Source: none needed.
 *
 * @param frac  0 to 1; 0.95 for "late at most one time in twenty"
 * @returns undefined when so many never get there in this heat
 */
export function doneByFrac(done: Pick<DoneTime, 'doneAt' | 'neverFrac' | 'onAt'>, frac: number): EpochS | undefined {
  const place = frac / (1 - done.neverFrac);
  return done.doneAt.length === 0 || place > 1 ? undefined : later(0 as EpochS, quantile(done.doneAt, place));
}

/** Chance that the cook is done at an instant, 0 to 1. Source: none needed. */
export function chanceDoneBy(done: DoneTime, at: EpochS): number {
  const { doneAt } = done;
  if (doneAt.length === 0) return 0;
  let low = 0;
  let high = doneAt.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (doneAt[middle]! <= at) low = middle + 1;
    else high = middle;
  }
  return (low / doneAt.length) * (1 - done.neverFrac);
}
