import type { EpochS } from '../quantity/index.js';
import { dryMassKg, dryWoodKgPerM3, type Piece } from '../wood/index.js';
import { chamberK } from './chamber-temp.js';
import { type FireBelief, memberAt, MEMBERS } from './belief.js';
import { comparedWith, expectingNothing } from './candour.js';
import { GAUGE_K, INNER_K, LOG_AIR, LOG_LOSS, SHELL_K, THIRDS } from './layout.js';
import type { LaidPiece } from './lay.js';
import { expected, keepPhysical, observe } from './filter.js';
import { parametersOf } from './pit-shape.js';

/** The end of the pit that a probe hangs at. */
export type ProbeEnd = 'fire-end' | 'stack-end';

/** Gauges at both ends, middle and difference: deliberately loose, for probes are biased and the model is wrong, K. Source: our fit. */
const MIDDLE_SD_K = 2.5;
const DIFFERENCE_SD_K = 4.3;
const SINGLE_SD_K = 3.3;
/** The spreads above are meant for one look in two minutes; more frequent ones count for less each. */
const LOOK_S = 120;
/** A reading further away than this many standard deviations is not believed: a probe, and a reading by hand. Source: our fit. */
const PROBE_GATE = 4;
const HAND_GATE = 6;
/** Ends of one chamber this near to each other are a reading, not two slips, K. Source: our fit. */
const ENDS_AGREE_K = 25;
/** Not believed for so long, a probe is lost, s. Source: our fit. */
export const LOST_S = 600;
/** What a thermometer in a pit can show at all, °C. */
const LEAST_C = -60;
const MOST_C = 400;

export interface TempsSeen {
  readonly fireEndTempC?: number | undefined;
  readonly stackEndTempC?: number | undefined;
}
interface Seen {
  readonly belief: FireBelief;
  readonly rejected: readonly ProbeEnd[];
}

/**
 * Takes probe readings of this instant into the belief. What cannot be (not a number, outside -60 to 400 °C, more than four
 * standard deviations away) is named in `rejected` and used for nothing; a probe that has been rejected for ten minutes is
 * named in `lost`. When both ends have been, it is the belief that is wrong: it starts again from the readings and keeps
 * half of what it had learned.
 *
 * @returns a new belief at the same instant
 */
export function seeReadings(belief: FireBelief, seen: TempsSeen): Seen & { readonly lost: readonly ProbeEnd[] } {
  const sinceS = belief.lastTempAt === undefined ? LOOK_S : Math.max(1, belief.at - belief.lastTempAt);
  const taken = takeTemps(noteApart(belief, seen), seen, PROBE_GATE, Math.sqrt(Math.max(1, LOOK_S / sinceS)));
  const noted = noteRejected(comparedIfRead(taken, seen), seen, taken.rejected);
  const lost: ProbeEnd[] = [];
  if (noted.fireEndRejectedSince !== undefined && belief.at - noted.fireEndRejectedSince >= LOST_S) lost.push('fire-end');
  if (noted.stackEndRejectedSince !== undefined && belief.at - noted.stackEndRejectedSince >= LOST_S) lost.push('stack-end');
  if (lost.length < 2 || !plausible(seen.fireEndTempC) || !plausible(seen.stackEndTempC)) return { ...taken, belief: noted, lost };
  const again = startAgain({ ...noted, divergedAt: belief.at }, 0.5 * (seen.fireEndTempC + seen.stackEndTempC) + 273.15);
  return { belief: again, rejected: [], lost: [] };
}

/** Only what both ends show is set beside what was expected of their middle. */
function comparedIfRead({ belief, rejected }: Seen, { fireEndTempC, stackEndTempC }: TempsSeen): FireBelief {
  if (rejected.length > 0 || fireEndTempC === undefined || stackEndTempC === undefined) return belief;
  return comparedWith(belief, 0.5 * (fireEndTempC + stackEndTempC));
}

/**
 * Temperatures read by hand at a check: the same, with a wider gate and at full weight. The first look at a fire knows better
 * than its lighting time does, and two ends that agree with each other know better than the belief: then it starts again
 * from what was read.
 */
export function takeHandTemps(belief: FireBelief, seen: TempsSeen): Seen {
  const taken = takeTemps(belief, seen, HAND_GATE, 1);
  const read = [seen.fireEndTempC, seen.stackEndTempC].filter(plausible);
  const agree = read.length === 2 && Math.abs(read[0]! - read[1]!) <= ENDS_AGREE_K;
  const overruled = read.length > 0 && taken.rejected.length === read.length && (belief.ungraded || agree);
  if (!overruled) return taken;
  return { belief: startAgain(belief, read.reduce((sum, tempC) => sum + tempC, 0) / read.length + 273.15), rejected: [] };
}

const plausible = (tempC: number | undefined): tempC is number => tempC !== undefined && tempC >= LEAST_C && tempC <= MOST_C;

