import { randomStream } from '@stokehold/domain/quantity';
import { anneal, type StopRule } from '../search/index.js';
import { boundOf } from './bound.js';
import { type Cell, modelOf, type PullModel } from './cells.js';
import { haulsOf } from './hauls.js';
import type { CartLoad, LoadWood, PullPlan, PullWorth } from './plan.js';
import { parameter, type PullProblem } from './problem.js';
import { WholePull } from './whole.js';

/** Rise in mills that is taken one time in e, at the start and end of a cycle: a few steps to the stack, then next to nothing. Source: tests/bench/wood.mjs. */
const WARM_MILLS = 60;
const COLD_MILLS = 5;
const FIRST_CYCLE = 20_000;
const MJ = 1e6;

/**
 * Which wood goes on which cart for which hours, and when to haul it. The relaxation says where splits would go if they could be
 * halved; whole splits are then searched for by annealing from there, inside the hard rules. Same problem, seed and iterations: same plan.
 *
 * @param problem  validated, of `validatePull`
 * @param options  seed of chance; when to stop
 * @returns a whole plan with its bound; what wood is missing is owned up to in `shortJ`. Held to wood-pull.test.ts
 */
export function planPull(problem: PullProblem, options: { readonly seed: number; readonly stop: StopRule }): PullPlan {
  const model = modelOf(problem);
  const relaxed = boundOf(model);
  const whole = new WholePull(model, relaxed);
  if (whole.cost() > relaxed.boundMills) anneal(whole, { random: randomStream(options.seed), stop: options.stop, warm: WARM_MILLS, cold: COLD_MILLS, firstCycle: FIRST_CYCLE });
  return planOf(model, whole.bestPieces(), relaxed.boundMills);
}

function planOf(model: PullModel, pieces: Int32Array, boundMills: number): PullPlan {
  const loads = model.loads.map((_, i) => loadOf(model, i, pieces));
  const worth = worthOf(model, loads, pieces);
  return { loads, hauls: haulsOf(model.problem, loads), worth, boundMills, gapFrac: worth.totalMills > 0 ? Math.max(0, worth.totalMills - boundMills) / worth.totalMills : 0 };
}

function loadOf(model: PullModel, i: number, pieces: Int32Array): CartLoad {
  const { problem, loads, cells } = model;
  const load = loads[i]!;
  const own = model.cellsOfLoad[i]!.filter((c) => pieces[c]! > 0);
  const heatOf = (list: readonly number[]) => list.reduce((sum, c) => sum + pieces[c]! * cells[c]!.heatJ, 0);
  const soFar = model.loadsOfPit[load.pit]!.filter((one) => one <= i).flatMap((one) => model.cellsOfLoad[one]!);
  const missing = Math.max(0, load.needSoFarJ + load.reserveJ - heatOf(soFar));
  const shortJ = Math.max(0, load.needSoFarJ - heatOf(soFar));
  const wood = own.map((c): LoadWood => {
    const cell: Cell = cells[c]!;
    const pile = problem.piles[cell.pile]!;
    return { pileId: pile.id, lotId: pile.lotId, isOffcut: cell.isOffcut, pieces: pieces[c]!, way: cell.way, cuts: cell.cuts * pieces[c]!, offcuts: cell.offcuts * pieces[c]! };
  });
  const heatJ = heatOf(own);
  const mixOffJ = load.shares.reduce((off, { leastFrac, mostFrac }, s) => {
    const ofShare = heatOf(own.filter((c) => model.isOfShare(i, s, c)));
    return off + Math.max(0, leastFrac * heatJ - ofShare) + Math.max(0, ofShare - mostFrac * heatJ);
  }, 0);
  return { pitId: load.pitId, from: load.from, until: load.until, wood, heatJ, shortJ, reserveShortJ: missing - shortJ, mixOffJ: Math.round(mixOffJ) };
}

function worthOf(model: PullModel, loads: readonly CartLoad[], pieces: Int32Array): PullWorth {
  const { problem, cells } = model;
  const sum = (of: (c: Cell) => number) => cells.reduce((all, cell, c) => all + pieces[c]! * of(cell), 0);
  const wettest = model.loadsOfPit.map((own, p) => {
    const wet = own.flatMap((i) => model.cellsOfLoad[i]!).reduce((all, c) => all + pieces[c]! * cells[c]!.wetPoints * cells[c]!.heatJ, 0);
    return Math.ceil(wet / model.needOfPitJ[p]! - 1e-9);
  });
  const worstWetPoints = Math.max(0, ...wettest);
  const priced = (rate: 'shortMillsPerMj' | 'reserveMillsPerMj' | 'mixMillsPerMj', joules: number) => Math.ceil((parameter(problem, rate) * joules) / MJ - 1e-9);
  const off = loads.reduce((all, load) => all + priced('shortMillsPerMj', load.shortJ) + priced('reserveMillsPerMj', load.reserveShortJ) + priced('mixMillsPerMj', load.mixOffJ), 0);
  return {
    shortJ: loads.reduce((all, { shortJ }) => all + shortJ, 0),
    reserveShortJ: loads.reduce((all, { reserveShortJ }) => all + reserveShortJ, 0),
    mixOffJ: loads.reduce((all, { mixOffJ }) => all + mixOffJ, 0),
    worstWetPoints, woodMills: sum(({ woodMills }) => woodMills), changedPieces: sum(({ isChange }) => (isChange ? 1 : 0)),
    totalMills: sum(({ mills }) => mills) + off + parameter(problem, 'fairMills') * worstWetPoints,
  };
}

/** Splits of each lot that each pit is told of, for the next plan to keep to. */
export function promisesOf(plan: PullPlan): PullProblem['promises'] {
  const told = new Map<string, PullProblem['promises'][number]>();
  for (const { pitId, wood } of plan.loads) {
    for (const { lotId, pieces } of wood) told.set(`${pitId} ${lotId}`, { pitId, lotId, pieces: pieces + (told.get(`${pitId} ${lotId}`)?.pieces ?? 0) });
  }
  return [...told.values()];
}
