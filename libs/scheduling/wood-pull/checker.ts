import type { CartLoad, Haul, LoadWood, PullPlan } from './plan.js';
import { parameter, type PullHour, type PullPit, type PullProblem } from './problem.js';

/** A rule that a plan breaks. `where` is the pile, the pit with the hour, or the figure. */
export interface PullViolation {
  readonly code:
    | 'unknown-pile' | 'wrong-lot' | 'not-whole' | 'more-than-there-is' | 'may-not-burn-here' | 'wrong-way' | 'cart-overloaded' | 'offcuts-out-of-hours'
    | 'hours-not-covered' | 'wrong-figure' | 'wrong-worth' | 'below-bound' | 'haul-missing' | 'haul-for-nothing' | 'haul-wrong';
  readonly where: string;
}

const at = (load: CartLoad) => `${load.pitId} ${load.from}`;
const total = (numbers: readonly number[]) => numbers.reduce((sum, one) => sum + one, 0);
/** Joules and kilograms that come of adding in another order. */
const NEARLY = 1e-3;

/**
 * Every rule that a plan breaks, from nothing: it shares the problem and plan types with the planner and none of its code, so it also
 * judges plans made by hand. Wood that is short is no violation; a shortage not owned up to is. Held to wood-pull.test.ts, where each
 * rule is made to bite.
 */
export function checkPull(problem: PullProblem, plan: PullPlan): readonly PullViolation[] {
  const unknown = plan.loads.flatMap(({ wood }) => wood).filter(({ pileId }) => !problem.piles.some(({ id }) => id === pileId));
  if (unknown.length > 0) return unknown.map(({ pileId }) => ({ code: 'unknown-pile', where: pileId }));
  const stocked = stock(problem, plan);
  if (stocked.some(({ code }) => code === 'wrong-lot')) return stocked;
  const covered = problem.pits.flatMap((pit) => hoursCovered(pit, plan.loads.filter(({ pitId }) => pitId === pit.id)));
  if (covered.length > 0) return covered;
  return [...stocked, ...plan.loads.flatMap((load) => ofLoad(problem, load)), ...problem.pits.flatMap((pit) => figures(problem, pit, plan)), ...hauls(problem, plan), ...worth(problem, plan)];
}

function hoursCovered(pit: PullPit, loads: readonly CartLoad[]): readonly PullViolation[] {
  const [first, last] = [pit.hours[0]!, pit.hours.at(-1)!];
  const inRow = loads.every((load, i) => load.from === (loads[i - 1]?.until ?? first.from) && pit.hours.some(({ from }) => from === load.from) && load.until > load.from);
  return inRow && loads.at(-1)?.until === last.until ? [] : [{ code: 'hours-not-covered', where: pit.id }];
}

function stock(problem: PullProblem, plan: PullPlan): readonly PullViolation[] {
  return problem.piles.flatMap((pile): readonly PullViolation[] => {
    const taken = plan.loads.flatMap(({ wood }) => wood).filter(({ pileId }) => pileId === pile.id);
    return [
      ...(taken.some(({ lotId }) => lotId !== pile.lotId) ? [{ code: 'wrong-lot', where: pile.id } as const] : []),
      ...(taken.some(({ pieces }) => !Number.isInteger(pieces) || pieces < 1) ? [{ code: 'not-whole', where: pile.id } as const] : []),
      ...(total(taken.map(({ pieces }) => pieces)) > pile.pieces ? [{ code: 'more-than-there-is', where: pile.id } as const] : []),
    ];
  });
}

const hoursOf = (problem: PullProblem, load: CartLoad): readonly PullHour[] =>
  problem.pits.find(({ id }) => id === load.pitId)!.hours.filter(({ from, until }) => load.from <= from && until <= load.until);
const lotOf = (problem: PullProblem, wood: LoadWood) => problem.lots.find(({ id }) => id === wood.lotId);
const wayOf = (problem: PullProblem, load: CartLoad, wood: LoadWood) => problem.ways.find(({ pitId, lotId }) => pitId === load.pitId && lotId === wood.lotId);
/** Heat of a line of wood as its fire gets it, J. */
const heat = (problem: PullProblem, load: CartLoad, wood: LoadWood): number => {
  const way = wayOf(problem, load, wood);
  return wood.pieces * ((wood.way === 'as-is' ? way?.asIs : way?.trimmed)?.heatJ ?? 0);
};

