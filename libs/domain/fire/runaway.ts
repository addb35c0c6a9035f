import type { EpochS } from '../quantity/index.js';
import type { ProbeEnd } from './see.js';
import type { FireTrouble } from './trouble.js';

/** A probe reading as it came in, before anything judged it. */
export interface RawReading {
  readonly takenAt: EpochS;
  readonly tempC: number;
}

/** 25 °F in one minute, or 15 °F a minute over two. Source: our fit; the fastest that fed fires of the bench do is 10 °F a minute. */
const FAST_K_PER_MIN = 25 / 1.8;
const STEADY_K_PER_MIN = 15 / 1.8;
const FAST_S = 60;
const STEADY_S = 120;
/** A chamber colder than this, 250 °F, climbs as steadily while its fire is lit: there only the fast climb counts, °C. Source: our fit, practice nights. */
const LIT_C = 121;
/** Beside the span, a reading may be so much older. */
const SLACK_S = 20;
/** A probe that changed by less than this in the last minutes is on no such climb, K. */
export const RUNS_AWAY_LEAST_K = (FAST_K_PER_MIN * (FAST_S - SLACK_S)) / 60;
/** Where one step carries more of a rise than this, a probe came back to itself or was moved: grease heats a chamber, it does not leap. Source: our own choice. */
const LEAP_FRAC = 0.75;
/** A lone reading that leaps so far and comes back is a spike; whether the newest will come back only the next one tells. Source: our own choice. */
const SPIKE_K = 8;
/** Older readings than this say nothing of now. */
const FRESH_S = 90;
/** A jump counts only when this many readings carry it. */
const LEAST_READINGS = 3;

/**
 * Whether a pit's temperature runs away as no fed fire makes it: grease may burn. Reads the probes as they come, before the
 * estimator's gate, which would throw such readings out. One leap between two readings is a failing probe, not a fire, and a lone
 * reading is nothing.
 *
 * @param told.fireEnd, told.stackEnd  raw readings of the last minutes, in order of time; either may be empty
 * @returns the faster end, or undefined
 */
export function runningAway(told: {
  readonly fireEnd: readonly RawReading[];
  readonly stackEnd: readonly RawReading[];
  readonly now: EpochS;
}): Extract<FireTrouble, { code: 'running-away' }> | undefined {
  const found = (['fire-end', 'stack-end'] as const).flatMap((end) => {
    const riseKPerMin = riseOf(end === 'fire-end' ? told.fireEnd : told.stackEnd, told.now);
    return riseKPerMin === undefined ? [] : [{ code: 'running-away', end: end satisfies ProbeEnd, riseKPerMin } as const];
  });
  return found.sort((a, b) => b.riseKPerMin - a.riseKPerMin)[0];
}

function riseOf(readings: readonly RawReading[], now: EpochS): number | undefined {
  const sound = withoutSpikes(readings.filter(({ tempC, takenAt }) => Number.isFinite(tempC) && takenAt <= now));
  const last = sound[sound.length - 1];
  if (last === undefined || now - last.takenAt > FRESH_S) return undefined;
  const climbs = [[FAST_S, FAST_K_PER_MIN], ...(last.tempC < LIT_C ? [] : [[STEADY_S, STEADY_K_PER_MIN]] as const)] as const;
  for (const [spanS, limit] of climbs) {
    const within = sound.filter(({ takenAt }) => last.takenAt - takenAt <= spanS + SLACK_S);
    const first = within[0];
    if (first === undefined || within.length < LEAST_READINGS || last.takenAt - first.takenAt < spanS - SLACK_S) continue;
    const riseK = last.tempC - first.tempC;
    if (within.some((one, nth) => nth > 0 && one.tempC - within[nth - 1]!.tempC > LEAP_FRAC * riseK)) continue;
    const risesKPerMin = (riseK * 60) / (last.takenAt - first.takenAt);
    if (risesKPerMin > limit) return risesKPerMin;
  }
  return undefined;
}

/** Leaves out what leapt from the reading before it and was not held by the one after. */
function withoutSpikes(readings: readonly RawReading[]): readonly RawReading[] {
  return readings.filter(({ tempC }, nth) => {
    const before = readings[nth - 1];
    const leapK = before === undefined ? 0 : tempC - before.tempC;
    if (Math.abs(leapK) <= SPIKE_K) return true;
    const after = readings[nth + 1];
    return after !== undefined && (after.tempC - tempC) / leapK > -0.5;
  });
}
