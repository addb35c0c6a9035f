import { drawAir } from './air.js';
import { type FireBelief, memberAt, MEMBERS } from './belief.js';
import { bedTailFrac } from './bed-risk.js';
import { modeOf, NEARLY_OUT_SHARE } from './estimate.js';
import { newFlows, stepInputsOf } from './flows.js';
import { ASH_KG, LOG_BURN, LOG_COAL } from './layout.js';
import type { Surroundings } from './pit.js';
import { parametersOf } from './pit-shape.js';
import { byUrgency, type FireTrouble } from './trouble.js';
import { LOST_S } from './see.js';
import { STEP_S } from './step.js';

/** Thresholds. Source: our fit, unless said. */
const SAID_FOR_S = 1800;
const UNKNOWN_S = 3600;
const APART_FOR_S = 1200;
/** Log of the burn multiplier below which a lot is asked after: on simulated nights dry lots stay above it, wet ones fall below. */
const WET_LOG = -0.2;
/** Ash beside the mass that halves the coals' burning. */
const ASH_FRAC = 0.1;
const WIND_UP = 1.25;
const WIND_DOWN = 0.75;

const meanOf = (belief: FireBelief, index: number): number => {
  let sum = 0;
  for (let m = 0; m < MEMBERS; m++) sum += belief.members[memberAt(m) + index]!;
  return sum / MEMBERS;
};

/**
 * What is wrong at a fire as it is believed, most urgent first; empty on a good night. Grease is not among it: that is looked for in
 * raw readings, `runningAway`.
 */
export function troublesOf(belief: FireBelief, around: Surroundings): readonly FireTrouble[] {
  return byUrgency([...bedTroubles(belief), ...seeingTroubles(belief), ...woodTroubles(belief), ...windTroubles(belief, around)]);
}

function bedTroubles(belief: FireBelief): FireTrouble[] {
  const mode = modeOf(belief);
  if (mode === 'start-up') return [{ code: 'not-lit' }];
  if (mode === 'out') return [{ code: 'out' }];
  const nearlyOutFrac = bedTailFrac(belief);
  return nearlyOutFrac > NEARLY_OUT_SHARE ? [{ code: 'bed-nearly-out', nearlyOutFrac }] : [];
}

function seeingTroubles(belief: FireBelief): FireTrouble[] {
  const { at, lastSeenAt, divergedAt, endsApartSince, fireEndRejectedSince, stackEndRejectedSince } = belief;
  const found: FireTrouble[] = [];
  if (divergedAt !== undefined && at - divergedAt < SAID_FOR_S) found.push({ code: 'diverged', at: divergedAt });
  if (lastSeenAt !== undefined && at - lastSeenAt >= UNKNOWN_S) found.push({ code: 'nothing-known', since: lastSeenAt });
  for (const [end, since] of [['fire-end', fireEndRejectedSince], ['stack-end', stackEndRejectedSince]] as const) {
    if (since !== undefined && at - since >= LOST_S) found.push({ code: 'probe-lost', end, since });
  }
  if (endsApartSince !== undefined && at - endsApartSince >= APART_FOR_S) {
    found.push({ code: 'ends-disagree', apartK: belief.endsApartK ?? 0, since: endsApartSince });
  }
  return found;
}

function woodTroubles(belief: FireBelief): FireTrouble[] {
  const p = parametersOf(belief.shape);
  const found: FireTrouble[] = [];
  if (belief.unrecordedAt !== undefined && belief.at - belief.unrecordedAt < SAID_FOR_S) found.push({ code: 'wood-not-recorded', at: belief.unrecordedAt });
  if (belief.ungraded) return found;
  const burn = meanOf(belief, LOG_BURN);
  if (burn <= WET_LOG) found.push({ code: 'wet-lot', burnFactor: Math.exp(burn) });
  const ashKg = meanOf(belief, ASH_KG);
  if (ashKg >= ASH_FRAC * p.ashKg && meanOf(belief, LOG_COAL) < 0) found.push({ code: 'ash', ashKg, burnsFrac: 1 / (1 + ashKg / p.ashKg) });
  return found;
}

/** Air in this wind beside the air in a calm, for the first member: the wind's share is the same for all of them but for their draft. */
function windTroubles(belief: FireBelief, around: Surroundings): FireTrouble[] {
  const p = parametersOf(belief.shape);
  const flow = (windMPerS: number) => {
    const f = newFlows();
    drawAir(p, belief.members, 0, stepInputsOf(p, { ...around, weather: { ...around.weather, windMPerS } }, belief.position, STEP_S), f);
    return f.airKgPerS;
  };
  const airFactor = flow(around.weather.windMPerS) / flow(0);
  if (airFactor <= WIND_UP && airFactor >= WIND_DOWN) return [];
  return [{ code: 'wind-burst', onto: airFactor > 1 ? 'firebox' : 'stack', airFactor }];
}