function ofLoad(problem: PullProblem, load: CartLoad): readonly PullViolation[] {
  const found: PullViolation[] = [];
  const hours = hoursOf(problem, load);
  const mustLieAcross = hours.some(({ across }) => across);
  for (const wood of load.wood) {
    const way = wayOf(problem, load, wood);
    const used = wood.way === 'as-is' ? way?.asIs : way?.trimmed;
    if (!used) found.push({ code: 'may-not-burn-here', where: `${at(load)} ${wood.pileId}` });
    if (wood.isOffcut !== (lotOf(problem, wood)?.offcut ?? false)) found.push({ code: 'wrong-figure', where: `${at(load)} offcuts` });
    if (mustLieAcross && wood.way === 'as-is' && way?.asIs?.lies === 'lengthwise') found.push({ code: 'wrong-way', where: `${at(load)} ${wood.pileId}` });
    const sawn = wood.way === 'trimmed' ? way?.trimmed : undefined;
    if (wood.cuts !== (sawn?.cuts ?? 0) * wood.pieces || wood.offcuts !== (sawn?.offcuts ?? 0) * wood.pieces) found.push({ code: 'wrong-figure', where: `${at(load)} cuts` });
  }
  const pit = problem.pits.find(({ id }) => id === load.pitId)!;
  if (total(load.wood.filter((wood) => !lotOf(problem, wood)?.offcut).map((wood) => wood.pieces * (lotOf(problem, wood)?.pieceKg ?? 0))) > pit.cartKg + NEARLY) found.push({ code: 'cart-overloaded', where: at(load) });
  const offcutJ = total(load.wood.filter((wood) => lotOf(problem, wood)?.offcut).map((wood) => heat(problem, load, wood)));
  if (offcutJ > total(hours.filter(({ offcuts }) => offcuts).map(({ needJ }) => needJ)) + NEARLY) found.push({ code: 'offcuts-out-of-hours', where: at(load) });
  return found;
}

/** Heat, shortage, reserve and mix as printed are those that follow from the splits. */
function figures(problem: PullProblem, pit: PullPit, plan: PullPlan): readonly PullViolation[] {
  let [heatJ, needJ, spreadJ] = [0, 0, 0];
  return plan.loads.filter(({ pitId }) => pitId === pit.id).flatMap((load): readonly PullViolation[] => {
    const own = total(load.wood.map((wood) => heat(problem, load, wood)));
    const hours = hoursOf(problem, load);
    heatJ += own;
    needJ += total(hours.map((hour) => hour.needJ));
    spreadJ += total(hours.map((hour) => hour.spreadJ));
    const reserveJ = Math.round(parameter(problem, 'reserveDeviations') * spreadJ);
    const shortJ = Math.max(0, needJ - heatJ);
    const reserveShortJ = Math.max(0, needJ + reserveJ - heatJ) - shortJ;
    const wrong = [['heatJ', load.heatJ, own], ['shortJ', load.shortJ, shortJ], ['reserveShortJ', load.reserveShortJ, reserveShortJ], ['mixOffJ', load.mixOffJ, mixOff(problem, load, hours, own)]] as const;
    return wrong.filter(([, said, is]) => Math.abs(said - is) > 1).map(([name]) => ({ code: 'wrong-figure', where: `${at(load)} ${name}` }));
  });
}

function mixOff(problem: PullProblem, load: CartLoad, hours: readonly PullHour[], heatJ: number): number {
  const names = new Set(hours.flatMap(({ mix }) => mix.map(({ species }) => [...species].sort().join(' '))));
  const needJ = total(hours.map((hour) => hour.needJ));
  return total([...names].map((name) => {
    const wish = (hour: PullHour) => hour.mix.find(({ species }) => [...species].sort().join(' ') === name);
    const least = total(hours.map((hour) => (hour.needJ / needJ) * (wish(hour)?.leastFrac ?? 0)));
    const most = total(hours.map((hour) => (hour.needJ / needJ) * (wish(hour)?.mostFrac ?? 1)));
    const own = total(load.wood.filter((wood) => name.split(' ').includes(lotOf(problem, wood)?.species ?? '')).map((wood) => heat(problem, load, wood)));
    return Math.max(0, least * heatJ - own, own - most * heatJ);
  }));
}

function hauls(problem: PullProblem, plan: PullPlan): readonly PullViolation[] {
  const strangers = plan.hauls.filter((haul) => !plan.loads[haul.load] || plan.loads[haul.load]!.pitId !== haul.pitId).map((haul): PullViolation => ({ code: 'haul-for-nothing', where: haul.pitId }));
  return [...strangers, ...plan.loads.flatMap((load, i): readonly PullViolation[] => {
    const away = load.wood.filter((wood) => problem.piles.find(({ id }) => id === wood.pileId)!.cartOf !== load.pitId && !lotOf(problem, wood)?.offcut);
    const own = plan.hauls.filter((haul) => haul.load === i);
    if (away.length === 0) return own.length > 0 ? [{ code: 'haul-for-nothing', where: at(load) }] : [];
    const [haul] = own;
    if (!haul || own.length > 1) return [{ code: 'haul-missing', where: at(load) }];
    return haulRight(problem, load, haul, away) ? [] : [{ code: 'haul-wrong', where: at(load) }];
  })];
}

