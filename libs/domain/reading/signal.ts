import type { EpochS } from '../quantity/index.js';
import { GAP_S, LEAP_HELD_S, NOISE_GAP_S, NOISE_OVER_S, type ProbeUse, SAMPLE_S, SIGNAL_LIMITS, type SignalLimits, STILL_BAD_SAMPLES, STILL_SUSPECT_SAMPLES } from './limits.js';
import type { ElectricalFault } from './shown.js';

export type Quality = 'good' | 'suspect' | 'bad';
/** Why a sample is doubted. */
export type SampleReason = ElectricalFault | 'out-of-range' | 'above-usual' | 'stuck' | 'spike' | 'rate' | 'noisy';
/** What a probe showed at an instant, before its correction; or the fault that it gave away. */
export type Sample = { readonly at: EpochS } & ({ readonly shownC: number } | { readonly fault: ElectricalFault });
export interface Judged {
  readonly at: EpochS;
  readonly quality: Quality;
  readonly reason?: SampleReason | undefined;
}
interface Point {
  readonly at: EpochS;
  readonly shownC: number;
}
/** What must be known of a series to judge its next sample; plain data, so that it can be kept beside the probe. */
export interface Signal {
  /** The last sample that had a value within the sensor's range. */
  readonly last?: Point | undefined;
  /** The one before it, and how the last one leapt from it, while nobody knows whether it was a spike. */
  readonly leapFrom?: Point | undefined;
  /** A leap that stayed, faster than anything of its mass: where from, and when. */
  readonly leapt?: Point | undefined;
  /** Since when the value has been the same to the last digit, in how many samples, and how noisy the signal was before. */
  readonly still?: { readonly since: EpochS; readonly samples: number; readonly noiseK: number } | undefined;
  /** The one before the last, for the noise. */
  readonly before?: Point | undefined;
  /** Standard deviation from sample to sample, as of late, K. */
  readonly noiseK: number;
}
export const NEW_SIGNAL: Signal = { noiseK: 0 };

const good = (at: EpochS): Judged => ({ at, quality: 'good' });
const worst = (...found: (Judged | undefined)[]): Judged | undefined => found.find((one) => one?.quality === 'bad') ?? found.find((one) => one !== undefined);

/**
 * Judges the next sample of a series, and where it tells that the one before was a spike or a true step, that one anew. Samples come
 * in order of time; the outcome hangs on the series alone, so that a series that was sent late or shuffled is judged the same once it
 * is put in order.
 *
 * Tests, after [QARTOD]: range of the sensor, range of use, spike, rate of change, flat line, noise. Held to signal.test.ts
 */
export function judgeNext(signal: Signal, sample: Sample, use: ProbeUse): { readonly signal: Signal; readonly judged: readonly Judged[] } {
  const limits = SIGNAL_LIMITS[use];
  const { at } = sample;
  if ('fault' in sample) return { signal, judged: [{ at, quality: 'bad', reason: sample.fault }] };
  const { shownC } = sample;
  if (!(shownC >= limits.leastC && shownC <= limits.mostC)) return { signal, judged: [{ at, quality: 'bad', reason: 'out-of-range' }] };
  const point = { at, shownC };
  const near = signal.last && at - signal.last.at <= GAP_S ? signal : { ...NEW_SIGNAL, noiseK: signal.noiseK };
  return near.leapFrom ? afterLeap(near, near.leapFrom, point, limits) : inCourse(near, point, limits);
}

const spikeLimitK = (limits: SignalLimits, from: Point, to: Point) => limits.spikeK * Math.max(1, (to.at - from.at) / SAMPLE_S);
const differ = (a: Point, b: Point) => Math.abs(a.shownC - b.shownC);

/** The sample before leapt. When this one leaps back, that was a spike; when it does not, a step. */
function afterLeap(signal: Signal, from: Point, point: Point, limits: SignalLimits): { readonly signal: Signal; readonly judged: readonly Judged[] } {
  const leap = signal.last!;
  const isBack = (leap.shownC - from.shownC) * (leap.shownC - point.shownC) > 0;
  if (isBack && differ(leap, point) > spikeLimitK(limits, leap, point)) {
    const next = inCourse({ ...signal, last: from, before: undefined, leapFrom: undefined }, point, limits);
    return { signal: next.signal, judged: [{ at: leap.at, quality: 'bad', reason: 'spike' }, ...next.judged] };
  }
  const rate = rateOf(from, leap, limits);
  const leapt = rate?.quality === 'bad' ? from : signal.leapt;
  const next = inCourse({ ...signal, leapFrom: undefined, before: undefined, leapt: leapt && { ...leapt, at: leap.at } }, point, limits);
  return { signal: next.signal, judged: [rate ?? good(leap.at), ...next.judged] };
}

