import { type EpochS, later } from '../quantity/index.js';
import { type AdviceAction, piecesOf } from './actions.js';
import type { AdviceChoice, AdviseAsk, AirAdvice, AirReasonCode } from './advise.js';
import { airChanges, airOf, type AirSet, nearestAirSet, USUAL_AIR_SET } from './air-set.js';
import { bedRiskUntil } from './bed-ahead.js';
import { widened } from './bed-risk.js';
import type { FireBelief } from './belief.js';
import { type StepInputs, stepInputsOf } from './flows.js';
import { NEARLY_OUT_FRAC } from './grades.js';
import { standardPiece } from './kindle.js';
import type { Surroundings, Weather } from './pit.js';
import { REFERENCE_SHAPE } from './pit-shape.js';
import { better, bestPlanOf, type FirstAction, FULL_SEARCH, type Planned, type PlanTerms, QUICK_SEARCH, type Search } from './plan-ahead.js';
import { type Roll, type RolledState, startRoll } from './roll.js';
import { laidPieceOf } from './see.js';
import { STEP_S } from './step.js';

const ACTIONS: readonly AdviceAction[] = ['rake', 'one', 'two', 'one-thin', 'one-thick', 'two-thin'];
const OFFCUT_ACTIONS: readonly AdviceAction[] = ['offcut', 'two-offcuts'];
/** Wind along the pit that a screen, or a wider door, is worth a thought for, m/s. Source: our fit. */
const STRONG_M_PER_S = 3;

interface Weighed extends Planned {
  readonly action: AdviceAction;
  readonly air: AirSet;
}

/** Everything that the search for advice shares. */
interface Weighing {
  readonly belief: FireBelief;
  readonly ask: AdviseAsk;
  readonly now: AirSet;
  readonly search: Search;
  readonly roll: Roll & { readonly start: RolledState };
  readonly terms: PlanTerms;
}

/**
 * All actions with the best that can follow each, cheapest first: with the air as everyday firing leaves it, and for the best of
 * them with other ways to leave it. Source: our fit, tests/bench/fire-skill.mjs.
 */
export function choicesOf(belief: FireBelief, ask: AdviseAsk): readonly AdviceChoice[] {
  const weighing = weighingOf(belief, ask);
  const { search, now } = weighing;
  const actions = [...ACTIONS, ...OFFCUT_ACTIONS.filter((action) => piecesOf(action, ask.wood).length <= (ask.wood.offcuts ?? 0))];
  const usual = { ...USUAL_AIR_SET, screen: now.screen };
  const ranked = actions.flatMap((action) => weigh(weighing, action, usual)).sort(first);
  const airs = airsWorthTrying(ask.weather, now);
  const bedIsNear = ranked.slice(0, 1).some((weighed) => isNear(weighing, weighed));
  const trimmed = ranked.slice(0, search.airsFor).flatMap((weighed) => airs.flatMap((air) => weigh(weighing, weighed.action, air, bedIsNear ? undefined : weighed)));
  return bedFirst(weighing, [...ranked, ...trimmed].sort(first)).map((weighed) => choiceOf(weighed, belief.at, ask.weather, now));
}

/** Draws that tell one lost bed in a hundred; the bed is worth them when a member comes this near to nearly out; so many plans are tried. Source: our fit. */
const DRAWS = 128;
const NEAR = 1.8;
const MOST_TRIED = 4;

const isNear = ({ roll }: Weighing, { lowestBedKg }: Weighed) => lowestBedKg < NEAR * NEARLY_OUT_FRAC * roll.p.bedKg;

/** The order of worth: a plan that may lose the bed in more than one case in a hundred goes behind those that do not, counted on many draws. */
function bedFirst(weighing: Weighing, ranked: readonly Weighed[]): readonly Weighed[] {
  const { belief, ask, terms } = weighing;
  if (!ranked.slice(0, 1).some((weighed) => isNear(weighing, weighed))) return ranked;
  const many = startRoll(widened(belief, DRAWS), ask, DRAWS, Math.max(...weighing.search.waitsMin));
  const counted = ranked.slice(0, MOST_TRIED).map((weighed) =>
    isNear(weighing, weighed) ? { ...weighed, bedRiskFrac: bedRiskUntil(many, firstOf(weighing, weighed.action, weighed.air), weighed.waitMin, terms) } : weighed,
  );
  return [...counted, ...ranked.slice(MOST_TRIED)].sort(first);
}

