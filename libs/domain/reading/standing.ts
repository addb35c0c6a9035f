import type { EpochS, ProbeId } from '../quantity/index.js';
import type { ProbeUse } from './limits.js';
import type { Judged, Quality, SampleReason } from './signal.js';

/** What is wrong with a probe beside its own series: told by its neighbours, the air, or the clock. */
export type ProbeReason = SampleReason | 'reversed' | 'swapped-ends' | 'in-air' | 'stale' | 'missing';

/** A probe with the last of its readings. */
export interface ProbeNow {
  readonly id: ProbeId;
  readonly use: ProbeUse;
  /** Of a chamber probe. */
  readonly end?: 'fire-end' | 'stack-end' | undefined;
  /** Corrected; absent where the last reading was a fault. */
  readonly tempC?: number | undefined;
  readonly last: Judged;
  /** How far apart its readings usually are, s. */
  readonly paceS: number;
}
/** A pit with its probes, and what stands around them. */
export interface ProbesOfPit {
  readonly now: EpochS;
  readonly probes: readonly ProbeNow[];
  readonly ambientTempC: number;
  /** How much hotter the fire end is believed to be than the stack end, K. */
  readonly fireEndOverK?: number | undefined;
}
export interface ProbeStanding {
  readonly id: ProbeId;
  readonly quality: Quality;
  readonly reason?: ProbeReason | undefined;
  readonly lastAt: EpochS;
}

/** Missed readings after which a probe is stale, and after which it is missing. Source: our own choice. */
const STALE_AFTER = 3;
const MISSING_AFTER = 12;
/** Readings are not expected closer together than this, s. */
const LEAST_PACE_S = 10;
/** A shorted thermocouple reads the place of the short: near the air, while its neighbour is hot, K. Source: our own choice. */
const NEAR_AIR_K = 15;
const NEIGHBOUR_HOT_K = 40;
/** One that is connected the wrong way round reads below the air while its neighbour is hot, K. Source: our own choice. */
const BELOW_AIR_K = 8;
/** Ends that differ by this are told apart, and are swapped when they differ as much the other way, K. Source: our own choice. */
const ENDS_APART_K = 10;
/** No meat comes this near the air of a burning chamber on the pit: the probe hangs beside it, K and °C. Source: our own choice. */
const AIR_OVER_MEAT_K = 8;
const HOT_CHAMBER_C = 95;

/**
 * How each probe of a pit stands now: by its last reading, by how long ago that was, and by its neighbours. A neighbour makes a
 * probe suspect, never bad: the neighbour may be the wrong one. Held to standing.test.ts
 */
export function standingOf(pit: ProbesOfPit): readonly ProbeStanding[] {
  return pit.probes.map((probe) => {
    const { id, last } = probe;
    const silent = silenceOf(probe, pit.now);
    const stands = (quality: Quality, reason?: ProbeReason): ProbeStanding => ({ id, quality, reason, lastAt: last.at });
    if (silent === 'missing') return stands('bad', silent);
    if (last.quality === 'bad') return stands('bad', last.reason);
    if (silent === 'stale') return stands('suspect', silent);
    const beside = besideOthers(probe, pit);
    if (beside) return stands('suspect', beside);
    return stands(last.quality, last.reason);
  });
}

/** Whether a probe's good readings speak for its chamber: also while only its newest one is doubted, since those before it were not. */
export const isBelieved = ({ quality, reason }: ProbeStanding): boolean => quality === 'good' || reason === 'spike' || reason === 'noisy';

function silenceOf({ last, paceS }: ProbeNow, now: EpochS): 'stale' | 'missing' | undefined {
  const missed = (now - last.at) / Math.max(LEAST_PACE_S, paceS);
  return missed > MISSING_AFTER ? 'missing' : missed > STALE_AFTER ? 'stale' : undefined;
}

function besideOthers(probe: ProbeNow, pit: ProbesOfPit): ProbeReason | undefined {
  const { tempC } = probe;
  if (tempC === undefined) return undefined;
  const chamber = pit.probes.filter((other) => other.use === 'chamber' && other.id !== probe.id && other.last.quality !== 'bad' && other.tempC !== undefined);
  const hottest = Math.max(...chamber.map((other) => other.tempC ?? -Infinity));
  if (probe.use === 'food') {
    const inAir = hottest > HOT_CHAMBER_C && tempC > hottest - AIR_OVER_MEAT_K;
    return inAir ? 'in-air' : undefined;
  }
  if (hottest - tempC > NEIGHBOUR_HOT_K && hottest > pit.ambientTempC + NEIGHBOUR_HOT_K) {
    if (tempC < pit.ambientTempC - BELOW_AIR_K) return 'reversed';
    if (Math.abs(tempC - pit.ambientTempC) <= NEAR_AIR_K) return 'short';
  }
  return areSwapped(probe, chamber, pit) ? 'swapped-ends' : undefined;
}

/** The fire end is believed hotter, and is read colder by as much. Both probes are named: either may hang where the other should. */
function areSwapped(probe: ProbeNow, others: readonly ProbeNow[], { fireEndOverK = 0 }: ProbesOfPit): boolean {
  const other = others.find(({ end }) => end !== undefined && end !== probe.end);
  if (!probe.end || !other || Math.abs(fireEndOverK) < ENDS_APART_K) return false;
  const readOverK = (probe.tempC! - other.tempC!) * (probe.end === 'fire-end' ? 1 : -1);
  return Math.sign(readOverK) !== Math.sign(fireEndOverK) && Math.abs(readOverK) >= ENDS_APART_K;
}

/** How far apart a probe's readings usually are, after one more; a long gap is a silence and no pace. Source: our own choice. */
export function paceAfter(paceS: number | undefined, gapS: number): number {
  if (gapS <= 0 || gapS > LONGEST_PACE_S) return paceS ?? LEAST_PACE_S;
  return paceS === undefined ? gapS : paceS + (gapS - paceS) * NEW_SHARE;
}
const LONGEST_PACE_S = 900;
const NEW_SHARE = 0.2;
