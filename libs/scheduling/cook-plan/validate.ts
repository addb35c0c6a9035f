import { ok, refuse, type CookId, type EpochS, type PitId, type Result, type ServiceId } from '@stokehold/domain/quantity';
import { firstWrong, outOfRange } from '../search/index.js';
import { earliestService, type EarliestService } from './earliest.js';
import { COOK_PLAN_PARAMETERS, MOST_COOKS, MOST_PITS, type CookPit, type CookPlanProblem, type CookWay, type PlannedCook } from './problem.js';

/** Why a problem is no problem, and what has to be mended. */
export type CookPlanRefusal =
  | { readonly code: 'horizon-empty' }
  | { readonly code: 'too-many'; readonly what: 'pits' | 'cooks'; readonly most: number }
  | { readonly code: 'no-pits' }
  | { readonly code: 'same-id-twice'; readonly id: string }
  | { readonly code: 'number-out-of-range'; readonly where: string; readonly value: number; readonly min: number; readonly max: number }
  | { readonly code: 'service-unknown'; readonly cookId: CookId; readonly serviceId: ServiceId }
  | { readonly code: 'weight-not-above-zero'; readonly cookId: CookId }
  | { readonly code: 'piece-heavier-than-any-pit-bears'; readonly cookId: CookId; readonly pieceKg: number; readonly bearsKg: number }
  | { readonly code: 'cook-larger-than-any-pit'; readonly cookId: CookId; readonly areaM2: number; readonly mostM2: number }
  | { readonly code: 'no-way'; readonly cookId: CookId }
  | { readonly code: 'times-not-sorted'; readonly cookId: CookId; readonly way: number }
  | { readonly code: 'keep-shorter-than-rest'; readonly cookId: CookId }
  | { readonly code: 'no-heat'; readonly pitId: PitId }
  | { readonly code: 'burns-at-no-heat-of-its-own'; readonly pitId: PitId }
  | { readonly code: 'fixed-unknown'; readonly cookId: CookId }
  | { readonly code: 'crew-overlaps'; readonly at: EpochS }
  | { readonly code: 'service-too-early'; readonly services: readonly (EarliestService & { readonly readyBy: EpochS; readonly byLuckAt: EpochS })[] };

type Found = CookPlanRefusal | undefined;

/**
 * A problem that planner and checker can trust, or what is wrong with it. A service that cannot be met even if everything
 * took its shortest time is refused with the earliest time that can be promised; one that can only be met by luck is planned
 * and shown at risk. Held to cook-plan/validate.test.ts.
 */
export function validateCookPlan(problem: CookPlanProblem): Result<CookPlanProblem, CookPlanRefusal> {
  const refusal = countsOf(problem) ?? firstWrong(problem.pits, pitOf) ?? firstWrong(problem.cooks, (cook) => cookOf(cook, problem)) ?? crewOf(problem) ?? parametersOf(problem) ?? tooEarly(problem);
  return refusal ? refuse(refusal) : ok(problem);
}

const within = (where: string, value: number, min: number, max: number): Found => (value >= min && value <= max ? undefined : { code: 'number-out-of-range', where, value, min, max });

function countsOf({ from, until, pits, cooks, services }: CookPlanProblem): Found {
  if (!(until > from)) return { code: 'horizon-empty' };
  if (pits.length === 0) return { code: 'no-pits' };
  if (pits.length > MOST_PITS) return { code: 'too-many', what: 'pits', most: MOST_PITS };
  if (cooks.length > MOST_COOKS) return { code: 'too-many', what: 'cooks', most: MOST_COOKS };
  return firstWrong([pits, cooks, services], (things: readonly { readonly id: string }[]) => {
    const ids = things.map(({ id }) => id).sort();
    const twice = ids.find((id, i) => id === ids[i + 1]);
    return twice === undefined ? undefined : { code: 'same-id-twice', id: twice };
  }) ?? within('horizon (s)', until - from, 1, 14 * 86_400);
}

