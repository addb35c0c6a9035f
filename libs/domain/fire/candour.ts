import { clamp, later } from '../quantity/index.js';
import { lookAhead } from './ahead.js';
import { type FireBelief, MEMBERS } from './belief.js';
import { expected } from './filter.js';
import type { Surroundings } from './pit.js';

/**
 * A belief that is held against itself: what it expects of the chamber a while ahead, if nobody touches the fire, is set beside what the
 * probes then show. So a pit that differs less from the model than most gets a narrower fan, one that differs more a wider one.
 */

/** So far ahead, min: most fires are left alone that long after a look. */
const EXPECTS_MIN = 20;
/** A temperature older than this came from a look, not from a probe, s. */
export const PROBED_S = 240;
/** Stretch of the fan about its mean in a pit that has shown nothing of its own, so that 80 % of what comes lies within p10 and p90. Source: our fit, tests/bench/fire-skill.mjs. */
export const STRETCH = 1.08;
/** Noise and lasting error of the middle of two probes, K. Source: our fit. */
const READ_SD_K = 1;
/** Before a pit has shown anything, its spread counts as seen right so many times; one surprise counts no more than this, in squares of the spread. Source: our rule. */
const TAKEN_AS_RIGHT = 3;
const MOST_SURPRISE = 9;
/** The fan is never made narrower or wider than this by what was seen. Source: our rule. */
const NARROWEST = 0.55;
const WIDEST = 1.5;

/** The belief with what it expects of itself, where probes feed it and nothing is expected yet; to be asked before time passes. */
export function expecting(belief: FireBelief, around: Surroundings): FireBelief {
  const { at, expects, lastTempAt } = belief;
  if (expects !== undefined || belief.ungraded || lastTempAt === undefined || at - lastTempAt > PROBED_S) return belief;
  const { tempC } = lookAhead(belief, around, EXPECTS_MIN);
  const { mean, variance } = expected(tempC.subarray(EXPECTS_MIN * MEMBERS));
  return { ...belief, expects: { at: later(at, EXPECTS_MIN * 60), tempC: mean, sdK: STRETCH * Math.sqrt(variance) } };
}

/** Nothing is expected any more: hands were at the fire, or the belief began again. */
export function expectingNothing(belief: FireBelief): FireBelief {
  const { expects: _gone, ...rest } = belief;
  return rest;
}

/**
 * What both probes show, set beside what was expected of this instant.
 *
 *     z^2 = (T_read - T_expected)^2 / (sd^2 + (1 K)^2)                                                     Source: our rule
 */
export function comparedWith(belief: FireBelief, readC: number): FireBelief {
  const { expects, surprises } = belief;
  if (expects === undefined || belief.at < expects.at) return belief;
  const rest = expectingNothing(belief);
  if (belief.at - expects.at > PROBED_S) return rest;
  const surprise = Math.min(MOST_SURPRISE, (readC - expects.tempC) ** 2 / (expects.sdK ** 2 + READ_SD_K ** 2));
  return { ...rest, surprises: { count: (surprises?.count ?? 0) + 1, sum: (surprises?.sum ?? 0) + surprise } };
}

/** How wide this fire's fan is to be beside that of a pit of which nothing was seen; 1 there. */
export function widthOf({ surprises }: FireBelief): number {
  if (surprises === undefined) return 1;
  return clamp(Math.sqrt((TAKEN_AS_RIGHT + surprises.sum) / (TAKEN_AS_RIGHT + surprises.count)), NARROWEST, WIDEST);
}