function takeTemps(belief: FireBelief, seen: TempsSeen, gate: number, loosen: number): Seen {
  const p = parametersOf(belief.shape);
  const x = belief.members.slice();
  const over = (value: (member: number) => number) => {
    const values = new Float64Array(MEMBERS);
    for (let m = 0; m < MEMBERS; m++) values[m] = value(memberAt(m));
    return values;
  };
  const gauge = (third: number) => over((member) => x[member + GAUGE_K + third]!);
  const rejected: ProbeEnd[] = [];
  const believed = (tempC: number | undefined, third: number, end: ProbeEnd): number | undefined => {
    if (tempC === undefined) return undefined;
    const { mean, variance } = expected(gauge(third));
    if (plausible(tempC) && Math.abs(tempC + 273.15 - mean) <= gate * Math.sqrt(variance + SINGLE_SD_K ** 2)) return tempC + 273.15;
    rejected.push(end);
    return undefined;
  };
  const fireEndK = believed(seen.fireEndTempC, 0, 'fire-end');
  const stackEndK = believed(seen.stackEndTempC, 2, 'stack-end');
  if (fireEndK !== undefined && stackEndK !== undefined) {
    observe(p, x, belief.pieces, over((member) => chamberK(x, member)), 0.5 * (fireEndK + stackEndK), MIDDLE_SD_K * loosen);
    observe(p, x, belief.pieces, over((member) => x[member + GAUGE_K]! - x[member + GAUGE_K + 2]!), fireEndK - stackEndK, DIFFERENCE_SD_K * loosen);
  } else if (fireEndK !== undefined) {
    observe(p, x, belief.pieces, gauge(0), fireEndK, SINGLE_SD_K * loosen);
  } else if (stackEndK !== undefined) {
    observe(p, x, belief.pieces, gauge(2), stackEndK, SINGLE_SD_K * loosen);
  } else {
    return { belief, rejected };
  }
  return { belief: { ...belief, members: x, lastSeenAt: belief.at, lastTempAt: belief.at }, rejected };
}

/** Ends further apart than what is believed of them, by this, may be a drifting probe, K. Source: our fit. */
const APART_K = 12;

/** Remembers since when both ends have been read too far apart for this fire; ends that agree again clear it. */
function noteApart(belief: FireBelief, { fireEndTempC, stackEndTempC }: TempsSeen): FireBelief {
  if (!plausible(fireEndTempC) || !plausible(stackEndTempC)) return belief;
  let apartK = fireEndTempC - stackEndTempC;
  for (let m = 0; m < MEMBERS; m++) apartK -= (belief.members[memberAt(m) + GAUGE_K]! - belief.members[memberAt(m) + GAUGE_K + 2]!) / MEMBERS;
  const { endsApartSince, endsApartK: _before, ...rest } = belief;
  return Math.abs(apartK) < APART_K ? rest : { ...rest, endsApartSince: endsApartSince ?? belief.at, endsApartK: apartK };
}

/** Remembers since when each end has been rejected; a believed reading clears it, no reading leaves it. */
function noteRejected(belief: FireBelief, seen: TempsSeen, rejected: readonly ProbeEnd[]): FireBelief {
  const since = (tempC: number | undefined, end: ProbeEnd, before: EpochS | undefined) =>
    tempC === undefined ? before : rejected.includes(end) ? (before ?? belief.at) : undefined;
  const fire = since(seen.fireEndTempC, 'fire-end', belief.fireEndRejectedSince);
  const stack = since(seen.stackEndTempC, 'stack-end', belief.stackEndRejectedSince);
  const { fireEndRejectedSince: _fire, stackEndRejectedSince: _stack, ...rest } = belief;
  return {
    ...rest,
    ...(fire === undefined ? {} : { fireEndRejectedSince: fire }),
    ...(stack === undefined ? {} : { stackEndRejectedSince: stack }),
  };
}

/** Both ends have disagreed with the belief for ten minutes: chamber moved to the readings, multipliers halved, bed as last graded. */
function startAgain(belief: FireBelief, readK: number): FireBelief {
  const p = parametersOf(belief.shape);
  const x = belief.members.slice();
  for (let m = 0; m < MEMBERS; m++) {
    const member = memberAt(m);
    const shiftK = readK - chamberK(x, member);
    for (let third = 0; third < THIRDS; third++) {
      for (const part of [SHELL_K, INNER_K, GAUGE_K]) x[member + part + third] = x[member + part + third]! + (part === SHELL_K ? 0.7 : 1) * shiftK * (0.85 + (0.3 * m) / MEMBERS);
    }
    for (let i = LOG_LOSS; i <= LOG_AIR; i++) x[member + i] = 0.5 * x[member + i]!;
    keepPhysical(p, x, member, belief.pieces);
  }
  const { fireEndRejectedSince: _fire, stackEndRejectedSince: _stack, ...rest } = belief;
  return expectingNothing({ ...rest, members: x, lastSeenAt: belief.at, lastTempAt: belief.at });
}

/** A piece of firewood as the fire feels it. @throws OutOfRangeError for a piece that is none */
export function laidPieceOf(piece: Piece): LaidPiece {
  return { dryKg: dryMassKg(piece), halfThicknessM: piece.thicknessM / 2, moisture: piece.moisture, dryKgPerM3: dryWoodKgPerM3(piece) };
}
