import { cookingTime, type Cut } from '@stokehold/domain/food';
import { epochS, HOUR_S, seedFrom, type EpochS } from '@stokehold/domain/quantity';
import { usualDryKgPerS } from '@stokehold/domain/wood';
import type { CookPit, CookPlanProblem, CookWay, PlannedCook } from '../cook-plan/index.js';
import { BEARS_KG_PER_M2, COVERED_FRAC, type LoadingCook, type LoadingFacts, type LoadingPit } from './facts.js';

/** From lighting until food goes on: a bed fit for the first split (P3, about 45 min), then the steel. Source: common practice, no source. */
const WARM_UP_S = 5400;
/** Looks of four minutes every half hour (P1). Source: common practice, no source. */
const CHECK_S_PER_HOUR = 480;
/** How much hotter a pit may be held than its band asks. Source: our choice. */
const HOTTER_K = 10;
/** Air outside that the heat of wood is reckoned against, and kilograms as burned for one of dry wood. */
const OUTSIDE_C = 15;
const AS_BURNED = 1.15;
/** Loading, wrapping and taking off: once for the pit, and for each piece. Source: our choice. */
const HANDLING_S = 120;
const HANDLING_S_PER_PIECE = 25;
/** A wrap for a piece: paper or foil. Source: our choice of its price. */
const WRAP_CENTS = 40;
/** Members of a forecast in steady heat: enough for one time in forty. */
const MEMBERS = 60;

/** Whole five degrees, so that pits with nearly the same band share their forecasts. */
const heatOf = ({ band }: LoadingPit) => Math.round((band.lowC + band.highC) / 10) * 5;

function pitOf(pit: LoadingPit, facts: LoadingFacts, burns: boolean): CookPit {
  const tempC = heatOf(pit);
  const dryKgPerHour = usualDryKgPerS({ lengthM: pit.chamberLengthM, diameterM: pit.chamberDiameterM }) * HOUR_S;
  const areaM2 = pit.zoneLengthsM.reduce((sum, lengthM) => sum + lengthM * pit.chamberDiameterM, 0);
  const heats = [tempC, tempC + HOTTER_K].map((heat) => {
    const woodKgPerHour = (dryKgPerHour * AS_BURNED * (heat - OUTSIDE_C)) / (tempC - OUTSIDE_C);
    return { tempC: heat, woodKgPerHour, woodCentsPerHour: Math.round(woodKgPerHour * facts.woodCentsPerKg) };
  });
  return { id: pit.id, areaM2: areaM2 * COVERED_FRAC, bearsKg: areaM2 * BEARS_KG_PER_M2, heats, warmUpS: WARM_UP_S, crewSPerHour: CHECK_S_PER_HOUR, ...(burns && { burningAtC: tempC }) };
}

/** Cooking times in steady heat, reckoned once for each cut, weight, heat and wrap. */
export class CookingTimes {
  private readonly known = new Map<string, CookWay | undefined>();

  way(cut: Cut, pieceKg: number, tempC: number, wrapped: boolean): CookWay | undefined {
    const kg = Math.max(0.05, Math.round(pieceKg * 10) / 10);
    const name = JSON.stringify([cut, kg, tempC, wrapped]);
    if (!this.known.has(name)) this.known.set(name, wayOf(cut, kg, tempC, wrapped));
    return this.known.get(name);
  }
}

function wayOf(cut: Cut, pieceKg: number, airTempC: number, wrapped: boolean): CookWay | undefined {
  const time = cookingTime({ cut, pieceKg, airTempC, seed: seedFrom('cook-plan', cut.code), members: MEMBERS, wrap: { how: wrapped ? 'by-rule' : 'never' } });
  if (!time.ok || time.value.cookS.length === 0) return undefined;
  const takesS = time.value.cookS.map((seconds) => Math.max(1, Math.round(seconds)));
  const middleS = takesS[Math.floor(takesS.length / 2)]!;
  return { tempC: airTempC, takesS, outOf: MEMBERS, cents: 0, ...(wrapped && { wrapAfterS: Math.round(middleS * 0.6) }) };
}