function inCourse(signal: Signal, point: Point, limits: SignalLimits): { readonly signal: Signal; readonly judged: readonly Judged[] } {
  const { last } = signal;
  const still = stillWith(signal, point);
  const noiseK = noiseWith(signal, point, limits);
  const leapt = stillLeapt(signal, point, limits);
  const leaps = last !== undefined && differ(last, point) > spikeLimitK(limits, last, point);
  const found = worst(
    last && rateOf(last, point, limits),
    leaps ? { at: point.at, quality: 'suspect', reason: 'spike' } : undefined,
    leapt && { at: point.at, quality: 'suspect', reason: 'rate' },
    stuckOf(still, point, limits),
    point.shownC > limits.usualMostC ? { at: point.at, quality: 'suspect', reason: 'above-usual' } : undefined,
    noiseK > limits.noisyK ? { at: point.at, quality: 'suspect', reason: 'noisy' } : undefined,
  );
  return {
    signal: { last: point, before: last, leapt, still, noiseK, leapFrom: leaps ? last : undefined },
    judged: [found ?? good(point.at)],
  };
}

function rateOf(from: Point, to: Point, limits: SignalLimits): Judged | undefined {
  const kPerS = differ(from, to) / Math.max(1, to.at - from.at);
  if (kPerS > limits.badKPerS) return { at: to.at, quality: 'bad', reason: 'rate' };
  return kPerS > limits.suspectKPerS ? { at: to.at, quality: 'suspect', reason: 'rate' } : undefined;
}

function stillLeapt({ leapt }: Signal, point: Point, limits: SignalLimits): Point | undefined {
  if (!leapt || point.at - leapt.at >= LEAP_HELD_S) return undefined;
  return differ(leapt, point) <= limits.spikeK ? undefined : leapt;
}

function stillWith({ last, still, noiseK }: Signal, point: Point): NonNullable<Signal['still']> {
  if (last && still && last.shownC === point.shownC) return { ...still, samples: still.samples + 1 };
  return { since: point.at, samples: 1, noiseK };
}

function stuckOf(still: NonNullable<Signal['still']>, { at, shownC }: Point, limits: SignalLimits): Judged | undefined {
  const { since, samples, noiseK } = still;
  if (shownC < limits.stillAboveC || noiseK < limits.stillNoiseK) return undefined;
  const forS = at - since;
  if (limits.stillBadS !== undefined && forS >= limits.stillBadS && samples >= STILL_BAD_SAMPLES) return { at, quality: 'bad', reason: 'stuck' };
  return forS >= limits.stillSuspectS && samples >= STILL_SUSPECT_SAMPLES ? { at, quality: 'suspect', reason: 'stuck' } : undefined;
}

/**
 * Standard deviation from sample to sample, from how far each lies off the line between its neighbours: a course that climbs adds
 * nothing. The second difference of white noise has the variance 1.5 s^2. A leap counts as a small one: a lone spike is no noise.
 */
function noiseWith({ before, last, noiseK }: Signal, point: Point, { spikeK }: SignalLimits): number {
  if (!before || !last || point.at - last.at > NOISE_GAP_S || last.at - before.at > NOISE_GAP_S || point.at === before.at) return noiseK;
  const onLine = before.shownC + ((point.shownC - before.shownC) * (last.at - before.at)) / (point.at - before.at);
  const share = 1 - Math.exp(-(point.at - last.at) / NOISE_OVER_S);
  const offK = Math.min(2 * spikeK, Math.abs(last.shownC - onLine));
  return Math.sqrt((1 - share) * noiseK ** 2 + (share * offK ** 2) / 1.5);
}

/** Judges a whole series, in order of time: each sample once, as it stands when all are known. */
export function judgeSeries(samples: readonly Sample[], use: ProbeUse, from: Signal = NEW_SIGNAL): { readonly signal: Signal; readonly judged: readonly Judged[] } {
  const judged = new Map<EpochS, Judged>();
  let signal = from;
  for (const sample of samples) {
    const next = judgeNext(signal, sample, use);
    signal = next.signal;
    for (const one of next.judged) judged.set(one.at, one);
  }
  return { signal, judged: [...judged.values()] };
}
