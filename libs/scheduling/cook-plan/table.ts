import { HOUR_S } from '@stokehold/domain/quantity';
import { cookPlanParameter, type CookPit, type CookPlanProblem, type CookWay, type PlannedCook } from './problem.js';

/** A way that a cook can take on a pit, in steps from `from`. */
export interface Choice {
  readonly cook: number;
  readonly pit: number;
  readonly way: number;
  /** Index of the pit's heat. */
  readonly heat: number;
  /** Steps that it takes from the pit. */
  readonly steps: number;
  /** On between these, all is well: not kept too long, late within its share. `low` may be above `high`: never well. */
  readonly low: number;
  readonly high: number;
  /** The pit cannot take it before. */
  readonly first: number;
  /** Nor after, so as to be off when the pit has to be free. */
  readonly last: number;
  readonly cents: number;
}

/** The problem in steps and rows of numbers, as the search and the bound read it. */
export interface CookTable {
  readonly problem: CookPlanProblem;
  readonly stepS: number;
  readonly steps: number;
  /** By cook, then by pit. */
  readonly choices: readonly (readonly (readonly Choice[])[])[];
  readonly service: readonly number[];
  readonly limitMillionths: number;
  /** Cost of so many steps of fire by pit and heat, warming included. */
  burnCents(pit: number, heat: number, firstOn: number, lastOff: number): number;
  ownCents(choice: Choice, on: number): number;
  lateMillionths(choice: Choice, on: number): number;
  /** Its share of its service's chance, in whole times of its way. */
  mayBeLateMillionths(choice: Choice): number;
  keptTooLongS(choice: Choice, on: number): number;
}

/** Times that must be met so that the rest is within the share: rank, counted from 1. */
export function rankOf(problem: CookPlanProblem, cook: PlannedCook, way: CookWay): number {
  const together = problem.cooks.filter(({ serviceId }) => serviceId === cook.serviceId).length;
  return way.outOf - Math.floor((cookPlanParameter(problem, 'lateFrac') * way.outOf) / together + 1e-9);
}

/** The time that is met with the planned chance, s; undefined when too few of the times ever get done. */
export const plannedS = (problem: CookPlanProblem, cook: PlannedCook, way: CookWay): number | undefined => way.takesS[rankOf(problem, cook, way) - 1];

/** The time that comes out short with the allowed share, s. */
export const shortS = (problem: CookPlanProblem, way: CookWay): number => way.takesS[Math.min(way.takesS.length - 1, Math.floor(cookPlanParameter(problem, 'shortFrac') * way.outOf))] ?? 0;

/** From when food may go on this pit. */
export const pitReadyAt = (problem: CookPlanProblem, pit: CookPit): number =>
  pit.burningAtC === undefined ? Math.max(problem.from, pit.usableFrom ?? problem.from) + pit.warmUpS : Math.max(problem.from, pit.usableFrom ?? problem.from);

/** Seconds of fire, warming included, from the first food on until the last off. A pit that burns already counts from now. */
export function burnS(problem: CookPlanProblem, pit: CookPit, firstOnS: number, lastOffS: number): number {
  return pit.burningAtC === undefined ? lastOffS - firstOnS + pit.warmUpS : lastOffS - Math.min(firstOnS, problem.from);
}

