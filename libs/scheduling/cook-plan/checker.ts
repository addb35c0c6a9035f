import type { CookId, PitId, ServiceId } from '@stokehold/domain/quantity';
import { recountCook, recountLevels, windowOf, type Standing } from './checker-recount.js';
import type { CookPlan, CookPlanLevels } from './plan.js';
import type { CookPlanProblem, CookStart } from './problem.js';

/** A rule that a plan of cooks breaks. */
export interface CookPlanViolation {
  readonly code:
    | 'unknown-cook' | 'unknown-pit' | 'unknown-way' | 'cook-twice' | 'cook-missing' | 'fixed-changed' | 'pit-not-allowed' | 'heat-unknown' | 'two-heats' | 'never-done'
    | 'before-pit-ready' | 'pit-not-free' | 'pit-over-full' | 'pit-over-weight' | 'wrong-times' | 'wrong-burn' | 'wrong-service' | 'wrong-crew' | 'wrong-level' | 'below-bound' | 'unplaced-without-reason';
  readonly cookId?: CookId;
  readonly pitId?: PitId;
  readonly serviceId?: ServiceId;
  /** By how much: seconds, m2 or kg. */
  readonly by?: number;
}

/** What a plan breaks, and what it is worth. */
export interface WeighedCooks {
  readonly violations: readonly CookPlanViolation[];
  readonly levels: CookPlanLevels;
  /** Chance in a million by service. */
  readonly services: readonly { readonly serviceId: ServiceId; readonly lateMillionths: number }[];
}

const ROUNDING = 1e-6;

/** Any plan, made by the planner or by hand, against every rule, its levels counted from nothing. It shares no code with the planner. */
export function weighCooks(problem: CookPlanProblem, starts: readonly CookStart[]): WeighedCooks {
  const strangers = starts.flatMap((start): CookPlanViolation[] => {
    const cook = problem.cooks.find(({ id }) => id === start.cookId);
    if (!cook) return [{ code: 'unknown-cook', cookId: start.cookId }];
    if (!problem.pits.some(({ id }) => id === start.pitId)) return [{ code: 'unknown-pit', cookId: cook.id, pitId: start.pitId }];
    return cook.ways[start.way] ? [] : [{ code: 'unknown-way', cookId: cook.id }];
  });
  const twice = starts.filter(({ cookId }, i) => starts.findIndex((one) => one.cookId === cookId) !== i).map(({ cookId }): CookPlanViolation => ({ code: 'cook-twice', cookId }));
  if (strangers.length + twice.length > 0) return { violations: [...strangers, ...twice], levels: NOTHING, services: [] };
  const standing = starts.map((start) => recountCook(problem, start));
  const never = standing.filter(({ takesS }) => takesS === undefined).map(({ cook }): CookPlanViolation => ({ code: 'never-done', cookId: cook.id }));
  const violations = [...never, ...standing.flatMap((one) => ofStart(problem, one)), ...problem.pits.flatMap((pit) => ofPit(standing.filter((one) => one.pit === pit)))];
  return { violations, ...recountLevels(problem, standing) };
}

const NOTHING: CookPlanLevels = { unplaced: Infinity, lateMillionths: Infinity, keptTooLongS: Infinity, crewOverS: Infinity, costCents: Infinity };

function ofStart(problem: CookPlanProblem, { cook, pit, way, start, offAt }: Standing): readonly CookPlanViolation[] {
  const names = { cookId: cook.id, pitId: pit.id };
  const found: CookPlanViolation[] = [];
  const { fixed } = cook;
  if (fixed && (fixed.pitId !== pit.id || fixed.way !== start.way || fixed.onAt - start.onAt >= (problem.parameters?.stepS ?? 900) || start.onAt > fixed.onAt)) found.push({ code: 'fixed-changed', ...names });
  if ((cook.pitIds && !cook.pitIds.includes(pit.id)) || (way.pitId !== undefined && way.pitId !== pit.id)) found.push({ code: 'pit-not-allowed', ...names });
  if (!pit.heats.some(({ tempC }) => tempC === way.tempC) || (pit.burningAtC !== undefined && pit.burningAtC !== way.tempC)) found.push({ code: 'heat-unknown', ...names });
  const lit = Math.max(problem.from, pit.usableFrom ?? -Infinity);
  const ready = pit.burningAtC === undefined ? lit + pit.warmUpS : lit;
  if (!fixed && start.onAt < ready) found.push({ code: 'before-pit-ready', ...names, by: ready - start.onAt });
  const free = Math.min(problem.until, pit.usableUntil ?? Infinity);
  if (!fixed && offAt > free) found.push({ code: 'pit-not-free', ...names, by: offAt - free });
  return found;
}

/** One pit through the whole plan: one heat, and never more than its grate takes and bears. */
function ofPit(there: readonly Standing[]): readonly CookPlanViolation[] {
  const [first] = there;
  if (!first) return [];
  const pitId = first.pit.id;
  const found: CookPlanViolation[] = there.some(({ way }) => way.tempC !== first.way.tempC) ? [{ code: 'two-heats', pitId }] : [];
  const most = (of: (one: Standing) => number) => Math.max(...there.map(({ start: { onAt } }) => there.filter((one) => one.start.onAt <= onAt && onAt < one.offAt).reduce((sum, one) => sum + of(one), 0)));
  const overM2 = most(({ cook }) => cook.areaM2) - first.pit.areaM2;
  const overKg = most(({ cook }) => cook.massKg) - first.pit.bearsKg;
  if (overM2 > ROUNDING) found.push({ code: 'pit-over-full', pitId, by: overM2 });
  if (overKg > ROUNDING) found.push({ code: 'pit-over-weight', pitId, by: overKg });
  return found;
}

