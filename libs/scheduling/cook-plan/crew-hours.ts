import { epochS, HOUR_S } from '@stokehold/domain/quantity';
import type { CrewHour } from './plan.js';
import { cookPlanParameter, type CookPlanProblem } from './problem.js';

/** A stretch of time that asks for so many seconds of work an hour. */
export interface Work {
  readonly from: number;
  readonly until: number;
  readonly sPerHour: number;
}

/** People's seconds by hour of the plan, as far as they may be planned for. */
export function crewThere(problem: CookPlanProblem): Float64Array {
  const there = new Float64Array(Math.ceil((problem.until - problem.from) / HOUR_S));
  const frac = cookPlanParameter(problem, 'crewFrac');
  for (const { from, until, people } of problem.crew) addOver(there, problem.from, { from, until, sPerHour: HOUR_S * people * frac });
  return there.map((seconds) => Math.round(seconds));
}

/** Adds a stretch's work to the hours that it lies in. */
export function addOver(hours: Float64Array, start: number, { from, until, sPerHour }: Work): void {
  const first = Math.max(0, Math.floor((from - start) / HOUR_S));
  for (let hour = first; hour < hours.length; hour++) {
    const begins = start + hour * HOUR_S;
    if (begins >= until) return;
    hours[hour]! += (sPerHour * (Math.min(until, begins + HOUR_S) - Math.max(from, begins))) / HOUR_S;
  }
}

/** Work beyond what the people there can be planned for, whole seconds. */
export const crewOverS = (needed: Float64Array, there: Float64Array): number => needed.reduce((sum, seconds, hour) => sum + Math.max(0, Math.round(seconds) - there[hour]!), 0);

/** The hours as the plan shows them. */
export const crewHoursOf = (problem: CookPlanProblem, needed: Float64Array, there: Float64Array): readonly CrewHour[] =>
  Array.from(needed, (seconds, hour) => ({ from: epochS(problem.from + hour * HOUR_S), neededS: Math.round(seconds), thereS: there[hour]! }));