/** What is left of a cook that is on: times through the points of its forecast, straight between them. */
function waysOn(tempC: number, onAt: EpochS, doneAt: NonNullable<LoadingCook['doneAt']>, pitId: CookWay['pitId']): readonly CookWay[] {
  const marks = [0.1, 0.5, 0.9, 0.95];
  const takesS = Array.from({ length: 40 }, (_, i) => {
    const frac = (i + 0.5) / 40;
    const k = Math.min(2, Math.max(0, marks.filter((mark) => mark <= frac).length - 1));
    const slope = (doneAt[k + 1]! - doneAt[k]!) / (marks[k + 1]! - marks[k]!);
    return Math.max(1, Math.round(doneAt[k]! + slope * (frac - marks[k]!) - onAt));
  }).sort((a, b) => a - b);
  return [{ tempC, takesS, outOf: 40, cents: 0, ...(pitId !== undefined && { pitId }) }];
}

function cookOf(cook: LoadingCook & { readonly serviceId: NonNullable<LoadingCook['serviceId']> }, facts: LoadingFacts, times: CookingTimes): PlannedCook {
  const pieceKg = cook.weightKg / cook.pieces;
  const handling = HANDLING_S + HANDLING_S_PER_PIECE * cook.pieces;
  const { cut, on } = cook;
  const burning = on && facts.pits.find(({ id }) => id === on.pitId);
  const heats = [...new Set(facts.pits.flatMap((pit) => [heatOf(pit), heatOf(pit) + HOTTER_K]))].sort((a, b) => a - b);
  const fresh = heats.flatMap((heat) => [false, ...(cut.wrap ? [true] : [])].flatMap((wrapped): CookWay[] => {
    const way = times.way(cut, pieceKg, heat, wrapped);
    return way ? [{ ...way, cents: wrapped ? WRAP_CENTS * cook.pieces : 0 }] : [];
  }));
  const ways = burning && on ? (cook.doneAt ? waysOn(heatOf(burning), on.at, cook.doneAt, on.pitId) : fresh.filter(({ tempC }) => tempC === heatOf(burning)).slice(0, 1)) : fresh;
  return {
    id: cook.id, serviceId: cook.serviceId, areaM2: Math.round(cut.areaM2PerKg * cook.weightKg * 1e4) / 1e4, massKg: cook.weightKg, pieceKg, ways,
    restLeastS: cut.rest.leastS, keepMostS: cut.rest.mostS + cut.hold.mostS, loadS: handling, wrapS: handling, unloadS: handling, ...(burning && on && { fixed: { pitId: on.pitId, way: 0, onAt: on.at } }),
  };
}

/** The cook plan's problem: cooks with a service that is still to come. A cook without one is loaded, not planned. */
export function yardProblem(facts: LoadingFacts, times: CookingTimes): CookPlanProblem {
  const services = facts.services.filter(({ id, readyBy }) => readyBy > facts.now && facts.cooks.some(({ serviceId }) => serviceId === id));
  const cooks = facts.cooks.flatMap((cook) => (cook.serviceId !== null && services.some(({ id }) => id === cook.serviceId) ? [cookOf({ ...cook, serviceId: cook.serviceId }, facts, times)] : []));
  const on = new Set(facts.cooks.flatMap((cook) => (cook.on ? [cook.on.pitId] : [])));
  const until = epochS(Math.max(facts.now + HOUR_S, ...services.map(({ readyBy }) => readyBy)));
  return {
    from: facts.now, until, services, cooks, pits: facts.pits.map((pit) => pitOf(pit, facts, pit.lit || on.has(pit.id))), crew: facts.crew.filter((one) => one.until > one.from),
    parameters: { crewCentsPerHour: facts.crewCentsPerHour },
  };
}
