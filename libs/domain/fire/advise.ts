import { clamp, type EpochS } from '../quantity/index.js';
import type { Piece } from '../wood/index.js';
import type { AirSet } from './air-set.js';
import { choicesOf } from './choose.js';
import { type AdviceAction, piecesOf } from './actions.js';
import type { FireBelief } from './belief.js';
import { memberAt, MEMBERS } from './belief.js';
import { estimateOf, type FireEstimate } from './estimate.js';
import { lifeSum } from './grades.js';
import { standardPiece } from './kindle.js';
import type { Band, Surroundings } from './pit.js';
import { pencilRule } from './pencil-rule.js';
import { quantileOf } from './quantile.js';

export type AdviceReasonCode =
  | 'bed-nearly-out' | 'bed-low' | 'below-band' | 'above-band' | 'split-has-life' | 'split-nearly-gone' | 'holds-band'
  | 'not-yet-lit' | 'nothing-known';
/** Why the air is to change: hotter or cooler until the next look, a fire that wind drives or holds back, or back to everyday firing. */
export type AirReasonCode = 'air-warmer' | 'air-cooler' | 'air-wind' | 'air-usual';

/** How to leave the air until the next look. */
export interface AirAdvice {
  readonly set: AirSet;
  /** What of it differs from how it stands now; never empty. A screen goes up before anything else. */
  readonly changes: readonly (keyof AirSet)[];
  readonly reason: AirReasonCode;
}

/** The best that can follow an action. */
export interface AdviceChoice {
  readonly action: AdviceAction;
  readonly lookAgainS: number;
  /** Absent: the air stays as it is. */
  readonly air?: AirAdvice;
  /** Minutes inside the band expected over the horizon of the search, and dry wood burnt in it, kg. */
  readonly inBandMin?: number;
  readonly woodKg?: number;
  /** Price of this choice, only for comparing choices. */
  readonly cost: number;
  /** Kelvin-minutes expected outside the band over the horizon of the search. */
  readonly outOfBandKMin: number;
  readonly bedLostRiskFrac: number;
  /** If nothing more were done after it; absent when the band is held to the horizon. */
  readonly leavesBandAt?: EpochS;
}

/** What to do at the fire now. Machine words and numbers: whoever shows it writes the sentence. */
export interface Advice {
  readonly madeAt: EpochS;
  readonly action: AdviceAction;
  readonly lookAgainS: number;
  /** Absent: the air stays as it is. */
  readonly air?: AirAdvice;
  /** What this advice is expected to do, beside the alternatives; absent when the advice is the pencil's. */
  readonly expects?: AdviceChoice;
  /** A fresh split flares: with another still burning it goes on the door side. */
  readonly layFreshOnDoorSide: boolean;
  readonly reason: {
    readonly code: AdviceReasonCode;
    /** Glowing bed, and what a full one is, kg. */
    readonly bedKg: number;
    readonly fullBedKg: number;
    readonly tempC: number;
    readonly splitLeftFrac: number;
  };
  readonly leavesBandAt?: EpochS;
  /** Best of each other action, best first; empty when the advice is the pencil's. */
  readonly alternatives: readonly AdviceChoice[];
  readonly source: 'forecast' | 'pencil-rule';
  /** Pieces that the advice asks for and the cart does not hold. */
  readonly shortOnCart: number;
}
export interface WoodAtHand extends Piece {
  readonly onCart: number;
  /** Offcuts at hand; no more than these are advised. */
  readonly offcuts?: number;
}
export interface AdviseAsk extends Surroundings {
  readonly band: Band;
  /** The standard split of the cart; thin and thick ones are cut from or chosen beside it. */
  readonly wood: WoodAtHand;
  /** quick: for every minute and every pit; full: for the person who stands at the fire. */
  readonly effort?: 'quick' | 'full';
  /** Which pieces turn out wet is drawn from it: the same seed, the same advice. */
  readonly seed: number;
}

/** Nothing seen for so long: the forecast has nothing to go on, s. Source: our fit. */
const UNKNOWN_S = 100 * 60;
const RESCUE_WAIT_S = 10 * 60;
const PENCIL_WAIT_S = 30 * 60;
const LIGHTING_WAIT_S = 15 * 60;
const MUCH_LIFE_FRAC = 0.5;
const LITTLE_LIFE_FRAC = 0.35;

/**
 * Advice for a person at the fire: the first action whose best continuation is cheapest, among those that do not risk the
 * bed. A bed that is nearly out goes before everything: two thin splits on the coals now. Where nothing was seen since the
 * lighting or for long, the pencil rule speaks. Source: our fit, tests/bench/fire-skill.mjs.
 *
 * @returns the same advice for the same belief, ask and seed
 * @throws OutOfRangeError for weather, air, load or wood that cannot be
 */
