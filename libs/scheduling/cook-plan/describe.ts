import { epochS } from '@stokehold/domain/quantity';
import { crewHoursOf } from './crew-hours.js';
import type { Draft } from './draft.js';
import { helpFor } from './help.js';
import type { CookPlan, CookReason, CookUnplaced, PlannedBurn, PlannedStart, ServiceOutlook } from './plan.js';
import type { CookPit, PlannedCook } from './problem.js';
import { burnS, plannedS, shortS, type Choice } from './table.js';

const HOUR = 3600;

function reasonOf(draft: Draft, choice: Choice, on: number): CookReason {
  const { table } = draft;
  if (table.problem.cooks[choice.cook]!.fixed) return 'fixed';
  if (on > choice.high) return 'as-early-as-can-be';
  if (table.choices[choice.cook]!.flat().length === 1) return 'only-way';
  const others = draft.onPit[choice.pit]!.filter((cook) => cook !== choice.cook);
  return others.some((cook) => draft.on[cook]! < on + choice.steps && on < draft.on[cook]! + draft.chosen[cook]!.steps) ? 'shares-a-fire' : 'least-cost';
}

function startOf(draft: Draft, choice: Choice): PlannedStart {
  const { problem, stepS } = draft.table;
  const cook = problem.cooks[choice.cook]!;
  const way = cook.ways[choice.way]!;
  const on = draft.on[choice.cook]!;
  const onAt = problem.from + on * stepS;
  const readyBy = problem.services[draft.table.service[choice.cook]!]!.readyBy;
  const offBy = onAt + choice.steps * stepS;
  return {
    cookId: cook.id, pitId: problem.pits[choice.pit]!.id, way: choice.way, onAt: epochS(onAt), serviceId: cook.serviceId, tempC: way.tempC,
    ...(way.wrapAfterS !== undefined && { wrapAt: epochS(onAt + way.wrapAfterS) }),
    latestOnAt: epochS(readyBy - cook.restLeastS - plannedS(problem, cook, way)!),
    offBy: epochS(offBy), likelyOffAt: epochS(onAt + (way.takesS[Math.floor(way.outOf / 2)] ?? choice.steps * stepS)),
    offNotBefore: epochS(readyBy - cook.keepMostS), offNotAfter: epochS(readyBy - cook.restLeastS),
    lateMillionths: draft.table.lateMillionths(choice, on), keptTooLongS: Math.max(0, readyBy - cook.keepMostS - onAt - shortS(problem, way)), reason: reasonOf(draft, choice, on),
  };
}

function burnOf(draft: Draft, pit: CookPit, p: number): PlannedBurn | undefined {
  const { problem, stepS } = draft.table;
  const window = draft.window(p);
  if (!window) return undefined;
  const list = draft.onPit[p]!;
  const heat = pit.heats[draft.chosen[list[0]!]!.heat]!;
  const [first, last] = window.map((step) => problem.from + step * stepS) as [number, number];
  const seconds = burnS(problem, pit, first, last);
  const fullest = Math.max(...list.map((cook) => list.filter((other) => draft.on[other]! <= draft.on[cook]! && draft.on[cook]! < draft.on[other]! + draft.chosen[other]!.steps).reduce((sum, other) => sum + problem.cooks[other]!.areaM2, 0)));
  return {
    pitId: pit.id, tempC: heat.tempC, ...(pit.burningAtC === undefined && { lightAt: epochS(first - pit.warmUpS) }), firstOnAt: epochS(first), lastOffBy: epochS(last), burnS: seconds,
    woodKg: (heat.woodKgPerHour * seconds) / HOUR, woodCents: Math.round((heat.woodCentsPerHour * seconds) / HOUR), crewS: Math.round((pit.crewSPerHour * seconds) / HOUR), fullestFrac: fullest / pit.areaM2,
  };
}

function outlookOf(draft: Draft, starts: readonly PlannedStart[], s: number): ServiceOutlook {
  const { problem, limitMillionths } = draft.table;
  const service = problem.services[s]!;
  const cooks = problem.cooks.filter(({ serviceId }) => serviceId === service.id);
  const own = starts.filter(({ serviceId }) => serviceId === service.id);
  const whole = own.length === cooks.length;
  const lateMillionths = whole ? Math.min(1e6, own.reduce((sum, one) => sum + one.lateMillionths, 0)) : 1e6;
  const ready = own.map((start) => {
    const cook = problem.cooks.find(({ id }) => id === start.cookId)!;
    return start.onAt + plannedS(problem, cook, cook.ways[start.way]!)! + cook.restLeastS;
  });
  const atRisk = lateMillionths > limitMillionths;
  return {
    serviceId: service.id, readyBy: service.readyBy, lateMillionths, atRisk, ...(whole && own.length > 0 && { promisableAt: epochS(Math.ceil(Math.max(...ready))) }),
    help: atRisk ? helpFor(draft, s) : [],
  };
}

function hindranceOf(draft: Draft, cook: PlannedCook, c: number, p: number): CookUnplaced['hindrances'][number]['hindrance'] {
  const pit = draft.table.problem.pits[p]!;
  if (cook.pitIds && !cook.pitIds.includes(pit.id)) return 'not-allowed';
  if (!cook.ways.some(({ tempC, pitId }) => (pitId ?? pit.id) === pit.id && (pit.burningAtC ?? tempC) === tempC && pit.heats.some((heat) => heat.tempC === tempC))) return 'no-such-heat';
  if (cook.massKg > pit.bearsKg) return 'too-heavy';
  if (cook.areaM2 > pit.areaM2) return 'too-large';
  return draft.table.choices[c]![p]!.length === 0 ? 'no-time' : 'full';
}

/** The draft as people read it: starts with their windows, fires with their wood and hours, services with their chances. */
export function describe(draft: Draft): Omit<CookPlan, 'boundCents' | 'proven' | 'iterations'> {
  const { problem } = draft.table;
  const starts = draft.chosen.flatMap((choice) => (choice ? [startOf(draft, choice)] : [])).sort((a, b) => a.onAt - b.onAt || a.cookId.localeCompare(b.cookId));
  const unplaced = problem.cooks.flatMap((cook, c): CookUnplaced[] => (draft.chosen[c] ? [] : [{ cookId: cook.id, serviceId: cook.serviceId, hindrances: problem.pits.map((pit, p) => ({ pitId: pit.id, hindrance: hindranceOf(draft, cook, c, p) })) }]));
  return {
    starts, unplaced, burns: problem.pits.flatMap((pit, p) => burnOf(draft, pit, p) ?? []), services: problem.services.map((_, s) => outlookOf(draft, starts, s)),
    crewHours: crewHoursOf(problem, draft.work(), draft.crewThere()), levels: draft.levels(),
  };
}
