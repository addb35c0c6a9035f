import { clamp, type EpochS, later, randomStream, requireRange, seedFrom } from '../quantity/index.js';
import { type FireBelief, memberAt, MEMBERS, PAST_MINUTES, PAST_NUMBERS } from './belief.js';
import { expecting } from './candour.js';
import { chamberK } from './chamber-temp.js';
import { newFlows, setStep, stepInputsOf } from './flows.js';
import { MOST_BED } from './filter.js';
import { bedNearlyOut } from './grades.js';
import { BED_KG } from './layout.js';
import { unknownHeat, wanderMember, wanderOf } from './noise.js';
import type { Surroundings } from './pit.js';
import { parametersOf } from './pit-shape.js';
import { quantile, sortFew } from './quantile.js';
import { STEP_S, stepFire } from './step.js';

/** A week: nobody looks that far from one state. */
const LONGEST_S = 7 * 86_400;
const HOUR_S = 3600;

/**
 * What is believed of a fire after some time in which nobody touched it: every member burns on in steps of 60 s, its
 * multipliers wander, unknown heat comes and goes; what it expects of itself is noted beforehand.
 *
 * @param span.to  not before the belief's instant, at most a week after it
 * @returns a new belief at `to`; the same belief when no time has passed. Same inputs, same numbers to the last bit.
 * @throws OutOfRangeError for a span backwards in time, or weather, air or load that cannot be
 */
export function advance(belief: FireBelief, span: Surroundings & { readonly to: EpochS }): FireBelief {
  const spanS = span.to - belief.at;
  requireRange('span (s)', spanS, 0, LONGEST_S);
  if (spanS === 0) return belief;
  return rolled(expecting(belief, span), span);
}

function rolled(belief: FireBelief, span: Surroundings & { readonly to: EpochS }): FireBelief {
  const p = parametersOf(belief.shape);
  const x = belief.members.slice();
  const f = newFlows();
  const mostBedKg = MOST_BED * p.bedKg;
  const inputs = stepInputsOf(p, span, belief.position, STEP_S);
  const past: number[] = [...belief.past];
  const chamber = new Float64Array(MEMBERS);
  const normals = new Float64Array(4);
  let wander = wanderOf(STEP_S);
  let at = belief.at;
  let dryKgPerS = belief.dryKgPerS;
  while (at < span.to) {
    const stepS = Math.min(STEP_S, span.to - at);
    if (stepS !== inputs.stepS) wander = wanderOf(stepS);
    setStep(p, inputs, stepS);
    const random = randomStream(seedFrom(belief.seed, 'step', at));
    let woodKgPerS = 0;
    let nearlyOut = 0;
    for (let m = 0; m < MEMBERS; m++) {
      const member = memberAt(m);
      for (let i = 0; i < 4; i++) normals[i] = random.normal();
      wanderMember(x, member, wander, normals, 0);
      unknownHeat(x, member, stepS, random);
      stepFire(p, x, member, belief.pieces, inputs, f);
      if (x[member + BED_KG]! > mostBedKg) x[member + BED_KG] = mostBedKg;
      woodKgPerS += f.woodKgPerS / MEMBERS;
      chamber[m] = chamberK(x, member) - 273.15;
      if (bedNearlyOut(p, x, member)) nearlyOut += 1 / MEMBERS;
    }
    at = later(at, stepS);
    dryKgPerS += (woodKgPerS - dryKgPerS) * clamp(stepS / HOUR_S, 0, 1);
    sortFew(chamber);
    past.push(at, quantile(chamber, 0.5), quantile(chamber, 0.05), nearlyOut);
  }
  const kept = past.slice(Math.max(0, past.length - PAST_MINUTES * PAST_NUMBERS));
  return { ...belief, at, dryKgPerS, members: x, past: Float64Array.from(kept) };
}