export function advise(belief: FireBelief, ask: AdviseAsk): Advice {
  const estimate = estimateOf(belief);
  if (estimate.mode === 'bed-nearly-out' || estimate.mode === 'out') return rescue(belief, estimate, ask);
  if (belief.ungraded) return lighting(belief, estimate, ask);
  if (belief.lastSeenAt === undefined || belief.at - belief.lastSeenAt > UNKNOWN_S) return byPencil(belief, estimate, ask);
  return byForecast(belief, estimate, ask);
}

function byForecast(belief: FireBelief, estimate: FireEstimate, ask: AdviseAsk): Advice {
  const ranked = choicesOf(belief, ask);
  const [chosen] = ranked;
  if (chosen === undefined) throw new RangeError('no action to choose from');
  const others = ranked.filter(({ action }, nth) => nth > 0 && action !== chosen.action && ranked.findIndex((one) => one.action === action) === nth);
  return {
    ...spoken(belief, estimate, ask, chosen.action, reasonOf(chosen.action, estimate, ask.band)),
    lookAgainS: chosen.lookAgainS,
    ...(chosen.air === undefined ? {} : { air: chosen.air }),
    ...(chosen.leavesBandAt === undefined ? {} : { leavesBandAt: chosen.leavesBandAt }),
    expects: chosen,
    alternatives: others,
    source: 'forecast',
  };
}

/** The largest of what speaks for an action, in the order of worth: bed, temperature, wood. */
function reasonOf(action: AdviceAction, estimate: FireEstimate, band: Band): AdviceReasonCode {
  const tempC = estimate.chamberTempC.p50;
  if (action === 'rake') return tempC > band.highC ? 'above-band' : estimate.splitLeftFrac >= MUCH_LIFE_FRAC ? 'split-has-life' : 'holds-band';
  if (estimate.bedGrade === 'low') return 'bed-low';
  if (tempC < band.lowC) return 'below-band';
  if (tempC > band.highC && action === 'one-thin') return 'above-band';
  return estimate.splitLeftFrac <= LITTLE_LIFE_FRAC ? 'split-nearly-gone' : 'holds-band';
}

const rescue = (belief: FireBelief, estimate: FireEstimate, ask: AdviseAsk): Advice => ({
  ...spoken(belief, estimate, ask, 'two-thin', 'bed-nearly-out'), lookAgainS: RESCUE_WAIT_S, alternatives: [], source: 'pencil-rule',
});
const lighting = (belief: FireBelief, estimate: FireEstimate, ask: AdviseAsk): Advice => ({
  ...spoken(belief, estimate, ask, 'rake', 'not-yet-lit'), lookAgainS: LIGHTING_WAIT_S, alternatives: [], source: 'pencil-rule',
});

function byPencil(belief: FireBelief, estimate: FireEstimate, ask: AdviseAsk): Advice {
  const action = pencilRule({
    bed: estimate.bedGrade, splitLifeSum: believedLifeSum(belief), chamberTempC: estimate.chamberTempC.p50, band: ask.band,
  });
  return { ...spoken(belief, estimate, ask, action, 'nothing-known'), lookAgainS: PENCIL_WAIT_S, alternatives: [], source: 'pencil-rule' };
}

/** What is left of all splits together, in standard splits of this pit, p50. */
function believedLifeSum(belief: FireBelief): number {
  const standardKg = standardPiece(belief.shape).dryKg;
  return quantileOf(Float64Array.from({ length: MEMBERS }, (_, m) => lifeSum(belief.members, memberAt(m), belief.pieces, standardKg)), 0.5);
}

/** What every advice says, whoever made it. */
function spoken(belief: FireBelief, estimate: FireEstimate, ask: AdviseAsk, action: AdviceAction, code: AdviceReasonCode) {
  const laid = piecesOf(action, ask.wood).length;
  return {
    madeAt: belief.at,
    action,
    layFreshOnDoorSide: laid > 1 || (laid === 1 && estimate.splitsBurning > 0),
    reason: {
      code, bedKg: estimate.glowingBedKg, fullBedKg: estimate.fullBedKg, tempC: estimate.chamberTempC.p50,
      splitLeftFrac: clamp(estimate.splitLeftFrac, 0, 1),
    },
    shortOnCart: Math.max(0, laid - Math.max(0, ask.wood.onCart)),
  };
}
