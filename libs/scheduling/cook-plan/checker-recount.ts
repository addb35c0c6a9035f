import type { ServiceId } from '@stokehold/domain/quantity';
import type { CookPlanLevels } from './plan.js';
import { cookPlanParameter, type CookPit, type CookPlanProblem, type CookStart, type CookWay, type PlannedCook } from './problem.js';

/** A cook as it stands in a plan, counted from the problem alone. */
export interface Standing {
  readonly start: CookStart;
  readonly cook: PlannedCook;
  readonly pit: CookPit;
  readonly way: CookWay;
  readonly readyBy: number;
  /** The time met with the planned chance, s; absent when too few times ever get done. */
  readonly takesS?: number;
  /** The pit is taken until here. */
  readonly offAt: number;
  /** Chance in a million that it is off too late to rest. */
  readonly late: number;
  /** Of it, what is over its share of the service's chance. */
  readonly overShare: number;
  readonly keptTooLongS: number;
}

const HOUR = 3600;
const sum = (numbers: readonly number[]) => numbers.reduce((all, one) => all + one, 0);

/** Counts one cook. The share of a service's chance is split evenly over its cooks: late together at most as often as the sum. */
export function recountCook(problem: CookPlanProblem, start: CookStart): Standing {
  const cook = problem.cooks.find(({ id }) => id === start.cookId)!;
  const pit = problem.pits.find(({ id }) => id === start.pitId)!;
  const way = cook.ways[start.way]!;
  const { readyBy } = problem.services.find(({ id }) => id === cook.serviceId)!;
  const cooks = problem.cooks.filter((one) => one.serviceId === cook.serviceId).length;
  const mayBeLate = Math.floor((way.outOf * cookPlanParameter(problem, 'lateFrac')) / cooks + 1e-9);
  const takesS = way.takesS[way.outOf - mayBeLate - 1];
  const stepS = cookPlanParameter(problem, 'stepS');
  const deadline = readyBy - cook.restLeastS;
  const onTime = way.takesS.filter((takes) => start.onAt + takes <= deadline).length;
  const short = way.takesS[Math.min(Math.floor(cookPlanParameter(problem, 'shortFrac') * way.outOf), way.takesS.length - 1)]!;
  return {
    start, cook, pit, way, readyBy, ...(takesS !== undefined && { takesS }), offAt: start.onAt + Math.ceil((takesS ?? 0) / stepS) * stepS,
    late: Math.round((1e6 * (way.outOf - onTime)) / way.outOf),
    overShare: Math.max(0, Math.round((1e6 * (way.outOf - onTime)) / way.outOf) - Math.round((1e6 * mayBeLate) / way.outOf)), keptTooLongS: Math.max(0, readyBy - cook.keepMostS - (start.onAt + short)),
  };
}

/** From lighting (or now, where it burns) until the last food is off. */
export function windowOf(problem: CookPlanProblem, there: readonly Standing[]): { readonly from: number; readonly firstOnAt: number; readonly until: number } {
  const { pit } = there[0]!;
  const firstOnAt = Math.min(...there.map(({ start }) => start.onAt));
  return { from: pit.burningAtC === undefined ? firstOnAt - pit.warmUpS : Math.min(problem.from, firstOnAt), firstOnAt, until: Math.max(...there.map(({ offAt }) => offAt)) };
}

/** Levels, chances by service and hours of the crew, from nothing. */
export function recountLevels(problem: CookPlanProblem, standing: readonly Standing[]): {
  readonly levels: CookPlanLevels;
  readonly services: readonly { readonly serviceId: ServiceId; readonly lateMillionths: number }[];
  readonly crewHours: readonly { readonly from: number; readonly neededS: number; readonly thereS: number }[];
} {
  const of = (name: Parameters<typeof cookPlanParameter>[1]) => cookPlanParameter(problem, name);
  const services = problem.services.map(({ id }) => {
    const own = standing.filter(({ cook }) => cook.serviceId === id);
    const whole = own.length === problem.cooks.filter(({ serviceId }) => serviceId === id).length;
    return { serviceId: id, lateMillionths: whole ? Math.min(1e6, sum(own.map(({ late }) => late))) : 1e6 };
  });
  const fires = problem.pits.map((pit) => standing.filter((one) => one.pit === pit)).filter((there) => there.length > 0).map((there) => ({ pit: there[0]!.pit, heat: there[0]!.pit.heats.find(({ tempC }) => tempC === there[0]!.way.tempC), ...windowOf(problem, there) }));
  const fireCents = fires.map(({ pit, heat, from, until }) => Math.round(((heat?.woodCentsPerHour ?? 0) * (until - from)) / HOUR) + Math.round((((of('crewCentsPerHour') * pit.crewSPerHour) / HOUR) * (until - from)) / HOUR));
  const ownCents = standing.map(({ cook, way, offAt, readyBy }) =>
    way.cents + Math.round((of('crewCentsPerHour') * (cook.loadS + cook.unloadS)) / HOUR) + Math.round((of('holdCentsPerHour') * Math.max(0, readyBy - cook.restLeastS - offAt)) / HOUR));
  const crewHours = hoursOf(problem, standing, fires);
  return {
    levels: {
      unplaced: problem.cooks.length - standing.length, lateMillionths: sum(standing.map(({ overShare }) => overShare)), keptTooLongS: sum(standing.map((one) => one.keptTooLongS)),
      crewOverS: sum(crewHours.map(({ neededS, thereS }) => Math.max(0, neededS - thereS))), costCents: sum(fireCents) + sum(ownCents),
    },
    services, crewHours,
  };
}

type Asked = readonly { readonly from: number; readonly until: number; readonly each: number }[];

/** Seconds of work and of people in each hour: every stretch cut at the hour. */
function hoursOf(problem: CookPlanProblem, standing: readonly Standing[], fires: readonly { readonly pit: CookPit; readonly from: number; readonly until: number }[]) {
  const job = (from: number, lengthS: number) => (from >= problem.from ? [{ from, until: from + lengthS, each: 1 }] : []);
  const asked: Asked = [
    ...fires.map(({ pit, from, until }) => ({ from: Math.max(problem.from, from), until, each: pit.crewSPerHour / HOUR })),
    ...standing.flatMap(({ cook, way, start, offAt }) => [...job(start.onAt, cook.loadS), ...(way.wrapAfterS === undefined ? [] : job(start.onAt + way.wrapAfterS, cook.wrapS)), ...job(offAt, cook.unloadS)]),
  ];
  const people: Asked = problem.crew.map(({ from, until, people: there }) => ({ from, until, each: there * cookPlanParameter(problem, 'crewFrac') }));
  const within = (all: Asked, from: number) => Math.round(sum(all.map((one) => one.each * Math.max(0, Math.min(one.until, from + HOUR) - Math.max(one.from, from)))));
  return Array.from({ length: Math.ceil((problem.until - problem.from) / HOUR) }, (_, hour) => problem.from + hour * HOUR).map((from) => ({ from, neededS: within(asked, from), thereS: within(people, from) }));
}