function pitOf(pit: CookPit): Found {
  const at = `pits.${pit.id}`;
  if (pit.heats.length === 0) return { code: 'no-heat', pitId: pit.id };
  if (pit.burningAtC !== undefined && !pit.heats.some(({ tempC }) => tempC === pit.burningAtC)) return { code: 'burns-at-no-heat-of-its-own', pitId: pit.id };
  return within(`${at}.areaM2`, pit.areaM2, 1e-3, 100) ?? within(`${at}.bearsKg`, pit.bearsKg, 0.1, 1e5) ?? within(`${at}.warmUpS`, pit.warmUpS, 0, 86_400) ?? within(`${at}.crewSPerHour`, pit.crewSPerHour, 0, 3600) ??
    firstWrong(pit.heats, ({ tempC, woodKgPerHour, woodCentsPerHour }) => within(`${at}.tempC`, tempC, 30, 400) ?? within(`${at}.woodKgPerHour`, woodKgPerHour, 0, 1000) ?? within(`${at}.woodCentsPerHour`, woodCentsPerHour, 0, 1e6));
}

function cookOf(cook: PlannedCook, { pits, services }: CookPlanProblem): Found {
  const at = `cooks.${cook.id}`;
  if (!services.some(({ id }) => id === cook.serviceId)) return { code: 'service-unknown', cookId: cook.id, serviceId: cook.serviceId };
  if (!(cook.massKg > 0) || !(cook.pieceKg > 0)) return { code: 'weight-not-above-zero', cookId: cook.id };
  const bearsKg = Math.max(...pits.map((pit) => pit.bearsKg));
  if (cook.pieceKg > bearsKg) return { code: 'piece-heavier-than-any-pit-bears', cookId: cook.id, pieceKg: cook.pieceKg, bearsKg };
  const mostM2 = Math.max(...pits.map((pit) => pit.areaM2));
  if (cook.areaM2 > mostM2 || cook.massKg > bearsKg) return { code: 'cook-larger-than-any-pit', cookId: cook.id, areaM2: cook.areaM2, mostM2 };
  if (cook.ways.length === 0) return { code: 'no-way', cookId: cook.id };
  if (cook.keepMostS < cook.restLeastS) return { code: 'keep-shorter-than-rest', cookId: cook.id };
  const fixed = cook.fixed;
  if (fixed && (!pits.some(({ id }) => id === fixed.pitId) || !cook.ways[fixed.way])) return { code: 'fixed-unknown', cookId: cook.id };
  return within(`${at}.areaM2`, cook.areaM2, 1e-4, 100) ?? within(`${at}.restLeastS`, cook.restLeastS, 0, 86_400) ?? within(`${at}.keepMostS`, cook.keepMostS, 0, 4 * 86_400) ??
    firstWrong([cook.loadS, cook.wrapS, cook.unloadS], (seconds) => within(`${at}.work (s)`, seconds, 0, 86_400)) ?? firstWrong(cook.ways, (way, w) => wayOf(cook, way, w));
}

function wayOf(cook: PlannedCook, way: CookWay, w: number): Found {
  const at = `cooks.${cook.id}.ways.${w}`;
  if (way.takesS.some((takes, i) => !(takes > 0) || takes < (way.takesS[i - 1] ?? 0))) return { code: 'times-not-sorted', cookId: cook.id, way: w };
  return within(`${at}.takesS`, way.takesS.length, 1, way.outOf) ?? within(`${at}.outOf`, way.outOf, 1, 100_000) ?? within(`${at}.cents`, way.cents, 0, 1e7) ?? within(`${at}.wrapAfterS`, way.wrapAfterS ?? 0, 0, 4 * 86_400);
}

function crewOf({ crew }: CookPlanProblem): Found {
  const sorted = [...crew].sort((a, b) => a.from - b.from);
  return firstWrong(sorted, ({ from, until, people }, i) => (until <= from || (sorted[i + 1]?.from ?? until) < until ? { code: 'crew-overlaps', at: from } : within('crew.people', people, 0, 500)));
}

function parametersOf({ parameters }: CookPlanProblem): Found {
  const name = outOfRange(COOK_PLAN_PARAMETERS, parameters);
  return name && within(`parameters.${name}`, parameters?.[name] ?? 0, COOK_PLAN_PARAMETERS[name].min, COOK_PLAN_PARAMETERS[name].max);
}

function tooEarly(problem: CookPlanProblem): Found {
  const services = problem.services.flatMap((service) => {
    const [luck, surely] = [earliestService(problem, service, true), earliestService(problem, service)];
    return luck && luck.at > service.readyBy ? [{ ...(surely ?? luck), readyBy: service.readyBy, byLuckAt: luck.at }] : [];
  });
  return services.length > 0 ? { code: 'service-too-early', services } : undefined;
}