function choiceOf(problem: CookPlanProblem, c: number, p: number, w: number): Choice | undefined {
  const [cook, pit] = [problem.cooks[c]!, problem.pits[p]!];
  const way = cook.ways[w]!;
  const heat = pit.heats.findIndex(({ tempC }) => tempC === way.tempC);
  const takesS = plannedS(problem, cook, way);
  if (heat < 0 || takesS === undefined || (cook.pitIds && !cook.pitIds.includes(pit.id)) || (way.pitId !== undefined && way.pitId !== pit.id)) return undefined;
  if (pit.burningAtC !== undefined && pit.burningAtC !== way.tempC) return undefined;
  if (cook.areaM2 > pit.areaM2 + 1e-9 || cook.massKg > pit.bearsKg + 1e-9) return undefined;
  const stepS = cookPlanParameter(problem, 'stepS');
  const readyBy = problem.services.find(({ id }) => id === cook.serviceId)!.readyBy;
  const steps = Math.ceil(takesS / stepS);
  const first = Math.ceil((pitReadyAt(problem, pit) - problem.from) / stepS);
  const last = Math.floor((Math.min(problem.until, pit.usableUntil ?? problem.until) - problem.from) / stepS) - steps;
  const low = Math.ceil((readyBy - cook.keepMostS - shortS(problem, way) - problem.from) / stepS);
  const high = Math.floor((readyBy - cook.restLeastS - takesS - problem.from) / stepS);
  const fixed = cook.fixed;
  if (fixed) {
    if (fixed.pitId !== pit.id || fixed.way !== w) return undefined;
    const on = Math.floor((fixed.onAt - problem.from) / stepS);
    return { cook: c, pit: p, way: w, heat, steps, low, high, first: on, last: on, cents: way.cents };
  }
  return first > last ? undefined : { cook: c, pit: p, way: w, heat, steps, low, high, first, last, cents: way.cents };
}

/** The problem as a table; made once. */
export function tableOf(problem: CookPlanProblem): CookTable {
  const stepS = cookPlanParameter(problem, 'stepS');
  const crewCents = cookPlanParameter(problem, 'crewCentsPerHour');
  const holdCents = cookPlanParameter(problem, 'holdCentsPerHour');
  const readyBy = problem.cooks.map(({ serviceId }) => problem.services.find(({ id }) => id === serviceId)!.readyBy);
  const at = (step: number) => problem.from + step * stepS;
  const mayBeLate = problem.cooks.map((cook) => cook.ways.map((way) => Math.round(((way.outOf - rankOf(problem, cook, way)) * 1e6) / way.outOf)));
  const choices = problem.cooks.map((cook, c) => problem.pits.map((_, p) => cook.ways.flatMap((__, w) => choiceOf(problem, c, p, w) ?? [])));
  return {
    problem, stepS, choices,
    steps: Math.ceil((problem.until - problem.from) / stepS),
    service: problem.cooks.map(({ serviceId }) => problem.services.findIndex(({ id }) => id === serviceId)),
    limitMillionths: Math.round(cookPlanParameter(problem, 'lateFrac') * 1e6),
    burnCents: (p, heat, firstOn, lastOff) => {
      const pit = problem.pits[p]!;
      const seconds = burnS(problem, pit, at(firstOn), at(lastOff));
      return Math.round((pit.heats[heat]!.woodCentsPerHour * seconds) / HOUR_S) + Math.round((((crewCents * pit.crewSPerHour) / HOUR_S) * seconds) / HOUR_S);
    },
    ownCents: ({ cook: c, steps, cents }, on) => {
      const cook = problem.cooks[c]!;
      const workS = cook.loadS + cook.unloadS;
      return cents + Math.round((crewCents * workS) / HOUR_S) + Math.round((holdCents * Math.max(0, readyBy[c]! - cook.restLeastS - at(on + steps))) / HOUR_S);
    },
    lateMillionths: ({ cook: c, way }, on) => {
      const cook = problem.cooks[c]!;
      const { takesS, outOf } = cook.ways[way]!;
      const roomS = readyBy[c]! - cook.restLeastS - at(on);
      return Math.round(((outOf - countUpTo(takesS, roomS)) * 1e6) / outOf);
    },
    mayBeLateMillionths: ({ cook: c, way }) => mayBeLate[c]![way]!,
    keptTooLongS: ({ cook: c, way }, on) => Math.max(0, readyBy[c]! - problem.cooks[c]!.keepMostS - at(on) - shortS(problem, problem.cooks[c]!.ways[way]!)),
  };
}

/** How many of the sorted numbers are not above this one. */
export function countUpTo(sorted: readonly number[], most: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! <= most) low = middle + 1;
    else high = middle;
  }
  return low;
}
