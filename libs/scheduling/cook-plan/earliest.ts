import { epochS, type CookId, type EpochS, type ServiceId } from '@stokehold/domain/quantity';
import type { CookPlanProblem, PlannedCook, PlannedService } from './problem.js';
import { pitReadyAt, plannedS } from './table.js';

/** Why no time before `at` can be promised: the cook that takes longest, and what it waits for. */
export interface EarliestService {
  readonly serviceId: ServiceId;
  readonly at: EpochS;
  readonly cookId: CookId;
  readonly why: 'cooking' | 'fire-not-lit' | 'pit-not-free';
}

/** A way too hot, too cold or too large for every pit has no earliest time. */
function earliestOff(problem: CookPlanProblem, cook: PlannedCook, quickest: boolean): { readonly at: number; readonly why: EarliestService['why'] } | undefined {
  const found = problem.pits.flatMap((pit) => cook.ways.flatMap((way, w) => {
    const takes = quickest ? way.takesS[0] : plannedS(problem, cook, way);
    const may = (!cook.pitIds || cook.pitIds.includes(pit.id)) && (way.pitId === undefined || way.pitId === pit.id) && (pit.burningAtC ?? way.tempC) === way.tempC && pit.heats.some(({ tempC }) => tempC === way.tempC);
    if (!may || takes === undefined || cook.areaM2 > pit.areaM2 || cook.massKg > pit.bearsKg) return [];
    if (cook.fixed) return cook.fixed.pitId === pit.id && cook.fixed.way === w ? [{ at: cook.fixed.onAt + takes, why: 'cooking' as const }] : [];
    const why = (pit.usableFrom ?? problem.from) > problem.from ? ('pit-not-free' as const) : pit.burningAtC === undefined ? ('fire-not-lit' as const) : ('cooking' as const);
    return [{ at: pitReadyAt(problem, pit) + takes, why }];
  }));
  return found.sort((a, b) => a.at - b.at)[0];
}

/**
 * The earliest time at which a service can be promised, each cook alone on its best pit, begun now.
 *
 * @param quickest  false: with the wanted chance; true: even if everything took its shortest time
 * @returns undefined when no cook of it can go on any pit, or none is planned
 */
export function earliestService(problem: CookPlanProblem, service: PlannedService, quickest = false): EarliestService | undefined {
  const all = problem.cooks.filter(({ serviceId }) => serviceId === service.id).map((cook) => ({ cook, off: earliestOff(problem, cook, quickest) }));
  if (all.some(({ off }) => off === undefined)) return undefined;
  const last = all.map(({ cook, off }) => ({ cookId: cook.id, at: off!.at + cook.restLeastS, why: off!.why })).sort((a, b) => b.at - a.at || a.cookId.localeCompare(b.cookId))[0];
  return last && { serviceId: service.id, at: epochS(Math.ceil(last.at)), cookId: last.cookId, why: last.why };
}