const first = (a: Planned, b: Planned) => (better(a, b) ? -1 : better(b, a) ? 1 : 0);

function weighingOf(belief: FireBelief, ask: AdviseAsk): Weighing {
  const search = ask.effort === 'quick' ? QUICK_SEARCH : FULL_SEARCH;
  const roll = startRoll(belief, ask, search.members, search.horizonMin);
  const now = nearestAirSet(ask.air);
  const standard = standardPiece(belief.shape);
  return {
    belief, ask, search, roll, now,
    terms: {
      band: ask.band,
      standard: { ...standard, moisture: ask.wood.moisture },
      kgToReference: standardPiece(REFERENCE_SHAPE).dryKg / standard.dryKg,
      later: inputsOf(roll, belief, ask, { ...USUAL_AIR_SET, screen: now.screen }),
      seed: ask.seed,
    },
  };
}

const inputsOf = (roll: Roll, belief: FireBelief, around: Surroundings, air: AirSet): StepInputs =>
  stepInputsOf(roll.p, { ...around, air: airOf(air) }, belief.position, STEP_S);

const firstOf = ({ belief, ask, roll }: Weighing, action: AdviceAction, air: AirSet): FirstAction => ({
  laid: piecesOf(action, ask.wood).map(laidPieceOf), air: inputsOf(roll, belief, ask, air),
});

/** An action with the best that can follow it; nothing where that is not better than the plan to beat. */
function weigh(weighing: Weighing, action: AdviceAction, air: AirSet, toBeat?: Weighed): readonly Weighed[] {
  const planned = bestPlanOf(weighing.roll, firstOf(weighing, action, air), weighing.search, weighing.terms, toBeat);
  return planned === undefined ? [] : [{ ...planned, action, air }];
}

/** Ways to leave the air that may be worth their trouble: a screen against wind onto the firebox, a wide door against wind onto the stack, else choked. */
function airsWorthTrying(weather: Weather, now: AirSet): readonly AirSet[] {
  const along = weather.windMPerS * Math.cos(weather.fromFireEndRad);
  const usual = { ...USUAL_AIR_SET, screen: now.screen };
  const airs: AirSet[] = [{ ...usual, door: 'one-finger' }, { ...usual, door: 'shut' }];
  if (along >= STRONG_M_PER_S && !now.screen) airs.push({ ...usual, screen: true });
  if (along < STRONG_M_PER_S && now.screen) airs.push({ ...usual, screen: false });
  if (along <= -STRONG_M_PER_S) airs.push({ ...usual, door: 'two-fingers' }, { ...usual, door: 'hand-wide' });
  return airs;
}

function choiceOf(weighed: Weighed, at: EpochS, weather: Weather, now: AirSet): AdviceChoice {
  const air = airAdviceOf(weighed.air, now, weather);
  return {
    action: weighed.action,
    lookAgainS: weighed.waitMin * 60,
    ...(air === undefined ? {} : { air }),
    cost: weighed.cost,
    outOfBandKMin: weighed.outOfBandKMin,
    inBandMin: weighed.inBandMin,
    woodKg: weighed.woodKg,
    bedLostRiskFrac: weighed.bedRiskFrac,
    ...(weighed.leavesAfterMin === undefined ? {} : { leavesBandAt: later(at, weighed.leavesAfterMin * 60) }),
  };
}

function airAdviceOf(set: AirSet, now: AirSet, weather: Weather): AirAdvice | undefined {
  const changes = airChanges(now, set);
  return changes.length === 0 ? undefined : { set, changes, reason: airReason(set, weather) };
}

function airReason(set: AirSet, weather: Weather): AirReasonCode {
  const along = weather.windMPerS * Math.cos(weather.fromFireEndRad);
  if (set.screen || (along <= -STRONG_M_PER_S && (set.door === 'two-fingers' || set.door === 'hand-wide'))) return 'air-wind';
  if (set.door === 'shut' || set.door === 'one-finger' || set.damper !== 'open') return 'air-cooler';
  return set.door === 'usual' ? 'air-usual' : 'air-warmer';
}
