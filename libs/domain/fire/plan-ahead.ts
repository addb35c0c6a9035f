import { chamberK } from './chamber-temp.js';
import { memberAt } from './belief.js';
import type { StepInputs } from './flows.js';
import { bedNearlyOut, glowingKg } from './grades.js';
import { layByNeed, type LayTerms, layPieces } from './keep-pace.js';
import type { LaidPiece } from './lay.js';
import type { Band } from './pit.js';
import { copyOf, type Roll, type RolledState, rollMinute } from './roll.js';
import { quantile, sortFew } from './quantile.js';

/**
 * Prices of a plan. In °F and minutes, as they were tuned: a degree outside the band costs 1 a minute, a degree off the aim
 * 0.03 squared; later minutes count less; a kilogram that the glowing bed lacks at the end 400; a kilogram of wood 1; a walk 20
 * over its wait; a minute of air choked to nothing 1. Source: our fit, tests/bench/fire-skill.mjs.
 */
const F_PER_K = 1.8;
const SQUARE_PRICE = 0.03;
const DISCOUNT_MIN = 35;
const BED_PRICE_PER_KG = 400;
const WOOD_PRICE_PER_KG = 1;
const WALK_PRICE = 20;
const CHOKE_PRICE = 1;
/** A pit further below its aim than this is being brought up: colder costs no more, or it would be driven far beyond its band, K. Source: our fit. */
const COLDEST_K = 20;
/** The aim lies above the middle of the band, because putting things off costs more heat than it saves, K. Source: our fit. */
const AIM_ABOVE_MIDDLE_K = 2.2;
/** Glowing bed that the end should find, of the reference bed: 0.4 of 0.5 kg. Source: our fit. */
const END_BED_FRAC = 0.8;

/** Which plans are looked at, and how far. */
export interface Search {
  readonly members: number;
  readonly horizonMin: number;
  readonly waitsMin: readonly number[];
  /** After the next look somebody comes by again every so many minutes. */
  readonly paceMin: number;
  /** For so many of the best actions other ways to leave the air are tried. */
  readonly airsFor: number;
}
export const FULL_SEARCH: Search = { members: 16, horizonMin: 90, waitsMin: [12, 18, 25, 32, 40, 48], paceMin: 32, airsFor: 3 };
export const QUICK_SEARCH: Search = { members: 6, horizonMin: 70, waitsMin: [18, 26, 34, 44], paceMin: 32, airsFor: 1 };

export interface PlanTerms extends LayTerms {
  readonly band: Band;
  /** Dry wood of the reference split over that of this pit's: prices were tuned in kilograms of the reference pit. */
  readonly kgToReference: number;
  /** Everyday air: what later looks leave behind. */
  readonly later: StepInputs;
}
/** A first action: pieces laid, and the air until the next look with the share of everyday flow that it chokes. */
export interface FirstAction {
  readonly laid: readonly LaidPiece[];
  readonly air: StepInputs;
}
/** Best plan that begins with an action. */
export interface Planned {
  readonly waitMin: number;
  readonly cost: number;
  readonly outOfBandKMin: number;
  readonly inBandMin: number;
  readonly woodKg: number;
  /** Share of members whose bed comes to be nearly out. */
  readonly bedRiskFrac: number;
  /** Lowest loose bed of any member before the next look, kg. */
  readonly lowestBedKg: number;
  /** Minutes until the middle of the members leaves the band, if nothing more is done; absent when it stays in. */
  readonly leavesAfterMin?: number;
}

/** What a minute of a plan counts for, and all of them together. */
const weightOf = (minute: number) => Math.exp(-(minute + 1) / DISCOUNT_MIN);
const weightUntil = (horizonMin: number) => weightOf(0) * (1 - Math.exp(-horizonMin / DISCOUNT_MIN)) / (1 - Math.exp(-1 / DISCOUNT_MIN));

interface Account {
  paid: number;
  outKMin: number;
  inMin: number;
  woodKg: number;
  lowestBedKg: number;
  /** 1 for each member whose bed was nearly out at some minute. */
  readonly nearlyOut: Uint8Array;
}
const copyAccount = (account: Account): Account => ({ ...account, nearlyOut: account.nearlyOut.slice() });

/**
 * Rolls every wait that may follow the first action and keeps the cheapest.
 *
 * @param toBeat  a plan that goes before all that are not better than it
 * @returns undefined where no plan is better than the one to beat
 */
export function bestPlanOf(roll: Roll & { readonly start: RolledState }, first: FirstAction, search: Search, terms: PlanTerms, toBeat?: Planned): Planned | undefined {
  const state = copyOf(roll.start);
  layPieces(roll, state, first.laid, terms);
  const account: Account = { paid: 0, outKMin: 0, inMin: 0, woodKg: 0, lowestBedKg: Infinity, nearlyOut: new Uint8Array(roll.count) };
  const leaving = { wasInside: false, afterMin: undefined as number | undefined };
  let best: Planned | undefined;
  for (let minute = 0; minute < search.horizonMin; minute++) {
    if (search.waitsMin.includes(minute)) best = followPace(roll, copyOf(state), copyAccount(account), minute, search, terms, best ?? toBeat) ?? best;
    if (minute >= lastOf(search.waitsMin) && (best === undefined || leaving.afterMin !== undefined)) break;
    liveMinute(roll, state, account, minute, terms, first.air);
    noteLeaving(leaving, middleInside(roll, state, terms.band), minute + 1);
  }
  return best && { ...best, ...(leaving.afterMin === undefined ? {} : { leavesAfterMin: leaving.afterMin }) };
}

