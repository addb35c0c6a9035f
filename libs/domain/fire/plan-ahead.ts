import { randomStream, seedFrom } from '../quantity/index.js';
import { chamberK } from './advance.js';
import type { AdviceAction } from './actions.js';
import { memberAt } from './belief.js';
import { bedNearlyOut, glowingKg } from './grades.js';
import { type LaidPiece, makeRoom, putPiece, rake } from './lay.js';
import { pieceAt } from './layout.js';
import { uncertainPiece } from './noise.js';
import type { Band } from './pit.js';
import { copyOf, type Roll, type RolledState, rollMinute } from './roll.js';
import { quantileOf } from './quantile.js';

/**
 * Prices of a plan. In °F and minutes, as they were tuned: a degree outside the band costs 1 a minute, a degree off the aim
 * 0.03 squared; later minutes count less; a kilogram that the glowing bed lacks at the end 400; a kilogram of wood 1; a walk 6
 * over its wait. Source: our fit, tests/bench/fire-skill.mjs.
 */
const F_PER_K = 1.8;
const SQUARE_PRICE = 0.03;
const DISCOUNT_MIN = 35;
const BED_PRICE_PER_KG = 400;
const WOOD_PRICE_PER_KG = 1;
const WALK_PRICE = 6;
/** The aim lies above the middle of the band, because putting things off costs more heat than it saves, K: 2.7 °F. Source: our fit. */
const AIM_ABOVE_MIDDLE_K = 1.5;
/** Glowing bed that the end should find, of the reference bed: 0.4 of 0.5 kg. Source: our fit. */
const END_BED_FRAC = 0.8;

/** Which plans are looked at, and how far. */
export interface Search {
  readonly members: number;
  readonly horizonMin: number;
  readonly waitsMin: readonly number[];
  readonly pacesMin: readonly number[];
}
export const FULL_SEARCH: Search = { members: 12, horizonMin: 110, waitsMin: [15, 22, 30, 38, 46], pacesMin: [30, 38, 46, 56] };
export const QUICK_SEARCH: Search = { members: 8, horizonMin: 85, waitsMin: [15, 28, 42], pacesMin: [34, 48] };

export interface PlanTerms {
  readonly band: Band;
  readonly standard: LaidPiece;
  /** Dry wood of the reference split over that of this pit's: prices were tuned in kilograms of the reference pit. */
  readonly kgToReference: number;
  readonly seed: number;
}
/** Best plan that begins with an action. */
export interface Planned {
  readonly action: AdviceAction;
  readonly waitMin: number;
  readonly cost: number;
  readonly outOfBandKMin: number;
  /** Share of members whose bed comes to be nearly out. */
  readonly bedRiskFrac: number;
  /** Minutes until the middle of the members leaves the band, if nothing more is done; absent when it stays in. */
  readonly leavesAfterMin?: number;
}

interface Account {
  paid: number;
  weight: number;
  outKMin: number;
  woodKg: number;
  /** 1 for each member whose bed was nearly out at some minute. */
  readonly nearlyOut: Uint8Array;
}
const copyAccount = (account: Account): Account => ({ ...account, nearlyOut: account.nearlyOut.slice() });

/** Rolls every wait and pace that may follow `action` and keeps the cheapest. */
export function bestPlanOf(roll: Roll & { readonly start: RolledState }, action: AdviceAction, laid: readonly LaidPiece[], search: Search, terms: PlanTerms): Planned {
  const state = copyOf(roll.start);
  layOn(roll, state, laid, terms.seed, 0);
  const account: Account = { paid: 0, weight: 0, outKMin: 0, woodKg: 0, nearlyOut: new Uint8Array(roll.count) };
  let best: Planned | undefined;
  let leavesAfterMin: number | undefined;
  let wasInside = false;
  for (let minute = 0; minute < search.horizonMin; minute++) {
    if (search.waitsMin.includes(minute)) {
      for (const paceMin of search.pacesMin) {
        const planned = followPace(roll, copyOf(state), copyAccount(account), { action, waitMin: minute, paceMin }, search, terms);
        if (best === undefined || better(planned, best)) best = planned;
      }
    }
    if (minute >= lastOf(search.waitsMin) && leavesAfterMin !== undefined) break;
    liveMinute(roll, state, account, minute, terms);
    const middleC = quantileOf(Float64Array.from({ length: roll.count }, (_, m) => chamberK(state.x, memberAt(m)) - 273.15), 0.5);
    const inside = middleC >= terms.band.lowC && middleC <= terms.band.highC;
    if (!inside && (wasInside || middleC < terms.band.lowC)) leavesAfterMin ??= minute + 1;
    wasInside ||= inside;
  }
  if (best === undefined) throw new RangeError('a search needs at least one wait and one pace');
  return { ...best, ...(leavesAfterMin === undefined ? {} : { leavesAfterMin }) };
}

