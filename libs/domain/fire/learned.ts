import type { EpochS } from '../quantity/index.js';
import { requireRange } from '../quantity/index.js';
import { type FireBelief, memberAt, MEMBERS } from './belief.js';
import { beliefFromBytes, beliefToBytes } from './bytes.js';
import { LOG_BURN, LOG_COAL, LOG_LOSS } from './layout.js';

/** One multiplier that a pit has shown: middle of its log, and how far that may be off. */
export interface LearnedFactor {
  readonly log: number;
  readonly sd: number;
}
/** What a night taught of a pit beside its set-up: heat it loses, how fast splits burn and how fast coals do. Air wanders with gusts and is not kept. */
export interface PitLearned {
  readonly loss: LearnedFactor;
  readonly burn: LearnedFactor;
  readonly coal: LearnedFactor;
}
/** A point of a pit's history. */
export interface LearnedPoint extends PitLearned {
  readonly at: EpochS;
}

const SLOW = [['loss', LOG_LOSS], ['burn', LOG_BURN], ['coal', LOG_COAL]] as const;
/** A night's end is one sample of a pit that changes with weather and wood: so much of it counts for the next. Source: our fit. */
const CARRIES = 0.5;
/** Nights told apart; older ones fade by this each. Source: our fit. */
const FADES = 0.7;
const LEAST_SD = 0.08;
/** Spread of a pit nobody knows, log. Source: our fit. */
const UNKNOWN_SD: Readonly<Record<keyof PitLearned, number>> = { loss: 0.16, burn: 0.16, coal: 0.18 };

/** What is believed of the pit's own multipliers now. */
export function learnedOf(belief: FireBelief): LearnedPoint {
  const factor = (index: number): LearnedFactor => {
    let sum = 0;
    let squares = 0;
    for (let m = 0; m < MEMBERS; m++) {
      const log = belief.members[memberAt(m) + index]!;
      sum += log;
      squares += log * log;
    }
    const log = sum / MEMBERS;
    return { log, sd: Math.sqrt(Math.max(0, squares / MEMBERS - log * log)) };
  };
  return { at: belief.at, loss: factor(LOG_LOSS), burn: factor(LOG_BURN), coal: factor(LOG_COAL) };
}

/**
 * What a new night begins from: the nights' last points, the latest counting most, drawn halfway back to the set-up, because one
 * night also learns its own weather and wood. No nights: nothing is learned. Source: our fit.
 *
 * @param nights  last point of each night since the pit was set back, any order
 */
export function learnedForTonight(nights: readonly LearnedPoint[]): PitLearned | undefined {
  if (nights.length === 0) return undefined;
  const latestFirst = [...nights].sort((a, b) => b.at - a.at);
  const factor = (name: keyof PitLearned): LearnedFactor => {
    let weight = 0;
    let sum = 0;
    latestFirst.forEach((night, nth) => {
      const counts = FADES ** nth;
      requireRange('learned log', night[name].log, -1, 1);
      weight += counts;
      sum += counts * night[name].log;
    });
    const known = weight / (weight + 2);
    return { log: (CARRIES * sum) / weight, sd: Math.max(LEAST_SD, UNKNOWN_SD[name] * (1 - CARRIES * known)) };
  };
  return { loss: factor('loss'), burn: factor('burn'), coal: factor('coal') };
}

/** Forgets within a running night what was learned of the pit; how the fire stands is kept. Bytes in, bytes out. */
export function setBackLearned(bytes: Uint8Array): Uint8Array {
  const belief = beliefFromBytes(bytes);
  const members = belief.members.slice();
  for (const [name, index] of SLOW) {
    const { log, sd } = learnedOf(belief)[name];
    const widen = UNKNOWN_SD[name] / Math.max(1e-6, sd);
    for (let m = 0; m < MEMBERS; m++) {
      const at = memberAt(m) + index;
      members[at] = Math.max(-0.8, Math.min(0.8, widen * (members[at]! - log)));
    }
  }
  return beliefToBytes({ ...belief, members });
}