/** The band is left when a middle that was inside is above it, or when it is below. */
function noteLeaving(leaving: { wasInside: boolean; afterMin: number | undefined }, inside: -1 | 0 | 1, minute: number): void {
  if (inside < 0 || (inside > 0 && leaving.wasInside)) leaving.afterMin ??= minute;
  leaving.wasInside ||= inside === 0;
}

/** -1 when the middle of the members is below the band, 1 above, 0 inside. */
function middleInside(roll: Roll, state: RolledState, band: Band): -1 | 0 | 1 {
  const temps = new Float64Array(roll.count);
  for (let m = 0; m < roll.count; m++) temps[m] = chamberK(state.x, memberAt(m)) - 273.15;
  const middleC = quantile(sortFew(temps), 0.5);
  return middleC < band.lowC ? -1 : middleC > band.highC ? 1 : 0;
}

const lastOf = (values: readonly number[]) => values[values.length - 1] ?? 0;
/** The bed comes first: of two plans the one that risks it less, if either risks it in more than one case in a hundred; then the price. */
const RISK_BORNE = 0.01;
/** Whether plan `a` goes before plan `b`: less risk to the bed, then the lower price. */
export const better = (a: Planned, b: Planned) =>
  Math.max(a.bedRiskFrac, RISK_BORNE) === Math.max(b.bedRiskFrac, RISK_BORNE) ? a.cost < b.cost : a.bedRiskFrac < b.bedRiskFrac;

/**
 * From the next look on somebody comes by at an even pace and lays what each member then needs, with everyday air. A plan is let go as
 * soon as it has cost more than the one to beat.
 */
function followPace(roll: Roll, state: RolledState, account: Account, waitMin: number, search: Search, terms: PlanTerms, toBeat: Planned | undefined): Planned | undefined {
  const { lowestBedKg } = account;
  const weight = weightUntil(search.horizonMin);
  const walk = WALK_PRICE / waitMin;
  const mostPaid = toBeat && toBeat.bedRiskFrac <= RISK_BORNE ? (toBeat.cost - walk) * weight : Infinity;
  let nextLook = waitMin;
  let looks = 1;
  for (let minute = waitMin; minute < search.horizonMin; minute++) {
    if (account.paid + WOOD_PRICE_PER_KG * account.woodKg * terms.kgToReference > mostPaid) return undefined;
    if (minute === nextLook) {
      layByNeed(roll, state, terms, looks++);
      nextLook += search.paceMin;
    }
    liveMinute(roll, state, account, minute, terms, terms.later);
  }
  const { lackKg, bedRiskFrac } = endingOf(roll, state, account);
  const ending = (BED_PRICE_PER_KG * lackKg + WOOD_PRICE_PER_KG * account.woodKg) * terms.kgToReference;
  const planned = {
    waitMin,
    cost: (account.paid + ending) / weight + walk,
    outOfBandKMin: account.outKMin,
    inBandMin: account.inMin,
    woodKg: account.woodKg,
    bedRiskFrac,
    lowestBedKg,
  };
  return toBeat === undefined || better(planned, toBeat) ? planned : undefined;
}

/** What the members' beds lack at the end, kg, and the share of members whose bed came to be nearly out. */
function endingOf(roll: Roll, state: RolledState, account: Account): { readonly lackKg: number; readonly bedRiskFrac: number } {
  let lackKg = 0;
  let bedRiskFrac = 0;
  for (let m = 0; m < roll.count; m++) {
    lackKg += Math.max(0, END_BED_FRAC * roll.p.bedKg - glowingKg(state.x, memberAt(m), state.pieces)) / roll.count;
    bedRiskFrac += account.nearlyOut[m]! / roll.count;
  }
  return { lackKg, bedRiskFrac };
}

/** One minute of a plan, and what it costs. */
function liveMinute(roll: Roll, state: RolledState, account: Account, minute: number, terms: PlanTerms, air: StepInputs): void {
  const burntBeforeKg = roll.flows.burntKg;
  rollMinute(roll, state, minute, air);
  const { lowC, highC } = terms.band;
  const aimC = 0.5 * (lowC + highC) + AIM_ABOVE_MIDDLE_K;
  const weight = weightOf(minute);
  let paid = 0;
  let outK = 0;
  let inside = 0;
  for (let m = 0; m < roll.count; m++) {
    const member = memberAt(m);
    const tempC = chamberK(state.x, member) - 273.15;
    const out = tempC < lowC ? lowC - tempC : tempC > highC ? tempC - highC : 0;
    outK += out;
    if (out === 0) inside++;
    const off = Math.max(tempC - aimC, -COLDEST_K);
    paid += F_PER_K * Math.min(out, tempC < lowC ? COLDEST_K : out) + SQUARE_PRICE * F_PER_K * F_PER_K * off * off;
    if (bedNearlyOut(roll.p, state.x, member)) account.nearlyOut[m] = 1;
    account.lowestBedKg = Math.min(account.lowestBedKg, state.x[member]!);
  }
  const choked = Math.max(0, 1 - air.flowPerRootPa / terms.later.flowPerRootPa);
  account.paid += weight * (paid / roll.count + CHOKE_PRICE * choked);
  account.outKMin += outK / roll.count;
  account.inMin += inside / roll.count;
  account.woodKg += (roll.flows.burntKg - burntBeforeKg) / roll.count;
}