const lastOf = (values: readonly number[]) => values[values.length - 1] ?? 0;
/** The bed comes first: of two plans the one that risks it less, if either risks it in more than one case in a hundred; then the price. */
const RISK_BORNE = 0.01;
/** Whether plan `a` goes before plan `b`: less risk to the bed, then the lower price. */
export const better = (a: Planned, b: Planned) =>
  Math.max(a.bedRiskFrac, RISK_BORNE) === Math.max(b.bedRiskFrac, RISK_BORNE) ? a.cost < b.cost : a.bedRiskFrac < b.bedRiskFrac;

function followPace(
  roll: Roll, state: RolledState, account: Account, plan: { readonly action: AdviceAction; readonly waitMin: number; readonly paceMin: number }, search: Search, terms: PlanTerms,
): Planned {
  let nextLay = plan.waitMin;
  let lays = 1;
  for (let minute = plan.waitMin; minute < search.horizonMin; minute++) {
    if (minute === nextLay) {
      layOn(roll, state, [terms.standard], terms.seed, lays++);
      nextLay += plan.paceMin;
    }
    liveMinute(roll, state, account, minute, terms);
  }
  let lackKg = 0;
  let atRisk = 0;
  for (let m = 0; m < roll.count; m++) {
    lackKg += Math.max(0, END_BED_FRAC * roll.p.bedKg - glowingKg(state.x, memberAt(m), state.pieces)) / roll.count;
    atRisk += account.nearlyOut[m]! / roll.count;
  }
  const ending = (BED_PRICE_PER_KG * lackKg + WOOD_PRICE_PER_KG * account.woodKg) * terms.kgToReference;
  return {
    action: plan.action,
    waitMin: plan.waitMin,
    cost: (account.paid + ending) / account.weight + WALK_PRICE / plan.waitMin,
    outOfBandKMin: account.outKMin,
    bedRiskFrac: atRisk,
  };
}

/** One minute of a plan, and what it costs. */
function liveMinute(roll: Roll, state: RolledState, account: Account, minute: number, terms: PlanTerms): void {
  const burntBeforeKg = roll.flows.burntKg;
  rollMinute(roll, state, minute);
  const { lowC, highC } = terms.band;
  const aimC = 0.5 * (lowC + highC) + AIM_ABOVE_MIDDLE_K;
  const weight = Math.exp(-(minute + 1) / DISCOUNT_MIN);
  let paid = 0;
  let outK = 0;
  for (let m = 0; m < roll.count; m++) {
    const member = memberAt(m);
    const tempC = chamberK(state.x, member) - 273.15;
    const out = tempC < lowC ? lowC - tempC : tempC > highC ? tempC - highC : 0;
    outK += out;
    paid += F_PER_K * out + SQUARE_PRICE * F_PER_K * F_PER_K * (tempC - aimC) * (tempC - aimC);
    if (bedNearlyOut(roll.p, state.x, member)) account.nearlyOut[m] = 1;
  }
  account.paid += (weight * paid) / roll.count;
  account.weight += weight;
  account.outKMin += outK / roll.count;
  account.woodKg += (roll.flows.burntKg - burntBeforeKg) / roll.count;
}

/** Rakes, then lays pieces on all rolled members; which piece is how wet depends on its number only, so all plans share it. */
function layOn(roll: Roll, state: RolledState, pieces: readonly LaidPiece[], seed: number, number: number): void {
  for (let m = 0; m < roll.count; m++) rake(state.x, memberAt(m), state.pieces);
  for (let i = 0; i < pieces.length; i++) {
    const random = randomStream(seedFrom(seed, 'laid', number, i));
    const place = makeRoom(roll.p, state.x, roll.count, state.pieces);
    for (let m = 0; m < roll.count; m++) putPiece(state.x, pieceAt(memberAt(m), place), uncertainPiece(pieces[i]!, random));
    state.pieces = place + 1;
  }
}