/**
 * Every rule that a plan breaks: cover, pits, heat, room, readiness, and that all it says of times, fires, crew, chances,
 * levels and bound is so. A service at risk is no violation; one not owned up to is. Held to cook-plan/checker.test.ts.
 */
export function checkCookPlan(problem: CookPlanProblem, plan: CookPlan): readonly CookPlanViolation[] {
  const { violations, levels, services } = weighCooks(problem, plan.starts);
  if (levels === NOTHING) return violations;
  const owed = problem.cooks.filter(({ id }) => plan.starts.filter(({ cookId }) => cookId === id).length + plan.unplaced.filter(({ cookId }) => cookId === id).length !== 1);
  return [
    ...violations,
    ...owed.map(({ id }): CookPlanViolation => ({ code: 'cook-missing', cookId: id })),
    ...plan.unplaced.filter(({ hindrances }) => hindrances.length !== problem.pits.length).map(({ cookId }): CookPlanViolation => ({ code: 'unplaced-without-reason', cookId })),
    ...times(problem, plan), ...burns(problem, plan), ...outlooks(problem, plan, services), ...crew(problem, plan), ...worth(plan, levels),
  ];
}

function times(problem: CookPlanProblem, plan: CookPlan): readonly CookPlanViolation[] {
  return plan.starts.filter((start) => {
    const { cook, way, offAt, late, readyBy, keptTooLongS, takesS = 0 } = recountCook(problem, start);
    const wrapAt = way.wrapAfterS === undefined ? undefined : start.onAt + way.wrapAfterS;
    return start.offBy !== offAt || start.wrapAt !== wrapAt || start.lateMillionths !== late || start.keptTooLongS !== keptTooLongS || start.tempC !== way.tempC || start.latestOnAt !== Math.floor(readyBy - cook.restLeastS - takesS) ||
      start.offNotAfter !== readyBy - cook.restLeastS || start.offNotBefore !== readyBy - cook.keepMostS;
  }).map(({ cookId }) => ({ code: 'wrong-times', cookId }));
}

function burns(problem: CookPlanProblem, plan: CookPlan): readonly CookPlanViolation[] {
  const standing = plan.starts.map((start) => recountCook(problem, start));
  return problem.pits.filter((pit) => {
    const there = standing.filter((one) => one.pit === pit);
    const told = plan.burns.filter(({ pitId }) => pitId === pit.id);
    if (there.length === 0) return told.length > 0;
    const { from, firstOnAt, until } = windowOf(problem, there);
    const heat = pit.heats.find(({ tempC }) => tempC === there[0]!.way.tempC);
    const [one] = told;
    const lightAt = pit.burningAtC === undefined ? from : undefined;
    return !one || told.length > 1 || one.lightAt !== lightAt || one.firstOnAt !== firstOnAt || one.lastOffBy !== until || one.burnS !== until - from || one.tempC !== heat?.tempC || Math.abs(one.woodKg - (heat.woodKgPerHour * (until - from)) / 3600) > 1e-6;
  }).map(({ id }) => ({ code: 'wrong-burn', pitId: id }));
}

const outlooks = (problem: CookPlanProblem, plan: CookPlan, services: WeighedCooks['services']): readonly CookPlanViolation[] =>
  services.filter(({ serviceId, lateMillionths }) => {
    const told = plan.services.find((one) => one.serviceId === serviceId);
    return !told || told.lateMillionths !== lateMillionths || told.atRisk !== lateMillionths > Math.round((problem.parameters?.lateFrac ?? 0.05) * 1e6);
  }).map(({ serviceId }) => ({ code: 'wrong-service', serviceId }));

function crew(problem: CookPlanProblem, plan: CookPlan): readonly CookPlanViolation[] {
  const { crewHours } = recountLevels(problem, plan.starts.map((start) => recountCook(problem, start)));
  const same = crewHours.length === plan.crewHours.length && crewHours.every(({ from, neededS, thereS }, i) => plan.crewHours[i]!.from === from && Math.abs(plan.crewHours[i]!.neededS - neededS) <= 1 && Math.abs(plan.crewHours[i]!.thereS - thereS) <= 1);
  return same ? [] : [{ code: 'wrong-crew' }];
}

function worth(plan: CookPlan, levels: CookPlanLevels): readonly CookPlanViolation[] {
  const told = plan.levels;
  const wrong = told.unplaced !== levels.unplaced || told.lateMillionths !== levels.lateMillionths || told.keptTooLongS !== levels.keptTooLongS || told.crewOverS !== levels.crewOverS || told.costCents !== levels.costCents;
  const well = levels.unplaced + levels.lateMillionths + levels.keptTooLongS === 0;
  return [...(wrong ? [{ code: 'wrong-level' } as const] : []), ...(well && levels.costCents < plan.boundCents ? [{ code: 'below-bound' } as const] : [])];
}