/** What a fire that runs high has used of a load's hours by an instant, J. */
const highNeedBy = (problem: PullProblem, load: CartLoad, by: number): number =>
  total(hoursOf(problem, load).map((hour) => ((hour.needJ + parameter(problem, 'reserveDeviations') * hour.spreadJ) * Math.min(1, Math.max(0, (by - hour.from) / (hour.until - hour.from))))));

function haulRight(problem: PullProblem, load: CartLoad, haul: Haul, away: readonly LoadWood[]): boolean {
  const pieces = total(away.map((wood) => wood.pieces));
  const pit = problem.pits.find(({ id }) => id === load.pitId)!;
  const farthest = Math.max(...away.map(({ pileId }) => problem.walkS[problem.places.indexOf(problem.piles.find(({ id }) => id === pileId)!.place)]![problem.places.indexOf(pit.place)]!));
  const inOrder = problem.from <= haul.earliestAt && haul.earliestAt <= haul.dueAt && haul.dueAt <= haul.latestAt;
  const there = total(load.wood.filter((wood) => !away.includes(wood) && !lotOf(problem, wood)?.offcut).map((wood) => heat(problem, load, wood)));
  const inTime = haul.latestAt + haul.lengthS <= load.from || haul.latestAt === problem.from || highNeedBy(problem, load, haul.latestAt + haul.lengthS) <= there + 1e6;
  return haul.pieces === pieces && inOrder && inTime && haul.lengthS >= 2 * farthest + pieces * parameter(problem, 'handlingS') - 1;
}

/** The worth as printed, counted again; and no plan may be better than the bound. */
function worth(problem: PullProblem, plan: PullPlan): readonly PullViolation[] {
  const lines = plan.loads.flatMap((load) => load.wood.map((wood) => ({ load, wood, pile: problem.piles.find(({ id }) => id === wood.pileId)!, lot: lotOf(problem, wood)! })));
  const woodMills = total(lines.map(({ load, wood, pile, lot }) => {
    const pit = problem.pits.find(({ id }) => id === load.pitId)!;
    const walkS = problem.walkS[problem.places.indexOf(pile.place)]![problem.places.indexOf(pit.place)]!;
    const haul = pile.cartOf === load.pitId || lot.offcut ? 0 : Math.round(parameter(problem, 'walkMillsPerS') * ((2 * walkS) / parameter(problem, 'piecesPerWay') + parameter(problem, 'handlingS')));
    return wood.pieces * ((pile.cartOf === load.pitId ? 0 : lot.priceMills) + haul + (wood.way === 'trimmed' ? (wayOf(problem, load, wood)?.trimmed?.trimMills ?? 0) : 0));
  }));
  const told = (pitId: string) => problem.promises.filter((promise) => promise.pitId === pitId);
  const changedPieces = total(lines.filter(({ load, wood }) => told(load.pitId).length > 0 && !told(load.pitId).some(({ lotId }) => lotId === wood.lotId)).map(({ wood }) => wood.pieces));
  const wettest = Math.max(0, ...problem.pits.map((pit) => {
    const wet = total(lines.filter(({ load }) => load.pitId === pit.id).map(({ load, wood, lot }) => lot.wetPoints * heat(problem, load, wood)));
    return Math.ceil(wet / Math.max(1, total(pit.hours.map(({ needJ }) => needJ))) - 1e-9);
  }));
  const perMj = (name: 'shortMillsPerMj' | 'reserveMillsPerMj' | 'mixMillsPerMj', joules: number) => Math.ceil((parameter(problem, name) * joules) / 1e6 - 1e-9);
  const missing = total(plan.loads.map(({ shortJ, reserveShortJ, mixOffJ }) => perMj('shortMillsPerMj', shortJ) + perMj('reserveMillsPerMj', reserveShortJ) + perMj('mixMillsPerMj', mixOffJ)));
  const soft = total(lines.map(({ load, wood, lot, pile }) => wood.pieces * ((pile.cartOf === load.pitId ? 0 : lot.laterMills) + parameter(problem, 'wetMills') * lot.wetPoints)));
  const totalMills = woodMills + soft + changedPieces * parameter(problem, 'changeMills') + missing + parameter(problem, 'fairMills') * wettest;
  const said = plan.worth;
  const right = said.woodMills === woodMills && said.changedPieces === changedPieces && said.worstWetPoints === wettest && Math.abs(said.totalMills - totalMills) <= plan.loads.length;
  return [...(right ? [] : [{ code: 'wrong-worth', where: 'totalMills' } as const]), ...(said.totalMills < plan.boundMills ? [{ code: 'below-bound', where: 'totalMills' } as const] : [])];
}
