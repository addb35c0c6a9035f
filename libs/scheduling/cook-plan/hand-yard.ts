import { epochS, type CookId, type PitId, type ServiceId } from '@stokehold/domain/quantity';
import type { CookPit, CookPlanProblem, CookWay, PlannedCook } from './problem.js';

/** Noon of a made-up day. */
export const HAND_FROM = 1_790_424_000;
export const handAt = (hours: number) => epochS(HAND_FROM + hours * 3600);

/** Whole hours, equally likely; for tests. */
export const handWay = (hours: readonly number[], made: Partial<CookWay> = {}): CookWay => ({ tempC: 121, takesS: hours.map((hour) => hour * 3600), outOf: hours.length, cents: 0, ...made });

export const handPit = (name: string, made: Partial<CookPit> = {}): CookPit => ({
  id: name as PitId, areaM2: 1, bearsKg: 100, warmUpS: 3600, crewSPerHour: 0, heats: [{ tempC: 121, woodKgPerHour: 4, woodCentsPerHour: 100 }, { tempC: 135, woodKgPerHour: 5, woodCentsPerHour: 150 }], ...made,
});

export const handCook = (name: string, ways: readonly CookWay[], made: Partial<PlannedCook> = {}): PlannedCook => ({
  id: name as CookId, serviceId: 'meal' as ServiceId, areaM2: 0.5, massKg: 30, pieceKg: 5, ways, restLeastS: 3600, keepMostS: 4 * 3600, loadS: 0, wrapS: 0, unloadS: 0, ...made,
});

/** A yard made by hand: one meal at hour ten, steps of an hour, nobody paid; for tests. */
export const handYard = (pits: readonly CookPit[], cooks: readonly PlannedCook[], more: Partial<CookPlanProblem> = {}): CookPlanProblem => ({
  from: epochS(HAND_FROM), until: handAt(14), pits, cooks, services: [{ id: 'meal' as ServiceId, readyBy: handAt(10) }], crew: [{ from: epochS(HAND_FROM), until: handAt(14), people: 2 }],
  parameters: { stepS: 3600, crewCentsPerHour: 0, holdCentsPerHour: 0 }, ...more,
});
